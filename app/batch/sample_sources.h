#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/batch/sample_book.h"
#include "model/studio/people.h"
#include "model/studio/records.h"

namespace lowledger::batch {

/// A horn as `sample_data/horns.toml` tells it.
struct SampleHorn {
    std::string mark;
    std::string kind;
    std::string serial_number;
    std::string remarks;
    /// Name of the student whose it is; empty: the school's.
    std::string owner;
    bool archived = false;
    std::vector<std::string> stuck;
    std::map<std::string, units::Millimetres> travel;
    std::map<std::string, units::Millimetres> least;
    std::map<std::string, units::Millimetres> start;
    /// What is true of it; drawn where empty.
    struct Is {
        units::Cents overall;
        std::vector<units::Cents> valves;
    };
    std::optional<Is> is;
};

struct SamplePlays {
    std::string horn;
    int from_week = 0;
    std::optional<int> until_week;
};

struct SampleSheet {
    int week = 0;
    /// Mark of the horn.
    std::string on;
    bool wide = false;
    int takes = 2;
    bool cold = false;
    bool mute = false;
    bool tuner_seen = false;
    bool positions_known = true;
    units::Hertz tuner_a4 = units::standard_a4;
    std::optional<units::Celsius> room;
    std::string remarks;
    enum class Settings { none, given, moved } settings = Settings::none;
};

/// Something that mattered to playing, on the lesson day of that week.
struct SampleEvent {
    int week = 0;
    studio::StudentEvent::Kind kind = studio::StudentEvent::Kind::other;
    std::string remarks;
};

struct SamplePiece {
    std::string title;
    std::string composer;
    std::string part;
    int from_week = 0;
    std::optional<int> until_week;
    std::string remarks;
};

struct SampleStudent {
    studio::Student record;
    /// Days after Monday.
    int lesson_day = 0;
    /// Empty: only taught in a group.
    std::optional<SampleLesson> lesson;
    /// Empty: the week of the first horn.
    std::optional<int> since_week;
    std::vector<SampleEvent> events;
    std::vector<SamplePiece> pieces;
    std::vector<SamplePlays> plays;
    std::vector<SampleSheet> sheets;
};

struct SampleSources {
    studio::StudioFacts facts;
    int horns_filed_in_week = 0;
    std::vector<SampleHorn> horns;
    std::vector<SampleStudent> students;
    SampleBook book;
};

/// A file of the sources: name and text.
struct SampleText {
    std::string_view name;
    std::string_view text;
};

/// Reads the files of `sample_data`. Throws Refusal that names file, line and key: a file missing, a
/// key unknown or missing, a value of another kind, a horn, student or slide that is named and not there.
SampleSources read_sample_sources(const std::vector<SampleText>& files);

/// The sources that come with the program.
SampleSources built_in_sample_sources();

}  // namespace lowledger::batch
