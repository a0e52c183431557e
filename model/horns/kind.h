#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "model/acoustics/tube.h"
#include "model/horns/fingering.h"
#include "model/units/pitch.h"
#include "model/units/quantity.h"

namespace lowledger::horns {

enum class Clef { bass, treble, tenor, alto };

/// A valve of a kind: what pressing it alone was built to lower by.
struct ValveKind {
    /// What it is called on the horn: "1".."6", or "F", "Gb".
    std::string label;
    units::Cents built_for;
    bool operator==(const ValveKind&) const = default;
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

/// A span of sounding pitches, both ends in it.
struct Span {
    units::Pitch low;
    units::Pitch high;
    [[nodiscard]] bool contains(units::Pitch p) const { return low <= p && p <= high; }
    bool operator==(const Span&) const = default;
};

/// A catalogue entry: everything that is true of a horn because of what it is, before any is measured.
struct HornKind {
    /// Key in files: "bbb-tuba-3".
    std::string id;
    /// "BBb tuba, three valves".
    std::string name;
    /// Sounding pitch of the first partial of the open horn.
    units::Pitch fundamental;
    Clef clef = Clef::bass;
    std::vector<ValveKind> valves;
    std::vector<SlideKind> slides;
    std::vector<acoustics::Loop> loops;
    /// Furthest the hand slide goes, on a trombone.
    std::optional<units::Millimetres> hand_slide;
    /// The range its usual chart covers, and the core that beginners play.
    Span usual_range;
    Span core_range;
    /// The note a band tunes to on this horn.
    units::Pitch band_note;
    std::vector<TuningStep> tuning_order;
    /// One fingering for a family of notes where the trade teaches one: pitch -> usual fingering, by chart.
    struct ChartNote {
        units::Pitch note;
        Fingering usual;
        int partial = 0;
        std::vector<std::pair<Fingering, int>> alternates;
        bool operator==(const ChartNote&) const = default;
    };
    std::vector<ChartNote> chart;
    /// Minutes of playing until it is warm.
    int warm_up_minutes = 5;
    /// Cautions of its own, ids of sentences: "lift-sousaphone".
    std::vector<std::string> cautions;
    /// The kind's file, whole, as read; the studio keeps a copy.
    std::string source_text;

    [[nodiscard]] std::vector<std::string> valve_labels() const;
    [[nodiscard]] const SlideKind* slide(std::string_view id) const;
    [[nodiscard]] std::optional<std::size_t> slide_index(std::string_view id) const;
    /// Whether the horn has those valves (and a hand slide, if the fingering names a position).
    [[nodiscard]] bool allows(const Fingering& fingering) const;
    bool operator==(const HornKind&) const = default;
};

/// The tube of a kind, slides in the order of `kind.slides`, ideal loops, every bore 1.
acoustics::Tube tube_of(const HornKind& kind);

/// Reads a kind from TOML. Throws Refusal that names `file_name`, line, key and what is allowed.
HornKind read_kind(std::string_view toml, std::string_view file_name);

/// The kinds that come with the program, in the order a list shows them.
const std::vector<HornKind>& built_in_kinds();
/// Null if there is none of that id.
const HornKind* find_kind(std::span<const HornKind> kinds, std::string_view id);

/// The partial that a fingering most likely sounds a pitch on: the one of least |lean| among 1..16; with its
/// lean. Empty if even that one is more than `most` away (the fingering cannot sound the note).
struct PartialLean {
    int partial;
    units::Cents lean;
};
std::optional<PartialLean> sounding_partial(const HornKind& kind, const Fingering& fingering,
                                            units::Pitch note, units::Cents most = units::Cents(100.0));

}  // namespace lowledger::horns
