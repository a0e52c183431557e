#include "app/desk/desk.h"

#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <set>

#include "app/desk/action.h"
#include "app/desk/lists.h"
#include "app/desk/places.h"
#include "app/desk/recent.h"
#include "model/studio/questions.h"
#include "model/units/refusal.h"
#include "reports/words/certificate_words.h"
#include "tests/app/desk/prepared_studio.h"

namespace lowledger::desk {
namespace {

using studio::SlidePosition;
using testing::SizeIs;

/// The desk turned to each place in turn, so that all actions are shown at some time.
template <typename Check>
void in_each_place(Check check) {
    PreparedStudio studio;
    for (const auto& entry : places()) {
        SCOPED_TRACE(title_of(entry.place));
        studio.desk->go({.place = entry.place});
        check(*studio.desk);
    }
}

TEST(Actions, HaveTheirOwnId) {
    std::set<std::string_view> ids;
    for (const auto& action : actions())
        EXPECT_TRUE(ids.insert(action.id).second) << action.id;
}

TEST(Actions, ThoseShownTogetherHaveTheirOwnKeyAndMnemonic) {
    in_each_place([](const Desk& desk) {
        std::set<std::string_view> keys;
        std::set<std::pair<Menu, char>> taken;
        for (const auto& action : actions()) {
            if (!is_shown(action, desk)) continue;
            EXPECT_TRUE(action.key.empty() || keys.insert(action.key).second) << action.key;
            const std::string text = menu_text(action, desk);
            ASSERT_NE(text.find('&'), std::string::npos) << action.id << " has no mnemonic";
            const char key = static_cast<char>(std::tolower(text[text.find('&') + 1]));
            EXPECT_TRUE(taken.insert({action.menu, key}).second) << action.id << " shares " << key;
        }
    });
}

TEST(Actions, WithoutAStudioOnlyThoseThatNeedNoneRun) {
    ScriptedFront front;
    const Desk desk({[] { return test_day; }, {}, nullptr, [] {}}, front);
    const std::set<std::string_view> need_none = {"studio.new",   "studio.open", "studio.sample",
                                                  "studio.close", "help.manual", "help.keys",
                                                  "chart.kind"};
    for (const auto& action : actions()) {
        if (!is_shown(action, desk)) continue;
        EXPECT_EQ(action.may_run(desk), need_none.contains(action.id)) << action.id;
    }
}

TEST(Desk, RemembersTheStudiosOpenedLast) {
    PreparedStudio studio;
    const auto first = studio.desk->file().path();
    studio.desk->create({studio.folder / "other.lowledger", {}});
    EXPECT_EQ(studio.desk->recent(), (std::vector{studio.folder / "other.lowledger", first}));
    const auto& again = action("studio.recent.1");
    ASSERT_TRUE(is_shown(again, *studio.desk));
    EXPECT_EQ(menu_text(again, *studio.desk), "&1 test");
    EXPECT_FALSE(is_shown(action("studio.recent.2"), *studio.desk));
    again.run(*studio.desk);
    EXPECT_EQ(studio.desk->file().path(), first);
    std::filesystem::remove(studio.folder / "other.lowledger");
    EXPECT_EQ(recent_studios(studio.folder), std::vector{first});
}

TEST(Desk, AnswersForWhatWasTyped) {
    PreparedStudio studio;
    studio.turn_to_ada();
    ASSERT_TRUE(studio.desk->answer().there()) << studio.desk->answer().refusal;
    const auto& answer = *studio.desk->answer().answer;
    EXPECT_EQ(answer.profile.sheets_used, 1);
    EXPECT_EQ(answer.profile.takes_used, static_cast<int>(2 * studio.desk->entry()->rows().size()));
    EXPECT_TRUE(answer.enough.tuning_notes_in());
    // Everything read sharp, so the horn has to become longer.
    EXPECT_TRUE(studio.desk->answer().something_moves());
    EXPECT_GT(answer.settings.slides.front().recommended, answer.settings.slides.front().now);
}

TEST(Desk, ThenSaysHowMuchBetterOtherPositionsCanBe) {
    PreparedStudio studio;
    studio.turn_to_ada();
    const words::Speech speech{studio.desk->words(), studio.desk->kind()};
    auto answer = *studio.desk->answer().answer;
    ASSERT_TRUE(answer.certificate);
    EXPECT_TRUE(answer.certificate->closed);
    EXPECT_THAT(words::certificate_sentence(speech, answer), testing::HasSubstr("0.0001\u00a0%"));
    answer.certificate->gap = units::SquareCents(0.05 * answer.settings.objective_after.value());
    EXPECT_THAT(words::certificate_sentence(speech, answer), testing::HasSubstr("more than 5.0\u00a0%"));
    answer.certificate->better.assign(answer.settings.slides.size(), units::Millimetres(12));
    EXPECT_THAT(words::certificate_sentence(speech, answer), testing::HasSubstr("main slide 12.0\u00a0mm"));
    answer.certificate.reset();
    EXPECT_THAT(words::certificate_sentence(speech, answer), testing::HasSubstr("still"));
}

TEST(Desk, ANewerQuestionDropsTheOlderAnswer) {
    PreparedStudio studio;
    studio.turn_to_ada();
    studio.desk->type({0, 1}, "-5");
    EXPECT_FALSE(studio.desk->answer().there()) << "an answer to other readings is shown";
    studio.desk->settle();
    ASSERT_TRUE(studio.desk->answer().there());
    EXPECT_EQ(studio.desk->answer().inputs->sheets.front(), studio.desk->entry()->sheet());
}

TEST(Desk, SlidesMovedWritesEveryKnownPositionAndWhatWasTold) {
    PreparedStudio studio;
    studio.turn_to_ada();
    const auto slides = studio.desk->answer().answer->settings.slides;
    action("settings.moved").run(*studio.desk);

    std::map<std::string, units::Millimetres> moved;
    for (const auto& position : studio.desk->file().slide_history(studio.tuba)) {
        if (position.origin != SlidePosition::Origin::moved) continue;
        EXPECT_EQ(position.on, test_day);
        moved[position.slide] = position.position;
    }
    ASSERT_THAT(moved, SizeIs(slides.size()));
    for (const auto& slide : slides)
        EXPECT_EQ(moved.at(slide.slide), slide.recommended);
    const auto given = studio.desk->file().given_settings(studio.ada);
    ASSERT_THAT(given, SizeIs(1));
    EXPECT_EQ(given.front().moved_on, test_day);
    EXPECT_EQ(given.front().sheet, studio.desk->entry()->sheet().id);

    studio.desk->settle();
    EXPECT_FALSE(studio.desk->answer().something_moves()) << "told to move again what has just been moved";
}

TEST(Desk, AHandoutIsRecordedOnceWithAllItRestsOn) {
    PreparedStudio studio;
    studio.turn_to_ada();
    studio.desk->give_out();
    studio.desk->settle();
    studio.desk->give_out();
    const auto given = studio.desk->file().given_settings(studio.ada);
    ASSERT_THAT(given, SizeIs(1));
    const auto json = nlohmann::json::parse(given.front().json);
    EXPECT_EQ(json.at("format"), "lowledger.settings/1");
    EXPECT_FALSE(given.front().moved_on);
    EXPECT_FALSE(given.front().engine.empty());
}

TEST(Desk, SlidesMovedAfterAHandoutMarksThatHandout) {
    PreparedStudio studio;
    studio.turn_to_ada();
    studio.desk->give_out();
    studio.desk->settle();
    studio.desk->slides_moved();
    const auto given = studio.desk->file().given_settings(studio.ada);
    ASSERT_THAT(given, SizeIs(1));
    EXPECT_EQ(given.front().moved_on, test_day);
}

TEST(Desk, AWarningNamesASheetThatDoesNotCount) {
    PreparedStudio studio;
    studio.turn_to_ada();
    auto head = studio.desk->entry()->sheet();
    head.warm = false;
    studio.desk->set_head(head);
    studio.desk->settle();
    ASSERT_TRUE(studio.desk->answer().there());
    EXPECT_THAT(studio.desk->answer().answer->profile.not_used, SizeIs(1));
    EXPECT_FALSE(studio.desk->answer().something_moves());
}

TEST(Desk, TheHeadOfAnUnfiledSheetWaitsForTheFirstReading) {
    PreparedStudio studio;
    studio.desk->go({.place = Place::students, .student = studio.ada});
    auto head = studio.desk->entry()->sheet();
    head.mouthpiece = "borrowed";
    studio.desk->set_head(head);
    EXPECT_TRUE(studio.desk->file().sheets(studio.ada).empty());
    studio.desk->type({0, 1}, "3");
    ASSERT_THAT(studio.desk->file().sheets(studio.ada), SizeIs(1));
    EXPECT_EQ(studio.desk->file().sheets(studio.ada).front().mouthpiece, "borrowed");
}

TEST(Desk, BackGoesThroughWhereOneHasBeen) {
    PreparedStudio studio;
    auto& desk = *studio.desk;
    const View students = desk.view();
    const View ada{.place = Place::students, .student = studio.ada};
    const View horn{.place = Place::horns, .horn = studio.tuba};
    desk.go(ada);
    desk.go(horn);
    desk.go_back();
    EXPECT_EQ(desk.view(), ada);
    desk.go_back();
    EXPECT_EQ(desk.view(), students);
    EXPECT_FALSE(desk.can_go_back());
}

TEST(Desk, WhatDoesNotOpenLeavesTheOpenStudioOpen) {
    PreparedStudio studio;
    EXPECT_THROW(studio.desk->open(studio.folder / "missing.lowledger"), store::StudioMissing);
    EXPECT_EQ(studio.desk->file().facts().name, "Test studio");
}

TEST(Desk, AddingAStudentOpensTheirPage) {
    PreparedStudio studio;
    studio.front.student = studio::Student{};
    studio.front.student->name = "Cem Örnek";
    action("student.add").run(*studio.desk);
    ASSERT_TRUE(studio.desk->student());
    EXPECT_EQ(studio.desk->student()->name, "Cem Örnek");
    EXPECT_EQ(studio.desk->entry(), nullptr);
}

TEST(Desk, ANewHornInsteadGivesTheOldOneBackThatDay) {
    PreparedStudio studio;
    studio.desk->go({.place = Place::students, .student = studio.ada});
    studio.front.choice = HornChoice{studio.spare, test_day, true};
    action("student.horn").run(*studio.desk);
    ASSERT_THAT(studio.desk->horns_of_student(), SizeIs(1));
    EXPECT_EQ(studio.desk->horn()->mark, "T-2");
    const auto uses = studio.desk->file().horn_uses(studio.ada);
    ASSERT_THAT(uses, SizeIs(2));
    EXPECT_EQ(
        std::ranges::count(uses, test_day, [](const auto& use) { return use.until.value_or(use.from); }), 2);
}

TEST(Lists, SayWhatMattersNow) {
    PreparedStudio studio;
    const auto& words = studio.desk->words();
    auto rows = student_rows(studio.desk->file(), words, test_day, "");
    ASSERT_THAT(rows, SizeIs(2));
    EXPECT_EQ(rows[0].horn, "T-1");
    EXPECT_EQ(rows[0].now, "none yet");
    EXPECT_EQ(rows[1].now, "no horn");
    studio.turn_to_ada();
    rows = student_rows(studio.desk->file(), words, test_day, "");
    EXPECT_EQ(rows[0].now, "today");
    EXPECT_THAT(student_rows(studio.desk->file(), words, test_day, "T-1"), SizeIs(1));
    EXPECT_THAT(horn_rows(studio.desk->file(), words, test_day, "ada"), SizeIs(1));
    EXPECT_THAT(horn_rows(studio.desk->file(), words, test_day, "four"), SizeIs(1));
}

TEST(Find, MeetsEveryWordInEitherCase) {
    EXPECT_TRUE(found_in("Zoë Ångström", "ång ZOË"));
    EXPECT_TRUE(found_in("Ελένη Παππά", "ελέ"));
    EXPECT_TRUE(found_in("Елена Иванова", "ИВАН"));
    EXPECT_TRUE(found_in("Łukasz Żak", "łuk ża"));
    EXPECT_TRUE(found_in("anything", "  "));
    EXPECT_FALSE(found_in("Zoë Ångström", "zoë b"));
}

TEST(Desk, OwnKindsJoinTheBuiltInOnesAndMayVanish) {
    PreparedStudio studio;
    const auto folder = studio.folder / "kinds";
    std::filesystem::create_directory(folder);
    std::string text = horns::built_in_kinds().front().source_text;
    const std::string id = "\"" + horns::built_in_kinds().front().id + "\"";
    text.replace(text.find(id), id.size(), "\"school-tuba\"");
    std::ofstream(folder / "school-tuba.toml") << text;
    const auto kinds = studio.desk->kinds().kinds;
    ASSERT_EQ(kinds.size(), horns::built_in_kinds().size() + 1);
    ASSERT_EQ(kinds.back().id, "school-tuba");

    studio.front.new_horn = NewHorn{studio::horn_of(kinds.back()), {}};
    studio.front.new_horn->horn.mark = "S-1";
    action("horn.add").run(*studio.desk);
    ASSERT_TRUE(studio.desk->horn());
    EXPECT_EQ(studio.desk->kind().id, "school-tuba");
    EXPECT_FALSE(studio.desk->kind_has_vanished());
    std::filesystem::remove(folder / "school-tuba.toml");
    EXPECT_TRUE(studio.desk->kind_has_vanished());
    EXPECT_EQ(studio.desk->kind().id, "school-tuba");

    // One that cannot be read is named and hides no other; the horn's kind may be in it.
    std::ofstream(folder / "broken.toml") << "id = 3\n";
    std::ofstream(folder / "school-tuba.toml") << text;
    const auto read = studio.desk->kinds();
    EXPECT_EQ(read.kinds.back().id, "school-tuba");
    ASSERT_EQ(read.problems.size(), 1U);
    EXPECT_NE(read.problems.front().find("broken.toml"), std::string::npos);
    std::filesystem::remove(folder / "school-tuba.toml");
    EXPECT_FALSE(studio.desk->kind_has_vanished());
}

}  // namespace
}  // namespace lowledger::desk
