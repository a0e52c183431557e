#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "model/studio/lending.h"
#include "model/studio/level.h"
#include "model/studio/time_of_day.h"

namespace lowledger::batch {

/// When a student's or a group's lesson is; the day of the week is told beside it.
struct SampleLesson {
    studio::TimeOfDay at;
    std::chrono::minutes length{30};
    std::string room;
    int every_weeks = 1;
};

/// From a day of one week to a day of another, both in it. 1 = Monday.
struct SampleSpan {
    std::string name;
    int first_week = 0;
    int first_day = 1;
    int last_week = 0;
    int last_day = 5;
};

struct SampleTerm {
    SampleSpan span;
    std::vector<SampleSpan> holidays;
};

/// A student of a group, by name.
struct SampleMember {
    std::string name;
    std::optional<int> from_week;
    std::optional<int> until_week;
};

struct SampleGroup {
    std::string name;
    std::string remarks;
    int weekday = 1;
    SampleLesson lesson;
    std::vector<SampleMember> members;
    /// Key of a routine of the library that the group practises now; may be empty.
    std::string routine;
};

/// What a teacher notes of a lesson: `next` of one is what `done` of the one after it tells about.
struct SampleNote {
    /// Two ways that it went.
    std::vector<std::string> done;
    std::string next;
};

struct SampleNotes {
    std::vector<SampleNote> beginner;
    std::vector<SampleNote> middle;
    std::vector<SampleNote> advanced;
    std::vector<SampleNote> group;
    /// Remarks that never print, and why someone was away.
    std::vector<std::string> private_remarks;
    std::vector<std::string> reasons;

    [[nodiscard]] const std::vector<SampleNote>& of(studio::Level level) const;
};

/// A mouthpiece, with the name of the student whose it is and the mark of the horn it goes with.
struct SampleMouthpiece {
    studio::Mouthpiece record;
    std::string owner;
    std::string horn;
};

struct SampleLoan {
    std::string horn;
    std::string student;
    std::string mouthpiece;
    int from_week = 0;
    std::optional<int> until_week;
    std::optional<int> due_week;
    std::optional<int> signed_week;
    std::string condition_out;
    std::string condition_in;
    std::string accessories;
};

/// Work on a horn or a mouthpiece, by its mark.
struct SampleUpkeep {
    std::string mark;
    studio::Upkeep::Work work = studio::Upkeep::Work::checked;
    std::string what;
    std::string by;
    std::optional<studio::Money> cost;
    bool disinfected = false;
    int noted_week = 0;
    std::optional<int> done_week;
    std::optional<int> due_week;
};

/// The book besides people, horns and sheets.
struct SampleBook {
    std::vector<SampleTerm> terms;
    std::vector<SampleGroup> groups;
    SampleNotes notes;
    std::vector<SampleMouthpiece> mouthpieces;
    std::vector<SampleLoan> loans;
    std::vector<SampleUpkeep> upkeep;
};

}  // namespace lowledger::batch
