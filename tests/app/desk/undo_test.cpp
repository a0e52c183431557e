#include <gtest/gtest.h>
#include <map>
#include <string>
#include <vector>

#include "app/desk/action.h"
#include "model/studio/questions.h"
#include "tests/app/desk/prepared_studio.h"

namespace lowledger::desk {
namespace {

std::vector<std::string> editing_actions(bool only_those_that_ask = false) {
    std::vector<std::string> ids;
    for (const auto& action : actions())
        if (action.edits && (!only_those_that_ask || action.text.ends_with("…"))) ids.emplace_back(action.id);
    return ids;
}

/// Lays out an answer for everything that an action may ask.
void answer_everything(PreparedStudio& studio) {
    auto& front = studio.front;
    front.facts = studio.desk->file().facts();
    front.facts->teacher = "Another Teacher";
    front.student = studio::Student{};
    front.student->name = "Cem Örnek";
    front.horn = studio::horn_of(horns::built_in_kinds().front());
    front.horn->mark = "T-9";
    front.new_horn = NewHorn{*front.horn, {{"main", units::Millimetres(20)}}};
    front.choice = HornChoice{studio.spare, test_day, true};
    front.types_pass = [](PassEntry& pass) {
        pass.type({0, 0}, "+7");
        return true;
    };
    front.measured = MeasuredSlides{test_day, {{"main", units::Millimetres(22)}}};
}

class EveryEdit : public testing::TestWithParam<std::string> {};

/// What the slip of an action is filled in with; other slips stay as they start.
std::map<std::string, std::string> slip_answers(const std::string& action) {
    static const std::map<std::string, std::map<std::string, std::string>> answers = {
        {"loan.lend", {{"due", "2026-12-18"}, {"disinfected", "yes"}}},
        {"loan.back", {{"condition_in", "three dents"}, {"to_repair", "dent in the bow"}}},
        {"loan.change", {{"remarks", "by car"}}},
        {"upkeep.add", {{"work", "greased"}, {"cost", "12,50 EUR"}, {"done_on", "2026-11-25"}}},
        {"horn.more", {{"tag", "INV-7"}, {"value", "1250 EUR"}, {"bought_on", "2019-08-01"}}},
        {"student.more", {{"year", "Year 7"}, {"at_home", "mouthpiece only"}, {"goals", "a solo"}}},
        {"upkeep.change", {{"by", "the technician"}}},
        {"routine.add", {{"title", "Another"}}},
        {"routine.change", {{"title", "Another"}}},
        {"practice.week", {{"given 1", "2026-11-24"}}},
        {"piece.add", {{"title", "Another"}}},
        {"piece.change", {{"title", "Another"}}},
        {"routine.change_given", {{"amount", "twice"}}}};
    const auto found = answers.find(action);
    return found == answers.end() ? std::map<std::string, std::string>() : found->second;
}

/// From a student's page where the action may run there, else from a horn's.
void turn_to_where_it_runs(PreparedStudio& studio, const Action& action) {
    studio.lend_and_note();
    studio.turn_to_ada();
    for (const auto horn : {studio.tuba, studio.spare})
        if (!action.may_run(*studio.desk)) studio.desk->go({.place = Place::horns, .horn = horn});
    // The last: it was never given to anyone.
    if (!action.may_run(*studio.desk))
        studio.desk->go({.place = Place::routines, .routine = studio.desk->file().routines().back().id});
    studio.desk->settle();
}

TEST_P(EveryEdit, IsTakenBackAndDoneAgain) {
    PreparedStudio studio;
    answer_everything(studio);
    studio.front.slip = slip_answers(GetParam());
    const Action& tested = action(GetParam());
    turn_to_where_it_runs(studio, tested);
    ASSERT_TRUE(tested.may_run(*studio.desk));

    const std::string before = studio.dump();
    tested.run(*studio.desk);
    const std::string after = studio.dump();
    ASSERT_NE(before, after) << "the action changed nothing";
    EXPECT_FALSE(studio.desk->file().undo_name()->empty());

    action("edit.undo").run(*studio.desk);
    EXPECT_EQ(studio.dump(), before);
    action("edit.redo").run(*studio.desk);
    EXPECT_EQ(studio.dump(), after);
    studio.desk->settle();
}

class EveryEditThatAsks : public EveryEdit {};

TEST_P(EveryEditThatAsks, NeverMindChangesNothing) {
    PreparedStudio studio;
    studio.front.agrees = false;
    const Action& tested = action(GetParam());
    turn_to_where_it_runs(studio, tested);
    const std::string before = studio.dump();
    tested.run(*studio.desk);
    EXPECT_EQ(studio.dump(), before);
}

std::string test_name(const testing::TestParamInfo<std::string>& tested) {
    std::string name = tested.param;
    name[name.find('.')] = '_';
    return name;
}

INSTANTIATE_TEST_SUITE_P(Registry, EveryEdit, testing::ValuesIn(editing_actions()), test_name);

INSTANTIATE_TEST_SUITE_P(Registry, EveryEditThatAsks, testing::ValuesIn(editing_actions(true)), test_name);

TEST(Typing, EveryReadingIsAnEditThatUndoes) {
    PreparedStudio studio;
    studio.desk->go({.place = Place::students, .student = studio.ada});
    std::vector<std::string> dumps{studio.dump()};
    for (std::size_t row = 0; row < 3; ++row) {
        studio.desk->type({row, 1}, "+7");
        dumps.push_back(studio.dump());
    }
    for (std::size_t i = dumps.size() - 1; i > 0; --i) {
        ASSERT_EQ(studio.dump(), dumps[i]);
        action("edit.undo").run(*studio.desk);
    }
    EXPECT_EQ(studio.dump(), dumps.front());
    EXPECT_TRUE(studio.desk->entry()->sheet().readings.empty());
    for (std::size_t i = 1; i < dumps.size(); ++i) {
        action("edit.redo").run(*studio.desk);
        EXPECT_EQ(studio.dump(), dumps[i]);
    }
    EXPECT_EQ(studio.desk->entry()->text({2, 1}), "+7");
}

}  // namespace
}  // namespace lowledger::desk
