#include "model/tuning/inputs.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace lowledger::tuning {
namespace {

using studio::Date;
using studio::SlidePosition;
using studio::TuningSheet;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::Pair;
using units::Millimetres;

SlidePosition entry(std::string slide, Date on, double mm, SlidePosition::Origin origin) {
    return {{}, {}, std::move(slide), on, Millimetres(mm), origin};
}

TuningSheet sheet(Date on, std::string slide, double mm) {
    return {.id = {},
            .student = {},
            .horn = {},
            .on = on,
            .mouthpiece = {},
            .room = {},
            .positions = {{std::move(slide), Millimetres(mm)}},
            .readings = {},
            .remarks = {}};
}

TEST(KnownPositions, StartIsOnlyHowTheKindWasDesigned) {
    const std::vector<SlidePosition> history = {
        entry("main", Date(2026, 9, 1), 20, SlidePosition::Origin::start)};
    EXPECT_THAT(known_positions(history, {}, Date(2026, 11, 25)), IsEmpty());
}

TEST(KnownPositions, TheLatestHoldsWhetherMeasuredOrWrittenOnASheet) {
    const std::vector<SlidePosition> history = {
        entry("main", Date(2026, 10, 1), 25, SlidePosition::Origin::measured),
        entry("first", Date(2026, 11, 2), 12, SlidePosition::Origin::moved)};
    const std::vector<TuningSheet> sheets = {sheet(Date(2026, 11, 1), "main", 30),
                                             sheet(Date(2026, 11, 1), "first", 8)};
    EXPECT_THAT(known_positions(history, sheets, Date(2026, 11, 25)),
                ElementsAre(Pair("first", Millimetres(12)), Pair("main", Millimetres(30))));
}

TEST(KnownPositions, OfOneDayTheHistoryHoldsAndTheFutureDoesNot) {
    const std::vector<SlidePosition> history = {
        entry("main", Date(2026, 11, 25), 35, SlidePosition::Origin::moved),
        entry("main", Date(2026, 11, 26), 40, SlidePosition::Origin::moved)};
    const std::vector<TuningSheet> sheets = {sheet(Date(2026, 11, 25), "main", 20)};
    EXPECT_THAT(known_positions(history, sheets, Date(2026, 11, 25)),
                ElementsAre(Pair("main", Millimetres(35))));
}

}  // namespace
}  // namespace lowledger::tuning
