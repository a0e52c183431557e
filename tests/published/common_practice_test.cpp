// Facts of the trade without a published table: common practice, from memory.
#include <algorithm>
#include <gtest/gtest.h>

#include "model/horns/chart.h"

namespace lowledger::published {
namespace {

using horns::HornKind;
using units::Cents;

const HornKind& kind_of(std::string_view id) {
    const HornKind* kind = horns::find_kind(horns::built_in_kinds(), id);
    if (kind == nullptr) throw std::runtime_error("no kind " + std::string(id));
    return *kind;
}

Cents lean_of(const HornKind& kind, const char* fingering, const char* note) {
    const auto read = horns::parse_fingering(fingering, kind.valve_labels()).value();
    return horns::sounding_partial(kind, read, units::parse_pitch(note).value()).value().lean;
}

/// The order in which slides are set: main, second, first, third, fourth, so that each builds on those before
/// it.
TEST(CommonPractice, OrderOfTuning) {
    std::vector<std::string> order;
    for (const auto& step : kind_of("bbb-tuba-4").tuning_order)
        order.push_back(step.slide);
    EXPECT_EQ(order, (std::vector<std::string>{"main", "second", "first", "third", "fourth"}));
}

/// The main slide is set on an open B-flat, the third valve's by a note with 2-3.
TEST(CommonPractice, NotesOfTuning) {
    for (const char* id : {"bbb-tuba-3", "bbb-tuba-4"}) {
        const auto& order = kind_of(id).tuning_order;
        EXPECT_TRUE(order.front().fingering.valves.empty());
        EXPECT_EQ(order.front().note.midi() % 12, 10) << "a B-flat";
        const auto third = std::ranges::find(order, "third", &horns::TuningStep::slide);
        EXPECT_EQ(third->fingering.valves, (acoustics::ValveSet{2, 3}));
    }
}

/// Several valves together are sharp; 4 for 1-3 and 2-4 for 1-2-3 are less so.
TEST(CommonPractice, SeveralValvesAreSharpAndTheFourthHelps) {
    const HornKind& tuba = kind_of("bbb-tuba-4");
    EXPECT_GT(lean_of(tuba, "12", "G2"), Cents(5.0));
    EXPECT_GT(lean_of(tuba, "13", "C2"), lean_of(tuba, "4", "C2") + Cents(10.0));
    EXPECT_GT(lean_of(tuba, "123", "B1"), lean_of(tuba, "24", "B1") + Cents(10.0));
    EXPECT_GT(lean_of(tuba, "123", "B1"), Cents(30.0));
}

}  // namespace
}  // namespace lowledger::published
