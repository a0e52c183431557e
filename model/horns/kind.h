#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "model/acoustics/tube.h"
#include "model/horns/fingering.h"
#include "model/horns/reader.h"
#include "model/units/pitch.h"
#include "model/units/quantity.h"

namespace lowledger::horns {

/// A valve of a kind and what it was built for: pressed together with `built_with` (usually nothing) it
/// lowers the open horn by `built_for` when all slides stand as designed. A third valve is built for 300
/// cents alone, or for 400 with the second; a fifth for 700 with the fourth.
struct ValveKind {
    /// What it is called on the horn: "1".."6", or "F", "Gb".
    std::string label;
    units::Cents built_for;
    acoustics::ValveSet built_with;
    /// It cannot be used without these (the dependent second valve of a bass trombone).
    acoustics::ValveSet needs;
    bool operator==(const ValveKind&) const = default;
};

/// A loop of a compensating system: `valve` adds it while `with` is down too. The ideal loop is
/// v_valve v_with/L, so that both together are in tune with the lengthened horn; `share` is how much of that
/// the builder gave.
struct LoopKind {
    int valve = 0;
    int with = 0;
    double share = 1.0;
    bool operator==(const LoopKind&) const = default;
};

/// A tuning slide of a kind.
struct SlideKind {
    /// Key in files and in the studio: "main", "first", "second", "third", "fourth", ...
    std::string id;
    /// As a sentence says it: "main slide", "second valve slide".
    std::string name;
    /// The valve (1-based) whose tube it lies on; empty when it acts always.
    std::optional<int> valve;
    double legs = 2.0;
    units::Millimetres designed;
    units::Millimetres travel;
    units::Millimetres least;
    /// A player can move it during a note.
    bool while_playing = false;
    bool operator==(const SlideKind&) const = default;
};

/// One step of the usual order of tuning: this slide is set by this note with this fingering.
struct TuningStep {
    std::string slide;
    units::Pitch note;
    Fingering fingering;
    bool operator==(const TuningStep&) const = default;
};

/// A note to listen to once the slides are set; nothing is moved for it.
struct CheckNote {
    units::Pitch note;
    Fingering fingering;
    bool operator==(const CheckNote&) const = default;
};

/// A span of sounding pitches, both ends in it.
struct Span {
    units::Pitch low;
    units::Pitch high;
    [[nodiscard]] bool contains(units::Pitch p) const { return low <= p && p <= high; }
    bool operator==(const Span&) const = default;
};

/// A catalogue entry: everything that is true of a horn because of what it is, before any is measured. Its
/// fingerings are computed from it, see chart.h.
struct HornKind {
    /// Key in files: "bbb-tuba-3".
    std::string id;
    /// "BBb tuba, three valves".
    std::string name;
    /// Sounding pitch of the first partial of the open horn.
    units::Pitch fundamental;
    /// The clef it is usually read in at sounding pitch; `readers` begins with it.
    Clef clef = Clef::bass;
    /// All the ways its parts are written.
    std::vector<Reader> readers{};
    std::vector<ValveKind> valves;
    std::vector<SlideKind> slides;
    std::vector<LoopKind> loops;
    /// Furthest the hand slide goes, on a trombone.
    std::optional<units::Millimetres> hand_slide;
    /// The range its usual chart covers, and the core that beginners play.
    Span usual_range;
    Span core_range;
    /// The note a band tunes to on this horn.
    units::Pitch band_note;
    std::vector<TuningStep> tuning_order;
    /// What to listen to after the order: two independent valves together.
    std::vector<CheckNote> checks{};
    /// Notes where the trade's chart has another fingering than the rule of `chart_note` finds.
    std::map<units::Pitch, Fingering> taught;
    /// Beginners are shown alternate fingerings.
    bool alternates_for_beginners = false;
    /// Minutes of playing until it is warm.
    int warm_up_minutes = 5;
    /// Cautions of its own, ids of sentences: "caution_lift_sousaphone".
    std::vector<std::string> cautions;
    /// The kind's file, whole, as read; the studio keeps a copy.
    std::string source_text;

    [[nodiscard]] std::vector<std::string> valve_labels() const;
    /// Null if it has no slide of that id.
    [[nodiscard]] const SlideKind* slide(std::string_view slide_id) const;
    [[nodiscard]] std::optional<std::size_t> slide_index(std::string_view slide_id) const;
    /// Whether the horn has those valves and can use them together, and names a position if it has a hand
    /// slide and only then.
    [[nodiscard]] bool allows(const Fingering& fingering) const;
    bool operator==(const HornKind&) const = default;
};

/// The tube of a kind with the hand slide closed, slides in the order of `kind.slides`, every bore 1.
acoustics::Tube tube_of(const HornKind& kind);

/// Length in use of a fingering with all tuning slides at their designed positions; on a horn with a hand
/// slide with it at the fingering's plain position (see `plain_position`).
units::Millimetres designed_length(const HornKind& kind, const Fingering& fingering);

/// Reads a kind from TOML. Throws Refusal that names `file_name`, line, key and what is allowed.
HornKind read_kind(std::string_view toml, std::string_view file_name);

/// The kinds that come with the program, in the order a list shows them.
const std::vector<HornKind>& built_in_kinds();
/// Null if there is none of that id.
const HornKind* find_kind(std::span<const HornKind> kinds, std::string_view id);

}  // namespace lowledger::horns
