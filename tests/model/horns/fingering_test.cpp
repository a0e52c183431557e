#include "model/horns/fingering.h"

#include <gtest/gtest.h>
#include <vector>

namespace lowledger::horns {
namespace {

using acoustics::ValveSet;

const std::vector<std::string> four_valves = {"1", "2", "3", "4"};
const std::vector<std::string> two_triggers = {"G", "Gb"};

TEST(Fingering, ValvesAreWrittenInOrderAndReadInAnyOrder) {
    EXPECT_EQ(file_text({}), "0");
    EXPECT_EQ(file_text({ValveSet{1, 2, 4}, 0}, four_valves), "124");
    EXPECT_EQ(parse_fingering("421", four_valves), (Fingering{ValveSet{1, 2, 4}, 0}));
    EXPECT_EQ(parse_fingering("0", four_valves), Fingering{});
}

TEST(Fingering, PositionsCarryTheirValvesByLabel) {
    EXPECT_EQ(file_text({{}, 3}, two_triggers), "p3");
    EXPECT_EQ(file_text({ValveSet{1, 2}, 2}, two_triggers), "p2+G+Gb");
    EXPECT_EQ(parse_fingering("p2+G+Gb", two_triggers), (Fingering{ValveSet{1, 2}, 2}));
    EXPECT_EQ(parse_fingering("p2+Gb", two_triggers), (Fingering{ValveSet{2}, 2}));
    EXPECT_EQ(parse_fingering("p7"), (Fingering{{}, 7}));
}

TEST(Fingering, EveryFingeringReadsBack) {
    for (int position = 0; position <= 7; ++position) {
        for (const ValveSet down : {ValveSet{}, ValveSet{1}, ValveSet{2}, ValveSet{1, 2}}) {
            const Fingering fingering{down, position};
            EXPECT_EQ(parse_fingering(file_text(fingering, two_triggers), two_triggers), fingering);
        }
    }
}

TEST(Fingering, WhatIsNoFingeringIsRefused) {
    for (const char* text :
         {"", "5", "11", "1 2", "open", "p", "p0", "p8", "p1+", "p1+5", "p1+1+1", "p12", "01", "-1"})
        EXPECT_FALSE(parse_fingering(text, four_valves)) << text;
}

}  // namespace
}  // namespace lowledger::horns
