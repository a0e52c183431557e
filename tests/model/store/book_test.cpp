// The records of the teaching week: what is filed is what is read, also after closing and opening again.
#include <SQLiteCpp/Database.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "model/store/schema.h"
#include "tests/model/store/invented.h"
#include "tests/model/store/invented_book.h"

namespace lowledger::store {
namespace {

using studio::Date;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

const Date first_day(1900, 1, 1);
const Date last_day(2199, 12, 31);

class BookOfTheWeek : public testing::Test {
  protected:
    BookOfTheWeek() {
        file().edit("Add", [&](Edit& edit) {
            first_ = edit.add(invented::plain_student("First"));
            second_ = edit.add(invented::plain_student("Second"));
            horn_ = edit.add(invented::plain_horn());
        });
    }
    void reopen() {
        file_.reset();
        file_.emplace(StudioFile::open(path_));
    }
    StudioFile& file() { return *file_; }
    template <typename Record>
    Record filed(Record record) {
        file().edit("File it", [&](Edit& edit) { record.id = edit.add(record); });
        return record;
    }
    template <typename Record>
    void change(const Record& record) {
        file().edit("Change", [&](Edit& edit) { edit.update(record); });
        reopen();
    }
    template <typename Id>
    void remove(Id id) {
        file().edit("Remove", [&](Edit& edit) { edit.remove(id); });
    }
    template <typename Record>
    std::string refused(const Record& record) {
        const std::string before = file().dump();
        const std::string sentence =
            invented::sentence_of([&] { file().edit("Break", [&](Edit& edit) { edit.add(record); }); });
        EXPECT_EQ(file().dump(), before);
        return sentence;
    }

    invented::Folder folder_;
    std::filesystem::path path_ = folder_ / "book.lowledger";
    std::optional<StudioFile> file_ = StudioFile::create(path_, invented::facts());
    studio::StudentId first_;
    studio::StudentId second_;
    studio::HornId horn_;
};

TEST_F(BookOfTheWeek, KeepsEventsAndPieces) {
    const auto later = filed(invented::event(first_));
    auto event = invented::event(first_);
    event.on = Date(2024, 2, 29);
    event.kind = studio::StudentEvent::Kind::growth;
    event = filed(event);
    auto old = filed(invented::full_piece(first_));
    const auto piece = filed(invented::plain_piece(first_));
    reopen();
    EXPECT_THAT(file().student_events(first_), ElementsAre(event, later));
    EXPECT_THAT(file().pieces(first_), ElementsAre(piece, old));
    old.until.reset();
    old.title = "Other";
    change(old);
    EXPECT_THAT(file().pieces(first_), ElementsAre(piece, old));
    remove(piece.id);
    remove(event.id);
    EXPECT_THAT(file().pieces(first_), ElementsAre(old));
    EXPECT_THAT(file().student_events(first_), ElementsAre(later));
    EXPECT_THAT(file().student_events(second_), IsEmpty());
}

TEST_F(BookOfTheWeek, KeepsMouthpiecesAndUpkeep) {
    const auto plain = filed(invented::plain_mouthpiece());
    auto full = filed(invented::full_mouthpiece(horn_, first_));
    const auto to_do = filed(invented::upkeep_to_do(horn_));
    const auto done = filed(invented::upkeep_done(full.id));
    auto earlier = invented::upkeep_done(full.id);
    earlier.done_on = Date(2026, 1, 31);
    earlier = filed(earlier);
    reopen();
    EXPECT_THAT(file().mouthpieces(), ElementsAre(plain, full));
    EXPECT_EQ(file().mouthpiece(full.id), full);
    EXPECT_THAT(file().upkeep(horn_), ElementsAre(to_do));
    EXPECT_THAT(file().upkeep(full.id), ElementsAre(earlier, done));
    full.value.reset();
    full.horn.reset();
    change(full);
    EXPECT_EQ(file().mouthpiece(full.id), full);
    remove(full.id);
    EXPECT_THAT(file().upkeep(full.id), IsEmpty());
    EXPECT_THAT(file().check(), IsEmpty());
}

TEST_F(BookOfTheWeek, KeepsLoansOfAHornApart) {
    const auto mouthpiece = filed(invented::plain_mouthpiece());
    auto full = filed(invented::full_loan(horn_, first_, mouthpiece.id));
    const auto plain = filed(invented::plain_loan(horn_, second_));
    reopen();
    EXPECT_THAT(file().loans(horn_), ElementsAre(plain, full));
    EXPECT_THAT(file().loans(first_), ElementsAre(full));
    EXPECT_EQ(file().loan(plain.id), plain);
    EXPECT_THAT(file().loans_out(), ElementsAre(plain));
    EXPECT_THAT(refused(invented::plain_loan(horn_, first_)), HasSubstr("from 2026-09-01 on"));
    studio::Loan touching = invented::plain_loan(horn_, first_);
    touching.from = *full.until;
    touching.until = plain.from;
    touching = filed(touching);
    touching.until = plain.from + 1;
    EXPECT_THAT(
        invented::sentence_of([&] { file().edit("Longer", [&](Edit& edit) { edit.update(touching); }); }),
        HasSubstr("The loan was not filed"));
    full.condition_in = "fine";
    change(full);
    EXPECT_EQ(file().loan(full.id), full);
    remove(mouthpiece.id);
    EXPECT_EQ(file().loan(full.id)->mouthpiece, std::nullopt);
}

TEST_F(BookOfTheWeek, KeepsTermsWithTheirHolidaysApart) {
    auto winter = filed(invented::full_term());
    const auto summer = filed(invented::plain_term());
    reopen();
    EXPECT_THAT(file().terms(), ElementsAre(winter, summer));
    EXPECT_EQ(file().term(winter.id), winter);
    auto other = invented::plain_term();
    other.first = winter.last;
    other.last = winter.last;
    EXPECT_THAT(refused(other), HasSubstr("shares days with Winter"));
    winter.holidays.erase(winter.holidays.begin());
    change(winter);
    EXPECT_EQ(file().term(winter.id), winter);
}

TEST_F(BookOfTheWeek, KeepsGroupsAndTheTimetable) {
    const auto term = filed(invented::full_term());
    const auto plain = filed(invented::plain_group());
    auto group = filed(invented::full_group(first_, second_));
    const auto sunday = filed(invented::full_slot(term.id, group.id));
    const auto monday = filed(invented::plain_slot(term.id, first_));
    reopen();
    EXPECT_THAT(file().groups(), ElementsAre(plain, group));
    EXPECT_EQ(file().group(group.id), group);
    EXPECT_THAT(file().timetable(term.id), ElementsAre(monday, sunday));
    std::swap(group.members[0], group.members[2]);
    change(group);
    EXPECT_EQ(file().group(group.id), group);
    auto kept = invented::plain_lesson(first_, Date(2026, 11, 2));
    kept.slot = monday.id;
    kept.state = studio::Lesson::State::kept;
    kept = filed(kept);
    auto planned = kept;
    planned.on = Date(2026, 11, 9);
    planned.state = studio::Lesson::State::planned;
    filed(planned);
    remove(monday.id);
    kept.slot.reset();
    EXPECT_THAT(file().lessons(first_, first_day, last_day), ElementsAre(kept));
    remove(term.id);
    EXPECT_THAT(file().timetable(term.id), IsEmpty());
    EXPECT_THAT(file().check(), IsEmpty());
}

TEST_F(BookOfTheWeek, KeepsLessons) {
    const auto term = filed(invented::full_term());
    const auto group = filed(invented::full_group(first_, second_));
    const auto slot = filed(invented::full_slot(term.id, group.id));
    auto missed = invented::plain_lesson(first_, Date(2026, 11, 18));
    missed.state = studio::Lesson::State::missed_with_notice;
    missed.make_up_owed = true;
    missed = filed(missed);
    auto together = invented::full_lesson(group.id, slot.id, missed.id, first_, second_);
    together.make_up_owed = false;
    together = filed(together);
    reopen();
    EXPECT_EQ(file().lesson(together.id), together);
    EXPECT_THAT(file().lessons(missed.on, together.on), ElementsAre(missed, together));
    EXPECT_THAT(file().lessons(missed.on + 1, together.on - 1), IsEmpty());
    EXPECT_THAT(file().lessons(group.id, first_day, last_day), ElementsAre(together));
    EXPECT_THAT(file().lessons(first_, first_day, last_day), ElementsAre(together, missed));
    EXPECT_THAT(file().lessons(second_, first_day, last_day), ElementsAre(together));
    EXPECT_THAT(file().lessons_to_make_up(), ElementsAre(missed, together));
    together.attendance.pop_back();
    change(together);
    EXPECT_EQ(file().lesson(together.id), together);
    remove(missed.id);
    EXPECT_EQ(file().lesson(together.id)->instead_of, std::nullopt);
    together.instead_of.reset();
    together.attendance.push_back(together.attendance.front());
    EXPECT_THAT(refused(together), HasSubstr("called twice"));
    auto alone = invented::plain_lesson(first_, Date(2026, 11, 18));
    alone.attendance = {{first_}};
    EXPECT_THAT(refused(alone), HasSubstr("in a group's lesson"));
}

TEST_F(BookOfTheWeek, CountsAGroupsLessonsOnlyWhileAStudentIsOfItOrWasCalled) {
    studio::Group group = invented::plain_group();
    group.members = {{first_, Date(2026, 11, 1), Date(2026, 11, 8)}};
    group = filed(group);
    const auto lesson_on = [&](Date on) {
        studio::Lesson lesson{.id = {}, .on = on};
        lesson.group = group.id;
        return lesson;
    };
    const auto inside = filed(lesson_on(Date(2026, 11, 7)));
    filed(lesson_on(Date(2026, 11, 8)));
    auto guest = lesson_on(Date(2026, 11, 9));
    guest.attendance = {{first_, studio::Attendance::State::present}};
    guest = filed(guest);
    EXPECT_THAT(file().lessons(first_, first_day, last_day), ElementsAre(guest, inside));
}

TEST_F(BookOfTheWeek, KeepsRoutinesAssignmentsAndPractice) {
    const auto plain = filed(invented::plain_routine());
    auto full = filed(invented::full_routine());
    const auto group = filed(invented::full_group(first_, second_));
    const auto own = filed(invented::plain_assignment(full.id, first_));
    auto of_group = filed(invented::full_assignment(plain.id, group.id, own.id));
    const auto ticked = filed(invented::plain_entry(first_));
    const auto entry = filed(invented::full_entry(first_, of_group.id));
    reopen();
    EXPECT_THAT(file().routines(), ElementsAre(plain, full));
    EXPECT_EQ(file().routine(full.id), full);
    EXPECT_THAT(file().assignments(first_), ElementsAre(of_group, own));
    EXPECT_THAT(file().assignments(second_), ElementsAre(of_group));
    EXPECT_THAT(file().assignments(group.id), ElementsAre(of_group));
    EXPECT_EQ(file().assignment(own.id), own);
    EXPECT_THAT(file().practice(first_, first_day, last_day), ElementsAre(ticked, entry));
    EXPECT_THAT(file().practice(first_, entry.on, entry.on), ElementsAre(entry));
    EXPECT_THAT(refused(invented::full_entry(first_, of_group.id)), HasSubstr("was not filed in"));
    full.steps.clear();
    full.length.reset();
    full.levels.clear();
    full.horns.clear();
    change(full);
    EXPECT_EQ(file().routine(full.id), full);
    of_group.until.reset();
    of_group.days = {};
    change(of_group);
    EXPECT_EQ(file().assignment(of_group.id), of_group);
    EXPECT_THAT(invented::sentence_of([&] { remove(full.id); }), HasSubstr("Archive it instead"));
    remove(own.id);
    EXPECT_EQ(file().assignment(of_group.id)->follows, std::nullopt);
    remove(full.id);
    remove(of_group.id);
    EXPECT_THAT(file().practice(first_, first_day, last_day), ElementsAre(ticked));
    auto broken = invented::full_routine();
    broken.steps = {"one", "two\nthree"};
    EXPECT_THAT(refused(broken), HasSubstr("one line of text"));
}

TEST_F(BookOfTheWeek, SaysInWordsWhatIsWrong) {
    auto loan = invented::plain_loan(horn_, first_);
    loan.until = loan.from - 1;
    EXPECT_THAT(refused(loan), HasSubstr("brought back no earlier than it was lent"));
    loan.until.reset();
    loan.student = studio::StudentId{99};
    EXPECT_THAT(refused(loan), HasSubstr("that is not there"));
    auto lesson = invented::plain_lesson(first_, Date(2026, 1, 31));
    lesson.length = std::chrono::minutes(0);
    EXPECT_THAT(refused(lesson), HasSubstr("between 1 and 600 minutes"));
    lesson.length = std::chrono::minutes(30);
    lesson.student.reset();
    EXPECT_THAT(refused(lesson), HasSubstr("one student's or one group's"));
    auto upkeep = invented::upkeep_to_do(horn_);
    upkeep.horn.reset();
    EXPECT_THAT(refused(upkeep), HasSubstr("one horn or one mouthpiece"));
    auto piece = invented::plain_piece(first_);
    piece.title = " ";
    EXPECT_THAT(refused(piece), HasSubstr("a piece has a title"));
    auto term = invented::plain_term();
    term.last = term.first - 1;
    EXPECT_THAT(refused(term), HasSubstr("a term ends no earlier"));
}

class WholeBook : public testing::Test {
  protected:
    WholeBook() {
        file_.edit("Fill", [&](Edit& edit) { book_ = invented::add_book(edit); });
        full_ = file_.dump();
    }
    invented::Folder folder_;
    std::filesystem::path path_ = folder_ / "whole.lowledger";
    StudioFile file_ = StudioFile::create(path_, invented::facts());
    invented::Book book_;
    std::string full_;
};

TEST_F(WholeBook, HasEveryTableInAnyRound) {
    file_.edit("Tuning", [&](Edit& edit) {
        auto settings = invented::settings(book_.first, book_.horn);
        settings.sheet = edit.add(invented::full_sheet(book_.first, book_.horn));
        edit.add(settings);
        edit.add(invented::use(book_.first, book_.horn));
        edit.add(invented::position(book_.horn, "main", Date(2026, 11, 1), 3.0));
    });
    const std::string all = file_.dump();
    for (const char* table : record_tables)
        EXPECT_THAT(all, HasSubstr(std::string("INSERT INTO ") + table + " VALUES")) << table;
    file_.undo();
    EXPECT_EQ(file_.dump(), full_);
    file_.undo();
    const std::string empty = file_.dump();
    file_.redo();
    EXPECT_EQ(file_.dump(), full_);
    file_.redo();
    EXPECT_EQ(file_.dump(), all);
    file_.undo();
    file_.undo();
    EXPECT_EQ(file_.dump(), empty);
}

TEST_F(WholeBook, ForgetsAStudentWholeAndUndoBringsAllBack) {
    const studio::Belongings said = file_.belongings(book_.first);
    EXPECT_EQ(said, (studio::Belongings{.lessons = 1,
                                        .attendances = 1,
                                        .assignments = 1,
                                        .practice_entries = 2,
                                        .loans = 1,
                                        .pieces = 2,
                                        .events = 1,
                                        .mouthpieces = 1}));
    file_.edit("Delete", [&](Edit& edit) { edit.remove(book_.first); });
    EXPECT_EQ(file_.belongings(book_.first), studio::Belongings{});
    EXPECT_THAT(file_.check(), IsEmpty());
    EXPECT_THAT(file_.group(book_.group)->members, SizeIs(1));
    EXPECT_THAT(file_.lesson(book_.group_lesson)->attendance, SizeIs(1));
    EXPECT_EQ(file_.assignment(book_.group_assignment)->follows, std::nullopt);
    const std::string without = file_.dump();
    file_.undo();
    EXPECT_EQ(file_.dump(), full_);
    file_.redo();
    EXPECT_EQ(file_.dump(), without);
}

TEST_F(WholeBook, KeepsAStudentWhoseMouthpieceOthersBorrowed) {
    file_.edit("Lend", [&](Edit& edit) {
        auto loan = invented::plain_loan(book_.horn, book_.second);
        loan.mouthpiece = book_.mouthpiece;
        edit.add(loan);
    });
    const std::string before = file_.dump();
    EXPECT_THAT(
        invented::sentence_of([&] { file_.edit("Delete", [&](Edit& edit) { edit.remove(book_.first); }); }),
        HasSubstr("mouthpiece M-1 is theirs and others have borrowed it"));
    EXPECT_EQ(file_.dump(), before);
}

TEST_F(WholeBook, RemovesEachRecordWithWhatIsOnlyIts) {
    const auto removed = [&](auto id) {
        file_.edit("Remove", [&](Edit& edit) { edit.remove(id); });
        EXPECT_THAT(file_.check(), IsEmpty());
        EXPECT_NE(file_.dump(), full_);
        file_.undo();
        EXPECT_EQ(file_.dump(), full_);
    };
    removed(book_.horn);
    removed(book_.mouthpiece);
    removed(book_.loan);
    removed(book_.term);
    removed(book_.group);
    removed(book_.slot);
    removed(book_.lesson);
    removed(book_.group_lesson);
    removed(book_.assignment);
    removed(book_.group_assignment);
}

TEST_F(WholeBook, ShowsADayWithWhatEachLessonNeeds) {
    const Date day(2026, 11, 25);
    studio::LessonId alone;
    studio::LessonId together;
    file_.edit("Plan", [&](Edit& edit) {
        auto kept = *file_.lesson(book_.lesson);
        kept.state = studio::Lesson::State::kept;
        kept.next = "slurs";
        edit.update(kept);
        auto lesson = invented::plain_lesson(book_.first, day);
        lesson.starts = studio::TimeOfDay(16, 0);
        alone = edit.add(lesson);
        lesson = studio::Lesson{.id = {}, .on = day};
        lesson.group = book_.group;
        lesson.starts = studio::TimeOfDay(15, 0);
        together = edit.add(lesson);
        edit.add(invented::use(book_.first, book_.horn));
        edit.add(invented::settings(book_.first, book_.horn));
        edit.add(invented::plain_sheet(book_.first, book_.horn));
    });
    const auto lessons = file_.day(day);
    ASSERT_THAT(lessons, SizeIs(2));
    EXPECT_EQ(lessons[0].lesson.id, together);
    EXPECT_EQ(lessons[0].group_name, "Low brass B");
    ASSERT_THAT(lessons[0].students, SizeIs(2));
    EXPECT_EQ(lessons[0].students[0].student.id, book_.second);
    EXPECT_EQ(lessons[1].lesson.id, alone);
    ASSERT_THAT(lessons[1].students, SizeIs(1));
    const studio::StudentAhead& student = lessons[1].students[0];
    EXPECT_EQ(student, lessons[0].students[1]);
    EXPECT_EQ(student.student.name, "First");
    EXPECT_THAT(student.horns, ElementsAre(book_.horn));
    EXPECT_EQ(student.last->id, book_.group_lesson);
    EXPECT_EQ(student.last->next, "crossing the break");
    ASSERT_THAT(student.routines, SizeIs(2));
    EXPECT_EQ(student.routines[0].assignment.id, book_.group_assignment);
    EXPECT_EQ(student.routines[0].title, invented::full_routine().title);
    EXPECT_EQ(student.last_sheet->on, day);
    EXPECT_TRUE(student.settings_wait);
    EXPECT_THAT(file_.last_sheets(), ElementsAre(*student.last_sheet));
    EXPECT_FALSE(lessons[0].students[0].last_sheet.has_value());
    EXPECT_THAT(file_.day(day + 1), IsEmpty());
}

TEST_F(WholeBook, ListsWhatIsOverdue) {
    studio::LoanId late;
    file_.edit("Lend", [&](Edit& edit) {
        auto loan = invented::plain_loan(book_.horn, book_.second);
        loan.due = Date(2026, 11, 24);
        late = edit.add(loan);
    });
    EXPECT_THAT(file_.overdue(Date(2026, 11, 24)).loans, IsEmpty());
    const studio::Overdue overdue = file_.overdue(Date(2026, 11, 25));
    ASSERT_THAT(overdue.loans, SizeIs(1));
    EXPECT_EQ(overdue.loans[0].id, late);
    ASSERT_THAT(overdue.due_again, SizeIs(1));
    EXPECT_EQ(overdue.due_again[0].mouthpiece, book_.mouthpiece);
    ASSERT_THAT(overdue.to_do, SizeIs(1));
    EXPECT_EQ(overdue.to_do[0].horn, book_.horn);
    EXPECT_THAT(file_.overdue(Date(2026, 10, 1)).due_again, IsEmpty());
    file_.edit("Done again", [&](Edit& edit) {
        auto again = invented::upkeep_done(book_.mouthpiece);
        again.done_on = Date(2026, 11, 1);
        again.next_due.reset();
        edit.add(again);
    });
    EXPECT_THAT(file_.overdue(Date(2026, 11, 25)).due_again, IsEmpty());
}

}  // namespace
}  // namespace lowledger::store
