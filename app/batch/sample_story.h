#pragma once

#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "app/batch/sample_random.h"
#include "app/batch/sample_sources.h"
#include "model/store/studio_file.h"

namespace lowledger::batch {

/// What the parts of the sample's story stand on: the sources, the calendar, and what is filed so far.
struct SampleStory {
    store::Edit& edit;
    const SampleSources& sources;
    studio::Date as_of;
    std::uint64_t seed;
    /// By name.
    std::map<std::string, studio::StudentId> students{};
    /// By mark.
    std::map<std::string, studio::HornId> horns{};
    std::map<std::string, studio::MouthpieceId> mouthpieces{};
    /// By name.
    std::map<std::string, studio::GroupId> groups{};
    std::vector<studio::Term> terms{};
    /// What was done about the slides at the sheet of that student and day.
    std::map<std::pair<std::string, studio::Date>, SampleSheet::Settings> measured{};

    /// 1 = Monday.
    [[nodiscard]] studio::Date day(int week, int weekday) const {
        return as_of - (as_of.weekday() - 1) + (7 * week + weekday - 1);
    }
    [[nodiscard]] const SampleStudent& told(studio::StudentId id) const;
    /// A student's, for what happens on one day: the same whatever happens on other days.
    [[nodiscard]] SampleRandom random(std::string_view what, std::string_view who, studio::Date on) const;
};

/// What happened to students, and the pieces they work on.
void tell_lives(SampleStory& story);
/// Terms, groups, the timetable and its lessons: those before the day it is made for as they went, the others
/// planned.
void tell_lessons(SampleStory& story);
/// The library of routines, what was given to whom, and what was practised. After the lessons.
void tell_practice(SampleStory& story);
/// Mouthpieces, loans and upkeep.
void tell_lending(SampleStory& story);

}  // namespace lowledger::batch
