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

constexpr const char* book_pages[] = {"print.class",     "print.day",   "print.inventory", "print.repairs",
                                      "print.summaries", "print.notes", "print.loans",     "print.cards"};
const std::string private_text = "PRIVATE";

std::string text_of(const canvas::Document& document) {
    std::string all;
    for (const auto& page : document.pages)
        for (const auto& item : page.items)
            if (const auto* text = std::get_if<canvas::Text>(&item)) all += text->text + "\n";
    return all;
}

std::string printed(PreparedStudio& studio, const char* id,
                    const std::map<std::string, std::string>& answers = {}) {
    studio.front.slip = answers;
    studio.front.documents.clear();
    action(id).run(*studio.desk);
    EXPECT_FALSE(studio.front.documents.empty()) << id << ": " << studio.front.said;
    return studio.front.documents.empty() ? "" : text_of(studio.front.documents.back().document);
}

/// A lesson today and one last week, a loan, work, a stuck slide; in every field that is never printed stands
/// the same word.
void fill(PreparedStudio& studio) {
    auto& file = studio.desk->file();
    file.edit("fill", [&](store::Edit& edit) {
        auto ada = *file.student(studio.ada);
        ada.remarks = private_text;
        ada.group = "Year 7";
        ada.goals = "A whole page without stopping.";
        edit.update(ada);
        auto spare = *file.horn(studio.spare);
        spare.remarks = private_text;
        spare.locker = "L 12";
        spare.slides.front().stuck = true;
        edit.update(spare);
        edit.add(studio::StudentEvent{{}, studio.ada, test_day - 30, {}, private_text});
        edit.add(studio::Term{{}, "Autumn term", test_day - 60, test_day + 30});
        studio::Lesson past{.id = {}, .student = studio.ada, .on = test_day - 7};
        past.state = studio::Lesson::State::kept;
        past.done = "Long tones with a drone.";
        past.next = "Slur to the neighbour and back.";
        past.private_remark = private_text;
        edit.add(past);
        edit.add(studio::Lesson{.id = {}, .student = studio.ada, .on = test_day});
        edit.add(studio::Upkeep{.id = {},
                                .horn = studio.spare,
                                .work = studio::Upkeep::Work::repaired,
                                .noted_on = test_day - 9,
                                .what = "Dent in the bow."});
        edit.add(studio::Loan{.id = {},
                              .horn = studio.spare,
                              .student = studio.ben,
                              .from = test_day - 20,
                              .condition_out = "Small dent in the bell.",
                              .remarks = private_text});
    });
}

TEST(BookPrinting, EachPageShowsItsRecords) {
    PreparedStudio studio;
    fill(studio);
    EXPECT_THAT(printed(studio, "print.class"), HasSubstr("Ada"));
    EXPECT_THAT(printed(studio, "print.class"), HasSubstr("Ben"));
    const auto of_class = printed(studio, "print.class", {{"for", "class Year 7"}});
    EXPECT_THAT(of_class, HasSubstr("Class list, Year 7"));
    EXPECT_THAT(of_class, Not(HasSubstr("Ben")));
    EXPECT_THAT(printed(studio, "print.day"), HasSubstr("Slur to the neighbour and back."));
    EXPECT_THAT(printed(studio, "print.day", {{"day", (test_day + 1).iso()}}), HasSubstr("No lesson"));
    EXPECT_THAT(printed(studio, "print.inventory"), HasSubstr("(at home)"));
    const auto repairs = printed(studio, "print.repairs");
    EXPECT_THAT(repairs, HasSubstr("Dent in the bow."));
    EXPECT_THAT(repairs, HasSubstr("Stuck: main slide."));
}

TEST(BookPrinting, OfAStudentsTermAndLessons) {
    PreparedStudio studio;
    fill(studio);
    studio.turn_to_ada();
    const auto notes = printed(studio, "print.notes");
    EXPECT_THAT(notes, HasSubstr("Long tones with a drone."));
    EXPECT_THAT(notes, Not(HasSubstr("Ben")));
    EXPECT_THAT(printed(studio, "print.notes", {{"first", test_day.iso()}}), HasSubstr("has a note"));
    const auto summary = printed(studio, "print.summaries");
    EXPECT_THAT(summary, HasSubstr("Came to 1 lesson."));
    EXPECT_THAT(summary, HasSubstr("A whole page without stopping."));
    EXPECT_THAT(summary, HasSubstr("Slur to the neighbour and back."));
    EXPECT_THAT(summary, HasSubstr("from 1"));
    EXPECT_THAT(printed(studio, "print.summaries", {{"remark", "A good term."}}), HasSubstr("A good term."));
    EXPECT_THAT(printed(studio, "print.summaries", {{"for", "all"}}), HasSubstr("Ben"));
    EXPECT_EQ(studio.front.documents.back().document.bookmarks.size(), 2U);
}

TEST(BookPrinting, LoanFormsAreOfWhatIsLentOrElsePlayed) {
    PreparedStudio studio;
    fill(studio);
    const auto all = printed(studio, "print.loans", {{"for", "all"}});
    EXPECT_THAT(all, HasSubstr("Small dent in the bell."));
    EXPECT_THAT(all, HasSubstr("T-1"));
    const auto cards = printed(studio, "print.cards");
    EXPECT_THAT(cards, HasSubstr("L 12"));
    EXPECT_THAT(cards, HasSubstr("stuck: for the technician"));
    EXPECT_EQ(studio.front.documents.back().document.bookmarks.size(), 2U);
}

TEST(BookPrinting, ASummaryNeedsATerm) {
    PreparedStudio studio;
    studio.front.slip = std::map<std::string, std::string>{};
    EXPECT_THROW(action("print.summaries").run(*studio.desk), units::Refusal);
}

TEST(BookPrinting, NothingPrivateIsEverPrinted) {
    PreparedStudio studio;
    fill(studio);
    for (const char* id : book_pages)
        EXPECT_THAT(printed(studio, id), Not(HasSubstr(private_text))) << id;
}

TEST(BookPrinting, LargePrintAndNeverMind) {
    PreparedStudio studio;
    fill(studio);
    for (const char* id : book_pages) {
        EXPECT_THAT(printed(studio, id, {{"large", "yes"}}), Not(IsEmpty())) << id;
        studio.front.slip.reset();
        studio.front.documents.clear();
        action(id).run(*studio.desk);
        EXPECT_THAT(studio.front.documents, IsEmpty()) << id;
    }
}

}  // namespace
}  // namespace lowledger::desk
