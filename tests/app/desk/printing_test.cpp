#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>
#include <variant>

#include "app/desk/action.h"
#include "model/units/refusal.h"
#include "tests/app/desk/prepared_studio.h"

namespace lowledger::desk {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

constexpr const char* group_pages[] = {"print.handouts", "print.charts", "print.settings",
                                       "print.pass",     "print.forms",  "print.strips"};

std::string text_of(const canvas::Document& document) {
    std::string all;
    for (const auto& page : document.pages)
        for (const auto& item : page.items)
            if (const auto* text = std::get_if<canvas::Text>(&item)) all += text->text + "\n";
    return all;
}

/// Ada on T-1 in a class, Ben on T-2.
void let_both_play(PreparedStudio& studio) {
    studio.desk->file().edit("both", [&](store::Edit& edit) {
        auto ada = *studio.desk->file().student(studio.ada);
        ada.group = "Year 7";
        edit.update(ada);
        edit.add(studio::HornUse{{}, studio.ben, studio.spare, test_day, std::nullopt});
    });
}

const canvas::Document& printed(PreparedStudio& studio, const char* id,
                                const std::map<std::string, std::string>& answers) {
    studio.front.slip = answers;
    action(id).run(*studio.desk);
    EXPECT_FALSE(studio.front.documents.empty()) << id << ": " << studio.front.said;
    return studio.front.documents.back().document;
}

std::string ticked(studio::StudentId id) {
    return std::to_string(id.number);
}

TEST(Printing, EveryPageIsOfThoseAskedFor) {
    PreparedStudio studio;
    let_both_play(studio);
    studio.turn_to_ada();
    for (const char* id : group_pages) {
        const auto all = text_of(printed(studio, id, {{"for", "all"}}));
        EXPECT_THAT(all, HasSubstr("Ada")) << id;
        EXPECT_THAT(all, HasSubstr("Ben")) << id;
        const auto of_class = text_of(printed(studio, id, {{"for", "class Year 7"}}));
        EXPECT_THAT(of_class, HasSubstr("Ada")) << id;
        EXPECT_THAT(of_class, Not(HasSubstr("Ben"))) << id;
        const auto of_ticked =
            text_of(printed(studio, id, {{"for", "ticked"}, {"students", ticked(studio.ben)}}));
        EXPECT_THAT(of_ticked, HasSubstr("Ben")) << id;
        EXPECT_THAT(of_ticked, Not(HasSubstr("Ada"))) << id;
        const auto of_page = text_of(printed(studio, id, {{"for", "page"}}));
        EXPECT_THAT(of_page, HasSubstr("Ada")) << id;
        EXPECT_THAT(of_page, Not(HasSubstr("Ben"))) << id;
    }
}

TEST(Printing, RoutineSheetsAreOfThoseWhoHaveARoutineInThatWeek) {
    PreparedStudio studio;
    let_both_play(studio);
    const auto all = text_of(printed(studio, "print.routines", {{"for", "all"}}));
    EXPECT_THAT(all, HasSubstr("Ada"));
    EXPECT_THAT(all, Not(HasSubstr("Ben")));
    EXPECT_THAT(all, HasSubstr("Week of 23 November 2026"));
    studio.front.slip = {{"for", "all"}, {"week", "2026-10-12"}};
    EXPECT_THROW(action("print.routines").run(*studio.desk), units::Refusal);
}

TEST(Printing, OfAHornsPageAreThoseWhoPlayIt) {
    PreparedStudio studio;
    let_both_play(studio);
    studio.desk->go({.place = Place::horns, .horn = studio.spare});
    const auto text = text_of(printed(studio, "print.strips", {}));
    EXPECT_THAT(text, HasSubstr("Ben"));
    EXPECT_THAT(text, Not(HasSubstr("Ada")));
    EXPECT_EQ(studio.front.documents.back().file_name, "Slide strips " + test_day.iso());
}

TEST(Printing, SeveralHandoutsAreOneDocumentWithABookmarkEach) {
    PreparedStudio studio;
    let_both_play(studio);
    const auto& document = printed(studio, "print.handouts", {{"for", "all"}});
    EXPECT_THAT(document.pages, SizeIs(2));
    ASSERT_THAT(document.bookmarks, SizeIs(testing::Ge(2)));
    const auto titled = [&](const std::string& title) {
        return std::ranges::any_of(document.bookmarks, [&](const auto& bookmark) {
            return bookmark.title.find(title) != std::string::npos;
        });
    };
    EXPECT_TRUE(titled("Ada Example"));
    EXPECT_TRUE(titled("Ben Beispiel"));
}

TEST(Printing, LargePrintIsLarger) {
    PreparedStudio studio;
    studio.turn_to_ada();
    const auto small = printed(studio, "print.handouts", {{"for", "all"}}).pages.size();
    const auto large = printed(studio, "print.handouts", {{"for", "all"}, {"large", "yes"}}).pages.size();
    EXPECT_GT(large, small);
}

TEST(Printing, HandoutsHandedOnAreKeptOnceAndUndoneAtOnce) {
    PreparedStudio studio;
    let_both_play(studio);
    studio.turn_to_ada();
    printed(studio, "print.handouts", {{"for", "all"}});
    const std::string before = studio.dump();
    studio.front.documents.back().handed_on();
    EXPECT_THAT(studio.desk->file().given_settings(studio.ada), SizeIs(1));
    EXPECT_THAT(studio.desk->file().given_settings(studio.ben), SizeIs(1));
    studio.front.documents.back().handed_on();
    EXPECT_THAT(studio.desk->file().given_settings(studio.ada), SizeIs(1));
    action("edit.undo").run(*studio.desk);
    EXPECT_EQ(studio.dump(), before);
    studio.desk->settle();
}

TEST(Printing, WorkThatIsStoppedShowsNothing) {
    PreparedStudio studio;
    let_both_play(studio);
    studio.front.slip = std::map<std::string, std::string>{{"for", "all"}};
    studio.front.stops_before = 1;
    for (const char* id : {"print.handouts", "print.charts", "print.settings", "print.strips"})
        action(id).run(*studio.desk);
    EXPECT_THAT(studio.front.documents, IsEmpty());
}

TEST(Printing, NeverMindShowsNothing) {
    PreparedStudio studio;
    for (const char* id : group_pages)
        action(id).run(*studio.desk);
    EXPECT_THAT(studio.front.documents, IsEmpty());
}

TEST(Printing, WhereNobodyPlaysASentenceSaysSo) {
    PreparedStudio studio;
    studio.front.slip =
        std::map<std::string, std::string>{{"for", "ticked"}, {"students", ticked(studio.ben)}};
    for (const char* id : group_pages)
        EXPECT_THROW(action(id).run(*studio.desk), units::Refusal) << id;
}

TEST(SectionPass, HasTheNotesAskedFor) {
    PreparedStudio studio;
    const auto& pass = printed(studio, "print.pass", {{"notes", "Bb2, f2 D\u266d3 C3"}});
    const auto text = text_of(pass);
    // Each in the octave nearest the note that a band tunes to.
    for (const char* note : {"B\u266d", "F", "D\u266d", "C"})
        EXPECT_THAT(text, HasSubstr(note));
}

TEST(SectionPass, RefusesWhatIsNoNoteAndTooFewOrTooMany) {
    PreparedStudio studio;
    studio.front.slip = std::map<std::string, std::string>{{"notes", "Bb2 X2 D3"}};
    action("print.pass").run(*studio.desk);
    EXPECT_THAT(studio.front.said, HasSubstr("\"X2\" is no note"));
    for (const char* notes : {"", "Bb2 F2", "Bb2 F2 D3 C3 G3 A3"}) {
        studio.front.said.clear();
        studio.front.slip = std::map<std::string, std::string>{{"notes", notes}};
        action("print.pass").run(*studio.desk);
        EXPECT_THAT(studio.front.said, HasSubstr("three to five notes")) << notes;
    }
    EXPECT_THAT(studio.front.documents, IsEmpty());
}

TEST(SectionPass, SpeaksTheStudiosNames) {
    PreparedStudio studio;
    studio.desk->file().edit("german", [&](store::Edit& edit) {
        auto facts = studio.desk->file().facts();
        facts.naming = units::Naming::german;
        edit.update(facts);
    });
    studio.front.slip = std::map<std::string, std::string>{};
    action("print.pass").run(*studio.desk);
    EXPECT_THAT(studio.front.documents, SizeIs(1)) << studio.front.said;
}

}  // namespace
}  // namespace lowledger::desk
