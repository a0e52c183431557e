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

studio::Horn horn_of(std::int64_t number, const char* kind) {
    const horns::HornKind& found = *horns::find_kind(horns::built_in_kinds(), kind);
    studio::Horn horn;
    horn.id.number = number;
    horn.kind_id = found.id;
    horn.kind_text = found.source_text;
    return horn;
}

TEST(InputsOfStudio, TakesInTheStudentsOtherHornAndTheHornsOtherPlayers) {
    studio::Student student;
    student.id.number = 1;
    studio::Student friend_of_theirs;
    friend_of_theirs.id.number = 2;
    friend_of_theirs.level = studio::Level::advanced;
    const std::vector<studio::Horn> horns = {horn_of(1, "bbb-tuba-3"), horn_of(2, "euphonium-4-comp")};
    const auto read = [](std::int64_t player, std::int64_t horn, Date on) {
        TuningSheet of = sheet(on, "main", 20);
        of.student.number = player;
        of.horn.number = horn;
        return of;
    };
    const Date today(2026, 11, 25);
    const std::vector<TuningSheet> of_student = {read(1, 1, today), read(1, 2, today - 1),
                                                 read(1, 2, today + 1)};
    const std::vector<TuningSheet> of_horn = {read(1, 1, today), read(2, 1, today - 2)};
    const TuningInputs inputs = inputs_of_studio(
        {}, student, horns[0], *horns::find_kind(horns::built_in_kinds(), "bbb-tuba-3"),
        std::vector{student, friend_of_theirs}, horns,
        [](studio::HornId) { return std::vector<SlidePosition>(); }, of_student, of_horn, today);
    EXPECT_EQ(inputs.sheets.size(), 1U);
    ASSERT_EQ(inputs.other_horns.size(), 1U);
    EXPECT_EQ(inputs.other_horns[0].kind.id, "euphonium-4-comp");
    EXPECT_EQ(inputs.other_horns[0].sheets.size(), 1U) << "the future is not known";
    EXPECT_THAT(inputs.other_horns[0].positions, ElementsAre(Pair("main", Millimetres(20))));
    ASSERT_EQ(inputs.other_players.size(), 1U);
    EXPECT_EQ(inputs.other_players[0].level, studio::Level::advanced);
    EXPECT_EQ(inputs.other_players[0].sheets.size(), 1U);
}

}  // namespace
}  // namespace lowledger::tuning
