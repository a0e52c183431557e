#include "app/desk/finding.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>

#include "app/desk/action.h"
#include "app/desk/lending.h"
#include "app/desk/places.h"
#include "app/desk/term_lists.h"
#include "tests/app/desk/prepared_studio.h"

namespace lowledger::desk {
namespace {

using Kind = studio::Found::Kind;
using testing::IsEmpty;
using testing::SizeIs;

/// A lesson of Ada's, a sheet with a remark, her goals, upkeep and a loan, all with the word kettle in them.
void write_kettles(PreparedStudio& studio) {
    studio.desk->file().edit("kettles", [&](store::Edit& edit) {
        auto ada = *studio.desk->file().student(studio.ada);
        ada.goals = "the kettle march";
        edit.update(ada);
        studio::Lesson lesson{.id = {}, .student = studio.ada, .on = studio::Date(2026, 11, 18)};
        lesson.done = "Kettle march\nbars 1 to 8";
        edit.add(lesson);
        studio::TuningSheet sheet{
            .id = {}, .student = studio.ada, .horn = studio.tuba, .on = studio::Date(2026, 11, 4)};
        sheet.remarks = "beside the kettle";
        edit.add(sheet);
        studio::Loan loan{
            .id = {}, .horn = studio.spare, .student = studio.ben, .from = studio::Date(2026, 9, 7)};
        loan.accessories = "kettle bag";
        edit.add(loan);
        studio::Upkeep work{.id = {}, .horn = studio.tuba, .noted_on = studio::Date(2026, 10, 1)};
        work.what = "bell like a kettle";
        edit.add(work);
    });
}

std::vector<studio::Found> kettles(PreparedStudio& studio) {
    return find_anything(*studio.desk, "kett");
}

TEST(FindAnything, StudentsFirstThenTheNewest) {
    PreparedStudio studio;
    write_kettles(studio);
    const auto found = kettles(studio);
    ASSERT_THAT(found, SizeIs(5));
    EXPECT_EQ(found[0].kind, Kind::student);
    EXPECT_EQ(found[1].kind, Kind::lesson);
    EXPECT_EQ(found[2].kind, Kind::sheet);
    EXPECT_EQ(found[3].kind, Kind::upkeep);
    EXPECT_EQ(found[4].kind, Kind::loan);
    EXPECT_THAT(find_anything(*studio.desk, ""), IsEmpty());
    EXPECT_THAT(find_anything(*studio.desk, "\"("), IsEmpty());
}

TEST(FindAnything, ARowSaysWhatWhoseWhichWordsAndWhen) {
    PreparedStudio studio;
    write_kettles(studio);
    const auto listing = found_listing(*studio.desk, kettles(studio));
    ASSERT_THAT(listing.rows, SizeIs(5));
    const auto& lesson = listing.rows[1];
    EXPECT_EQ(lesson.id, 1);
    EXPECT_EQ(lesson.cells[0].text, "Lesson");
    EXPECT_EQ(lesson.cells[1].text, "Ada Example");
    EXPECT_EQ(lesson.cells[2].text, "Kettle march bars 1 to 8");
    EXPECT_EQ(lesson.cells[3].text, "18 November 2026");
    EXPECT_EQ(listing.rows[4].cells[1].text, "Ben Beispiel · T-2");
}

TEST(FindAnything, EveryRowLeadsToWhereTheRecordIs) {
    PreparedStudio studio;
    write_kettles(studio);
    for (const auto& found : kettles(studio)) {
        studio.front.found = found;
        action("edit.find_anything").run(*studio.desk);
        const auto& view = studio.desk->view();
        switch (found.kind) {
            case Kind::loan:
                EXPECT_EQ(section_of(view), Section::loans);
                EXPECT_EQ(chosen_loan(*studio.desk)->id.number, found.number);
                EXPECT_EQ(view.horn, studio.spare);
                break;
            case Kind::upkeep:
                EXPECT_EQ(section_of(view), Section::upkeep);
                EXPECT_EQ(chosen_upkeep(*studio.desk)->id.number, found.number);
                break;
            case Kind::sheet:
                EXPECT_EQ(section_of(view), Section::sheet);
                EXPECT_EQ(studio.desk->entry()->sheet().id.number, found.number);
                break;
            case Kind::lesson:
                EXPECT_EQ(section_of(view), Section::lesson_note);
                EXPECT_EQ(studio.desk->lesson()->id.number, found.number);
                break;
            default:
                EXPECT_EQ(view.place, Place::students);
                EXPECT_EQ(view.student, studio.ada);
        }
    }
    studio.desk->settle();
}

TEST(FindAnything, RoutinesGroupsAndTheirLessonsHavePlacesOfTheirOwn) {
    PreparedStudio studio;
    studio.plan_a_term();
    auto& desk = *studio.desk;
    const auto routine = desk.file().routines().front();
    const auto open_first = [&](Kind kind, std::string_view typed) {
        for (const auto& found : find_anything(desk, typed)) {
            if (found.kind != kind) continue;
            studio.front.found = found;
            action("edit.find_anything").run(desk);
            return true;
        }
        return false;
    };
    ASSERT_TRUE(open_first(Kind::routine, routine.title));
    EXPECT_EQ(desk.view().place, Place::routines);
    EXPECT_EQ(desk.view().routine, routine.id);
    ASSERT_TRUE(open_first(Kind::group, "Tuba duo"));
    EXPECT_EQ(section_of(desk.view()), Section::groups);
    EXPECT_EQ(chosen_group(desk)->id, studio.group);
    desk.file().edit("note", [&](store::Edit& edit) {
        auto lesson = desk.file().lessons(studio.group, test_day, test_day).front();
        lesson.done = "kettle duet";
        edit.update(lesson);
    });
    ASSERT_TRUE(open_first(Kind::lesson, "kettle"));
    EXPECT_EQ(desk.view().place, Place::today);
    EXPECT_EQ(desk.lesson()->group, studio.group);
}

TEST(FindAnything, NeverMindStaysWhereOneIs) {
    PreparedStudio studio;
    studio.desk->go({.place = Place::horns, .horn = studio.tuba});
    const View before = studio.desk->view();
    action("edit.find_anything").run(*studio.desk);
    EXPECT_EQ(studio.desk->view(), before);
}

}  // namespace
}  // namespace lowledger::desk
