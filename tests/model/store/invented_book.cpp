#include "tests/model/store/invented_book.h"

#include "tests/model/store/invented.h"

namespace lowledger::store::invented {

using std::chrono::minutes;
using studio::Date;
using studio::Money;

studio::StudentEvent event(studio::StudentId student) {
    return {.id = {},
            .student = student,
            .on = Date(2026, 10, 1),
            .kind = studio::StudentEvent::Kind::braces_on,
            .remarks = "upper teeth"};
}

studio::Piece plain_piece(studio::StudentId student) {
    return {.id = {}, .student = student, .title = "March of the Moths", .from = Date(2026, 9, 7)};
}

studio::Piece full_piece(studio::StudentId student) {
    studio::Piece piece = plain_piece(student);
    piece.title = "The Café at Night";
    piece.composer = "N. Obody";
    piece.part = "2nd";
    piece.from = Date(2025, 12, 31);
    piece.until = Date(2026, 3, 1);
    piece.remarks = "page two";
    return piece;
}

studio::Mouthpiece plain_mouthpiece() {
    return {.id = {}, .mark = "M-2"};
}

studio::Mouthpiece full_mouthpiece(studio::HornId horn, studio::StudentId owner) {
    return {.id = {},
            .mark = "M-1",
            .size = "deep cup",
            .horn = horn,
            .owner = owner,
            .kept_in = "drawer",
            .condition = "worn rim",
            .value = Money{.cents = 4500, .currency = "EUR"},
            .remarks = "lent out often",
            .archived = true};
}

studio::Upkeep upkeep_to_do(studio::HornId horn) {
    studio::Upkeep upkeep{.id = {}, .noted_on = Date(2026, 11, 2)};
    upkeep.horn = horn;
    return upkeep;
}

studio::Upkeep upkeep_done(studio::MouthpieceId mouthpiece) {
    return {.id = {},
            .horn = {},
            .mouthpiece = mouthpiece,
            .work = studio::Upkeep::Work::disinfected,
            .noted_on = Date(2026, 9, 1),
            .done_on = Date(2026, 9, 2),
            .what = "bath and brush",
            .by = "the teacher",
            .cost = Money{.cents = 250, .currency = "EUR"},
            .next_due = Date(2026, 10, 2),
            .disinfected = true};
}

studio::Loan plain_loan(studio::HornId horn, studio::StudentId student) {
    return {.id = {}, .horn = horn, .student = student, .from = Date(2026, 9, 1)};
}

studio::Loan full_loan(studio::HornId horn, studio::StudentId student, studio::MouthpieceId mouthpiece) {
    return {.id = {},
            .horn = horn,
            .student = student,
            .mouthpiece = mouthpiece,
            .from = Date(2025, 9, 1),
            .until = Date(2026, 7, 1),
            .due = Date(2026, 6, 30),
            .condition_out = "good",
            .condition_in = "a dent",
            .accessories = "oil, strap",
            .signed_on = Date(2025, 9, 3),
            .remarks = "by bus"};
}

studio::Term plain_term() {
    return {.id = {}, .name = "Summer", .first = Date(2027, 4, 1), .last = Date(2027, 7, 1)};
}

studio::Term full_term() {
    return {.id = {},
            .name = "Winter",
            .first = Date(2026, 10, 25),
            .last = Date(2027, 3, 31),
            .holidays = {{Date(2026, 12, 20), Date(2027, 1, 6), "turn of the year"},
                         {Date(2027, 2, 8), Date(2027, 2, 8), ""}}};
}

studio::Group plain_group() {
    return {.id = {}, .name = "Empty group"};
}

studio::Group full_group(studio::StudentId first, studio::StudentId second) {
    return {.id = {},
            .name = "Low brass B",
            .remarks = "bring stands",
            .archived = false,
            .members = {{second, Date(2026, 9, 1), {}},
                        {first, Date(2026, 9, 1), Date(2026, 9, 15)},
                        {first, Date(2026, 10, 1), {}}}};
}

studio::TimetableSlot plain_slot(studio::TermId term, studio::StudentId student) {
    studio::TimetableSlot slot{.id = {}, .term = term};
    slot.student = student;
    return slot;
}

studio::TimetableSlot full_slot(studio::TermId term, studio::GroupId group) {
    return {.id = {},
            .term = term,
            .student = {},
            .group = group,
            .weekday = 7,
            .starts = {23, 59},
            .length = minutes(45),
            .every_weeks = 2,
            .from = Date(2026, 11, 1),
            .until = Date(2027, 1, 31),
            .room = "hall"};
}

studio::Lesson plain_lesson(studio::StudentId student, Date on) {
    studio::Lesson lesson{.id = {}, .on = on};
    lesson.student = student;
    return lesson;
}

studio::Lesson full_lesson(studio::GroupId group, studio::TimetableSlotId slot, studio::LessonId instead_of,
                           studio::StudentId first, studio::StudentId second) {
    using State = studio::Attendance::State;
    return {.id = {},
            .student = {},
            .group = group,
            .slot = slot,
            .on = Date(2026, 11, 22),
            .starts = {15, 5},
            .length = minutes(40),
            .room = "7",
            .state = studio::Lesson::State::kept,
            .make_up_owed = true,
            .instead_of = instead_of,
            .done = "long tones",
            .next = "crossing the break",
            .private_remark = "tired",
            .attendance = {{second, State::late}, {first, State::missed_without_notice}}};
}

studio::Routine plain_routine() {
    return {.id = {}, .title = "Buzzing"};
}

studio::Routine full_routine() {
    return {.id = {},
            .key = "long-tones",
            .title = "Älteste Übung",
            .aim = "an even sound",
            .steps = {"breathe out", "breathe in; play", "rest"},
            .dose = "four times",
            .length = minutes(5),
            .levels = {studio::Level::beginner, studio::Level::advanced},
            .horns = {"tuba", "bass trombone"},
            .music = "F2 C3 F3",
            .remarks = "not after a concert",
            .archived = true};
}

studio::Assignment plain_assignment(studio::RoutineId routine, studio::StudentId student) {
    studio::Assignment given{.id = {}, .routine = routine, .from = Date(2026, 11, 1)};
    given.student = student;
    return given;
}

studio::Assignment full_assignment(studio::RoutineId routine, studio::GroupId group,
                                   studio::AssignmentId follows) {
    return {.id = {},
            .routine = routine,
            .student = {},
            .group = group,
            .from = Date(2026, 11, 8),
            .until = Date(2026, 11, 29),
            .days = {1, 3, 7},
            .amount = "twice",
            .remarks = "softly",
            .end = studio::Assignment::End::changed,
            .follows = follows};
}

studio::PracticeEntry plain_entry(studio::StudentId student) {
    return {.id = {}, .student = student, .on = Date(2026, 11, 20)};
}

studio::PracticeEntry full_entry(studio::StudentId student, studio::AssignmentId assignment) {
    return {.id = {},
            .student = student,
            .on = Date(2026, 11, 21),
            .assignment = assignment,
            .length = minutes(12),
            .remarks = "with the door open"};
}

Book add_book(Edit& edit) {
    Book book;
    book.first = edit.add(plain_student("First"));
    book.second = edit.add(full_student());
    book.horn = edit.add(full_horn(book.second));
    edit.add(event(book.first));
    edit.add(plain_piece(book.first));
    edit.add(full_piece(book.first));
    book.mouthpiece = edit.add(full_mouthpiece(book.horn, book.first));
    edit.add(upkeep_to_do(book.horn));
    edit.add(upkeep_done(book.mouthpiece));
    book.loan = edit.add(full_loan(book.horn, book.first, book.mouthpiece));
    book.term = edit.add(full_term());
    book.group = edit.add(full_group(book.first, book.second));
    edit.add(plain_slot(book.term, book.first));
    book.slot = edit.add(full_slot(book.term, book.group));
    book.lesson = edit.add(plain_lesson(book.first, Date(2026, 11, 18)));
    book.group_lesson = edit.add(full_lesson(book.group, book.slot, book.lesson, book.first, book.second));
    book.routine = edit.add(full_routine());
    book.assignment = edit.add(plain_assignment(book.routine, book.first));
    book.group_assignment = edit.add(full_assignment(book.routine, book.group, book.assignment));
    edit.add(plain_entry(book.first));
    edit.add(full_entry(book.first, book.group_assignment));
    edit.put(studio::OwnText{.sentence = "a", .text = "b"});
    edit.put(studio::HeadPicture{.type = studio::HeadPicture::Type::png, .bytes = {0, 1, 2}});
    return book;
}

}  // namespace lowledger::store::invented
