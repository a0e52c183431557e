#pragma once

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/store/kept.h"
#include "model/studio/found.h"
#include "model/studio/overviews.h"
#include "model/studio/own_words.h"
#include "model/studio/people.h"
#include "model/studio/records.h"
#include "model/studio/timetable.h"
#include "model/units/refusal.h"

namespace lowledger::store {

/// Why a studio did not open or a change was not made; each a sentence that names the file and what to do.
class StudioMissing : public units::Refusal {
    using Refusal::Refusal;
};
/// Something is at that path, but no studio: a folder, an empty file, another program's file.
class NotAStudio : public units::Refusal {
    using Refusal::Refusal;
};
class StudioDamaged : public units::Refusal {
    using Refusal::Refusal;
};
class StudioNewer : public units::Refusal {
    using Refusal::Refusal;
};
/// Another program is writing it now.
class StudioBusy : public units::Refusal {
    using Refusal::Refusal;
};
class StudioReadOnly : public units::Refusal {
    using Refusal::Refusal;
};
/// Undo or redo met a change that another program made since; nothing was changed.
class StudioChangedElsewhere : public units::Refusal {
    using Refusal::Refusal;
};

class Edit;

enum class Access { read_write, read_only };

/// Which records an edit touched, for windows that show them.
struct Change {
    std::int64_t revision = 0;
    /// The name of the edit, as the undo menu shows it.
    std::string name;
    /// Names of the tables touched.
    std::vector<std::string> tables;
};

/// One studio: the file NAME.lowledger. Reads return values; writes only through `edit`. One thread.
class StudioFile {
  public:
    /// Throws Refusal if something is at `path` already or the folder cannot be written.
    static StudioFile create(const std::filesystem::path& path, const studio::StudioFacts& facts);
    /// Throws StudioMissing, NotAStudio, StudioDamaged, StudioNewer, StudioBusy, and StudioReadOnly where the
    /// file or its folder cannot be written and read_write is asked. Brings an older file up to date after
    /// keeping a copy of it beside it, "NAME (version 1).lowledger".
    static StudioFile open(const std::filesystem::path& path, Access access = Access::read_write);
    StudioFile(StudioFile&&) noexcept;
    StudioFile& operator=(StudioFile&&) noexcept;
    ~StudioFile();

    [[nodiscard]] const std::filesystem::path& path() const;
    [[nodiscard]] Access access() const;
    /// Raised by every edit, undo and redo, and when another program was seen to have changed the file: what
    /// was worked out at this revision holds as long as it is the same. Counts from 0 at opening.
    [[nodiscard]] std::int64_t revision() const;

    [[nodiscard]] studio::StudioFacts facts() const;
    /// The teacher's own sentences, by id.
    [[nodiscard]] std::vector<studio::OwnText> own_texts() const;
    [[nodiscard]] std::optional<studio::HeadPicture> head_picture() const;
    /// By name; archived ones last.
    [[nodiscard]] std::vector<studio::Student> students() const;
    [[nodiscard]] std::optional<studio::Student> student(studio::StudentId id) const;
    /// By mark; archived ones last.
    [[nodiscard]] std::vector<studio::Horn> horns() const;
    [[nodiscard]] std::optional<studio::Horn> horn(studio::HornId id) const;
    /// All of a horn's positions, oldest first.
    [[nodiscard]] std::vector<studio::SlidePosition> slide_history(studio::HornId id) const;
    /// The latest position of every slide on or before `on`, by slide id.
    [[nodiscard]] std::map<std::string, units::Millimetres> slide_positions(studio::HornId id,
                                                                            studio::Date on) const;
    [[nodiscard]] std::vector<studio::HornUse> horn_uses() const;
    /// By first day.
    [[nodiscard]] std::vector<studio::HornUse> horn_uses(studio::StudentId id) const;
    [[nodiscard]] std::vector<studio::HornUse> horn_uses(studio::HornId id) const;
    /// Newest first, with their readings.
    [[nodiscard]] std::vector<studio::TuningSheet> sheets(studio::StudentId student) const;
    [[nodiscard]] std::vector<studio::TuningSheet> sheets(studio::HornId horn) const;
    [[nodiscard]] std::optional<studio::TuningSheet> sheet(studio::TuningSheetId id) const;
    /// Newest first.
    [[nodiscard]] std::vector<studio::GivenSettings> given_settings(studio::StudentId id) const;
    [[nodiscard]] std::vector<studio::GivenSettings> given_settings(studio::HornId id) const;

    /// Oldest first.
    [[nodiscard]] std::vector<studio::StudentEvent> student_events(studio::StudentId id) const;
    /// Newest first.
    [[nodiscard]] std::vector<studio::Piece> pieces(studio::StudentId id) const;
    /// By mark; archived ones last.
    [[nodiscard]] std::vector<studio::Mouthpiece> mouthpieces() const;
    [[nodiscard]] std::optional<studio::Mouthpiece> mouthpiece(studio::MouthpieceId id) const;
    /// By the day it was done, or else noted; oldest first.
    [[nodiscard]] std::vector<studio::Upkeep> upkeep(studio::HornId id) const;
    [[nodiscard]] std::vector<studio::Upkeep> upkeep(studio::MouthpieceId id) const;
    /// Newest first.
    [[nodiscard]] std::vector<studio::Loan> loans(studio::StudentId id) const;
    [[nodiscard]] std::vector<studio::Loan> loans(studio::HornId id) const;
    [[nodiscard]] std::optional<studio::Loan> loan(studio::LoanId id) const;
    /// Not brought back, by the day they are due; those without one first.
    [[nodiscard]] std::vector<studio::Loan> loans_out() const;

    /// By first day.
    [[nodiscard]] std::vector<studio::Term> terms() const;
    [[nodiscard]] std::optional<studio::Term> term(studio::TermId id) const;
    /// By name; archived ones last.
    [[nodiscard]] std::vector<studio::Group> groups() const;
    [[nodiscard]] std::optional<studio::Group> group(studio::GroupId id) const;
    /// By weekday and time.
    [[nodiscard]] std::vector<studio::TimetableSlot> timetable(studio::TermId id) const;
    [[nodiscard]] std::optional<studio::Lesson> lesson(studio::LessonId id) const;
    /// Of those days, both in it, by day and time.
    [[nodiscard]] std::vector<studio::Lesson> lessons(studio::Date first, studio::Date last) const;
    [[nodiscard]] std::vector<studio::Lesson> lessons(studio::GroupId id, studio::Date first,
                                                      studio::Date last) const;
    /// A student's own ones, those of a group while they were of it, and those where they were called; newest
    /// first.
    [[nodiscard]] std::vector<studio::Lesson> lessons(studio::StudentId id, studio::Date first,
                                                      studio::Date last) const;
    /// For studio::make_ups_owed: all lessons that are to be made up, and those that stand for them.
    [[nodiscard]] std::vector<studio::Lesson> lessons_to_make_up() const;

    /// By title; archived ones last.
    [[nodiscard]] std::vector<studio::Routine> routines() const;
    [[nodiscard]] std::optional<studio::Routine> routine(studio::RoutineId id) const;
    [[nodiscard]] std::optional<studio::Assignment> assignment(studio::AssignmentId id) const;
    /// Newest first. A student's: also those given to a group while they were of it.
    [[nodiscard]] std::vector<studio::Assignment> assignments(studio::StudentId id) const;
    [[nodiscard]] std::vector<studio::Assignment> assignments(studio::GroupId id) const;
    /// Those of the routine that hold on that day, oldest first.
    [[nodiscard]] std::vector<studio::Assignment> assignments(studio::RoutineId id, studio::Date on) const;
    /// Of those days, both in it, oldest first.
    [[nodiscard]] std::vector<studio::PracticeEntry> practice(studio::StudentId id, studio::Date first,
                                                              studio::Date last) const;

    /// The last sheet of every student that has one, in no particular order.
    [[nodiscard]] std::vector<studio::SheetHead> last_sheets() const;
    /// The day's lessons by time, each with what a teacher wants to know before it.
    [[nodiscard]] std::vector<studio::LessonAhead> day(studio::Date on) const;
    [[nodiscard]] studio::Overdue overdue(studio::Date today) const;
    /// Records in which every word typed begins a word, without regard to case and accents: those without a
    /// day first, then the newest.
    [[nodiscard]] std::vector<studio::Found> search(std::string_view typed, int most = 50) const;
    /// What `Edit::remove` of that student takes along.
    [[nodiscard]] studio::Belongings belongings(studio::StudentId id) const;

    /// One transaction, one undo step, one revision, one notice. If `change` throws nothing is changed and
    /// the exception goes on. `change` may read this studio and sees what it wrote so far; it may catch a
    /// refusal of one call to `Edit`, which then did nothing, and go on. An edit that changes nothing makes
    /// no step. Waits two seconds for another writer. Throws StudioReadOnly, StudioBusy, or Refusal (disk
    /// full, a value that breaks a rule). An edit inside an edit is a std::logic_error.
    void edit(std::string_view name, const std::function<void(Edit&)>& change);

    /// The name of the edit that would be undone or redone.
    [[nodiscard]] std::optional<std::string> undo_name() const;
    [[nodiscard]] std::optional<std::string> redo_name() const;
    /// Nothing happens when there is none. Throw StudioChangedElsewhere when another program's edit stands in
    /// the way (nothing is changed and the step stays), and what `edit` throws.
    void undo();
    void redo();

    /// Called after every edit, undo and redo, and when another program's change is noticed. One listener; it
    /// must not throw, and may read.
    void on_change(std::function<void(const Change&)> listener);
    /// For quiet moments and when the window comes to the front: if another program has changed the file
    /// since the last notice, tells the listener (no name, every table) and returns true.
    bool notice_changes_elsewhere();

    /// How long an edit waits for another writer before StudioBusy.
    void wait_for_others_at_most(std::chrono::milliseconds time);

    /// All record tables as SQL text in a fixed order: equal dumps are equal studios. For tests and support.
    [[nodiscard]] std::string dump() const;
    /// A whole copy at `path` (VACUUM INTO), complete or absent.
    void copy_to(const std::filesystem::path& path) const;
    /// Empty when sound; else what is wrong. Slow on large files: not on the opening path.
    [[nodiscard]] std::vector<std::string> check() const;

  private:
    struct Implementation;
    explicit StudioFile(std::unique_ptr<Implementation> implementation);
    std::unique_ptr<Implementation> implementation_;
    friend class Edit;
};

/// The writing side, alive only inside `StudioFile::edit`. `add` ignores the record's id and returns the new
/// one. `update` and `remove` throw Refusal if there is no such record, and both `add` and `update` where a
/// value breaks a rule or a horn, a term's day or a place in a lesson is taken. Every call does all or
/// nothing.
///
/// Removing takes what only belongs to the record along:
/// - with a student all that `StudioFile::belongings` counts, and their places in groups, the timetable and
/// the
///   search (refused while others have played or borrowed a horn or mouthpiece of theirs);
/// - with a horn its slides, history, sheets, uses, settings, loans and upkeep; with a mouthpiece its upkeep;
/// - with a sheet its readings, while settings given from it stay;
/// - with a term its timetable; with a slot of the timetable its lessons that are still planned;
/// - with a group its members, slots, lessons and assignments; with an assignment its entries of practice;
/// - a routine only goes while it was never given to anyone.
/// A slide that an updated horn no longer lists goes with its history.
class Edit {
  public:
    template <Filed Record>
    studio::Id<Record> add(const Record& record);
    template <Kept Record>
    void update(const Record& record);
    template <Filed Record>
    void remove(studio::Id<Record> id);

    void update(const studio::StudioFacts& facts);
    /// In place of what was there, if anything was; removing what is not there is nothing.
    void put(const studio::OwnText& text);
    void remove_own_text(std::string_view sentence);
    void put(const studio::HeadPicture& picture);
    void remove_head_picture();

  private:
    explicit Edit(StudioFile::Implementation& implementation) : implementation_(implementation) {}
    StudioFile::Implementation& implementation_;
    friend class StudioFile;
};

}  // namespace lowledger::store
