#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "model/horns/fingering.h"
#include "model/horns/kind.h"
#include "model/studio/date.h"
#include "model/studio/ids.h"
#include "model/studio/level.h"
#include "model/studio/money.h"
#include "model/studio/people.h"
#include "model/units/celsius.h"
#include "model/units/hertz.h"
#include "model/units/note_names.h"
#include "model/units/pitch.h"
#include "model/units/quantity.h"

namespace lowledger::studio {

/// What is true of the whole studio.
struct StudioFacts {
    std::string name;
    std::string teacher;
    std::string school;
    units::Hertz a4 = units::standard_a4;
    /// The room that settings are meant for.
    units::Celsius usual_room{21.0};
    enum class Paper { a4, letter } paper = Paper::a4;
    units::Accidentals accidentals = units::Accidentals::flats;
    units::Naming naming = units::Naming::english;
    /// What amounts are in unless another is typed; may be empty.
    std::string currency{};
    bool operator==(const StudioFacts&) const = default;
};

struct Student {
    StudentId id;
    std::string name;
    /// What the student is called; empty: the first word of the name.
    std::string called;
    /// Class, band or year; free text, may be empty.
    std::string group;
    Level level = Level::beginner;
    /// Empty: the level's.
    std::optional<units::Cents> tolerance;
    /// Key of the reader (clef and transposition) among those of the horn's kind; empty: the kind's first.
    std::string reader{};
    /// Empty: the studio's.
    std::optional<units::Accidentals> accidentals{};
    /// Never printed.
    std::string remarks;
    bool archived = false;
    /// School year or age: "Year 7", "adult"; free text, may be empty.
    std::string year{};
    /// Empty: not known.
    std::optional<AtHome> at_home{};
    Guardian guardian{};
    std::string goals{};
    /// The first lesson; empty: not known.
    std::optional<Date> since{};
    bool operator==(const Student&) const = default;
};

/// A tuning slide of one horn. Where it stands is history (`SlidePosition`).
struct HornSlide {
    /// The kind's slide id.
    std::string slide;
    units::Millimetres least;
    units::Millimetres travel;
    /// It does not move; for a technician.
    bool stuck = false;
    bool operator==(const HornSlide&) const = default;
};

struct Horn {
    HornId id;
    std::string kind_id;
    /// The kind's file as it was when the horn was filed, so that the studio opens where the kind is not
    /// installed.
    std::string kind_text;
    /// What is painted on horn and case: "T-4".
    std::string mark;
    /// Empty: the school's; else the student's own.
    std::optional<StudentId> owner;
    std::string maker_and_model;
    std::string serial_number;
    std::string remarks;
    bool archived = false;
    std::string inventory_tag{};
    /// Whose it is where that is neither the school nor a student: "the town band". May be empty.
    std::string belongs_to{};
    /// Its case, the locker it stands in, what lies in the case. Free text.
    std::string case_text{};
    std::string locker{};
    std::string accessories{};
    /// Dents and wear.
    std::string condition{};
    std::optional<Money> value{};
    std::optional<Date> bought_on{};
    std::optional<Money> bought_for{};
    /// In the kind's order, every slide of the kind once.
    std::vector<HornSlide> slides;
    bool operator==(const Horn&) const = default;
};

/// Where a slide stood from a date on. The latest (by date, then id) holds.
struct SlidePosition {
    SlidePositionId id;
    HornId horn;
    std::string slide;
    Date on;
    units::Millimetres position;
    /// start: taken from the kind when filed; measured: with a rule; moved: as settings told; repair: after
    /// work on it.
    enum class Origin { start, measured, moved, repair } origin = Origin::measured;
    bool operator==(const SlidePosition&) const = default;
};

/// A student plays this horn; several may share one.
struct HornUse {
    HornUseId id;
    StudentId student;
    HornId horn;
    Date from;
    /// The first day it is no longer so; empty: still.
    std::optional<Date> until;
    bool operator==(const HornUse&) const = default;
};

/// One tuner value for one note.
struct Reading {
    units::Pitch note;
    horns::Fingering fingering;
    int partial = 0;
    /// 1 for the first time round, 2 for the second, ...
    int take = 1;
    units::Cents cents;
    bool operator==(const Reading&) const = default;
};

/// The readings of one sitting.
struct TuningSheet {
    TuningSheetId id;
    StudentId student;
    HornId horn;
    Date on;
    /// Free text; empty: the usual one.
    std::string mouthpiece;
    bool warm = true;
    bool tuner_seen = false;
    bool mute = false;
    /// Empty: unknown, taken as the studio's usual room.
    std::optional<units::Celsius> room;
    /// What the tuner was set to.
    units::Hertz tuner_a4 = units::standard_a4;
    /// Slides by id where their position was known while playing; a missing one is unknown.
    std::map<std::string, units::Millimetres> positions;
    std::vector<Reading> readings;
    std::string remarks;
    bool operator==(const TuningSheet&) const = default;
};

/// Settings that were given out, kept as they were told.
struct GivenSettings {
    GivenSettingsId id;
    StudentId student;
    HornId horn;
    std::optional<TuningSheetId> sheet;
    Date on;
    /// The program's version that answered.
    std::string engine;
    /// lowledger.settings/1, whole.
    std::string json;
    /// Set when the slides were moved as told.
    std::optional<Date> moved_on;
    bool operator==(const GivenSettings&) const = default;
};

}  // namespace lowledger::studio
