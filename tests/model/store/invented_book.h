#pragma once

#include "model/store/studio_file.h"

/// Invented records of the teaching week; full ones have a value in every field.
namespace lowledger::store::invented {

studio::StudentEvent event(studio::StudentId student);
studio::Piece plain_piece(studio::StudentId student);
studio::Piece full_piece(studio::StudentId student);
studio::Mouthpiece plain_mouthpiece();
studio::Mouthpiece full_mouthpiece(studio::HornId horn, studio::StudentId owner);
studio::Upkeep upkeep_to_do(studio::HornId horn);
studio::Upkeep upkeep_done(studio::MouthpieceId mouthpiece);
studio::Loan plain_loan(studio::HornId horn, studio::StudentId student);
studio::Loan full_loan(studio::HornId horn, studio::StudentId student, studio::MouthpieceId mouthpiece);
studio::Term plain_term();
studio::Term full_term();
studio::Group plain_group();
studio::Group full_group(studio::StudentId first, studio::StudentId second);
studio::TimetableSlot plain_slot(studio::TermId term, studio::StudentId student);
studio::TimetableSlot full_slot(studio::TermId term, studio::GroupId group);
studio::Lesson plain_lesson(studio::StudentId student, studio::Date on);
studio::Lesson full_lesson(studio::GroupId group, studio::TimetableSlotId slot, studio::LessonId instead_of,
                           studio::StudentId first, studio::StudentId second);
studio::Routine plain_routine();
studio::Routine full_routine();
studio::Assignment plain_assignment(studio::RoutineId routine, studio::StudentId student);
studio::Assignment full_assignment(studio::RoutineId routine, studio::GroupId group,
                                   studio::AssignmentId follows);
studio::PracticeEntry plain_entry(studio::StudentId student);
studio::PracticeEntry full_entry(studio::StudentId student, studio::AssignmentId assignment);

/// Records of every kind, full and plain, all of them somehow of `first`, and the rest of `second`.
struct Book {
    studio::StudentId first;
    studio::StudentId second;
    studio::HornId horn;
    studio::MouthpieceId mouthpiece;
    studio::TermId term;
    studio::GroupId group;
    studio::TimetableSlotId slot;
    studio::LessonId lesson;
    studio::LessonId group_lesson;
    studio::RoutineId routine;
    studio::AssignmentId assignment;
    studio::AssignmentId group_assignment;
    studio::LoanId loan;
};
Book add_book(Edit& edit);

}  // namespace lowledger::store::invented
