// The reads of the teaching week and of the program's places.
#include "model/store/book_out.h"
#include "model/store/implementation.h"
#include "model/store/places_out.h"
#include "model/store/search.h"

namespace lowledger::store {

std::vector<studio::StudentEvent> StudioFile::student_events(studio::StudentId id) const {
    return implementation_->read([&](auto& database) { return read_events(database, id); });
}

std::vector<studio::Piece> StudioFile::pieces(studio::StudentId id) const {
    return implementation_->read([&](auto& database) { return read_pieces(database, id); });
}

std::vector<studio::Mouthpiece> StudioFile::mouthpieces() const {
    return implementation_->read([&](auto& database) { return read_mouthpieces(database); });
}

std::optional<studio::Mouthpiece> StudioFile::mouthpiece(studio::MouthpieceId id) const {
    return implementation_->read([&](auto& database) { return read_mouthpiece(database, id); });
}

std::vector<studio::Upkeep> StudioFile::upkeep(studio::HornId id) const {
    return implementation_->read([&](auto& database) { return read_upkeep(database, id); });
}

std::vector<studio::Upkeep> StudioFile::upkeep(studio::MouthpieceId id) const {
    return implementation_->read([&](auto& database) { return read_upkeep(database, id); });
}

std::vector<studio::Loan> StudioFile::loans(studio::StudentId id) const {
    return implementation_->read([&](auto& database) { return read_loans(database, id); });
}

std::vector<studio::Loan> StudioFile::loans(studio::HornId id) const {
    return implementation_->read([&](auto& database) { return read_loans(database, id); });
}

std::optional<studio::Loan> StudioFile::loan(studio::LoanId id) const {
    return implementation_->read([&](auto& database) { return read_loan(database, id); });
}

std::vector<studio::Loan> StudioFile::loans_out() const {
    return implementation_->read([&](auto& database) { return read_loans_out(database); });
}

std::vector<studio::Term> StudioFile::terms() const {
    return implementation_->read([&](auto& database) { return read_terms(database); });
}

std::optional<studio::Term> StudioFile::term(studio::TermId id) const {
    return implementation_->read([&](auto& database) { return read_term(database, id); });
}

std::vector<studio::Group> StudioFile::groups() const {
    return implementation_->read([&](auto& database) { return read_groups(database); });
}

std::optional<studio::Group> StudioFile::group(studio::GroupId id) const {
    return implementation_->read([&](auto& database) { return read_group(database, id); });
}

std::vector<studio::TimetableSlot> StudioFile::timetable(studio::TermId id) const {
    return implementation_->read([&](auto& database) { return read_timetable(database, id); });
}

std::optional<studio::Lesson> StudioFile::lesson(studio::LessonId id) const {
    return implementation_->read([&](auto& database) { return read_lesson(database, id); });
}

std::vector<studio::Lesson> StudioFile::lessons(studio::Date first, studio::Date last) const {
    return implementation_->read([&](auto& database) { return read_lessons(database, Days{first, last}); });
}

std::vector<studio::Lesson> StudioFile::lessons(studio::GroupId id, studio::Date first,
                                                studio::Date last) const {
    return implementation_->read([&](auto& database) {
        return read_lessons(database, id, Days{first, last});
    });
}

std::vector<studio::Lesson> StudioFile::lessons(studio::StudentId id, studio::Date first,
                                                studio::Date last) const {
    return implementation_->read([&](auto& database) {
        return read_lessons(database, id, Days{first, last});
    });
}

std::vector<studio::Lesson> StudioFile::lessons_to_make_up() const {
    return implementation_->read([&](auto& database) { return read_lessons_owed(database); });
}

std::vector<studio::Routine> StudioFile::routines() const {
    return implementation_->read([&](auto& database) { return read_routines(database); });
}

std::optional<studio::Routine> StudioFile::routine(studio::RoutineId id) const {
    return implementation_->read([&](auto& database) { return read_routine(database, id); });
}

std::optional<studio::Assignment> StudioFile::assignment(studio::AssignmentId id) const {
    return implementation_->read([&](auto& database) { return read_assignment(database, id); });
}

std::vector<studio::Assignment> StudioFile::assignments(studio::StudentId id) const {
    return implementation_->read([&](auto& database) { return read_assignments(database, id); });
}

std::vector<studio::Assignment> StudioFile::assignments(studio::GroupId id) const {
    return implementation_->read([&](auto& database) { return read_assignments(database, id); });
}

std::vector<studio::Assignment> StudioFile::assignments(studio::RoutineId id, studio::Date on) const {
    return implementation_->read([&](auto& database) { return read_assignments(database, id, on); });
}

std::vector<studio::PracticeEntry> StudioFile::practice(studio::StudentId id, studio::Date first,
                                                        studio::Date last) const {
    return implementation_->read([&](auto& database) {
        return read_practice(database, id, Days{first, last});
    });
}

std::vector<studio::SheetHead> StudioFile::last_sheets() const {
    return implementation_->read([&](auto& database) { return read_last_sheets(database); });
}

std::vector<studio::LessonAhead> StudioFile::day(studio::Date on) const {
    return implementation_->read([&](auto& database) { return read_day(database, on); });
}

studio::Overdue StudioFile::overdue(studio::Date today) const {
    return implementation_->read([&](auto& database) { return read_overdue(database, today); });
}

std::vector<studio::Found> StudioFile::search(std::string_view typed, int most) const {
    return implementation_->read([&](auto& database) { return search_records(database, typed, most); });
}

studio::Belongings StudioFile::belongings(studio::StudentId id) const {
    return implementation_->read([&](auto& database) { return read_belongings(database, id); });
}

}  // namespace lowledger::store
