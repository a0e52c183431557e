#pragma once

#include <optional>
#include <vector>

#include "model/horns/kind.h"

namespace lowledger::horns {

enum class Tone {
    /// The first partial.
    pedal,
    /// The second to the sixteenth.
    partial,
    /// A tone between the first and second partial that the horn has no resonance for, a fifth below the
    /// second; lips and bell make it (common practice; where exactly it lies differs from horn to horn).
    false_tone,
};

/// A way of playing a note, with the horn in tune as designed.
struct Way {
    Fingering fingering;
    /// The partial it sounds on; 1 for a false tone, which has none.
    int partial = 0;
    Tone tone = Tone::partial;
    /// Against equal temperament, the hand slide in its plain position; of a false tone only an indication.
    units::Cents lean;
    /// False: the note in tune lies beyond the end of the hand slide.
    bool within_reach = true;
    /// What the ways of a note are ranked by, in cents: |lean| (on a hand slide the part that is not a matter
    /// of placing it), how easy the fingering is, and how hard the partial.
    units::Cents cost;
    bool operator==(const Way&) const = default;
};

/// Every way the kind has for a note within 75 cents, on partials 1 to 16 or as a false tone, the best first.
/// False tones come after all others, ways out of reach last. Empty if the horn cannot sound it.
std::vector<Way> possible_fingerings(const HornKind& kind, units::Pitch note);

/// Why a chart's usual fingering is what it is.
enum class UsualBecause {
    /// It ranks first.
    ranks_first,
    /// Ways on the 7th, 9th, 11th and 13th to 15th partials (or above a trombone valve's third) rank before
    /// it;
    /// charts leave them out.
    chart_partials,
    /// Better tuned ways rank before it; charts take the easier hands and leave a small lean to the player.
    easier_hands,
    /// The trade teaches it, and the kind's file says so.
    taught,
};

/// A note of a chart.
struct ChartNote {
    units::Pitch note;
    Way usual;
    UsualBecause because = UsualBecause::ranks_first;
    /// All other ways, ranked.
    std::vector<Way> alternates;
    bool operator==(const ChartNote&) const = default;
};

/// The usual way of a note and the others; empty if the horn cannot sound it. The usual way is the one the
/// kind's file names; else, of the ways on the partials that charts go by, the one of least hands +
/// lean^2/(120 cents): easy hands as long as the lean is small, which is how the trade's charts come out.
std::optional<ChartNote> chart_note(const HornKind& kind, units::Pitch note);

/// The chart of the kind's usual range, from the lowest note up. Notes that the horn cannot sound are left
/// out.
std::vector<ChartNote> chart(const HornKind& kind);

/// The partial that a fingering most likely sounds a pitch on: the one of least |lean| among 1..16; with its
/// lean. Empty if even that one is more than `most` away (the fingering cannot sound the note).
struct PartialLean {
    int partial;
    units::Cents lean;
};
std::optional<PartialLean> sounding_partial(const HornKind& kind, const Fingering& fingering,
                                            units::Pitch note, units::Cents most = units::Cents(100.0));

}  // namespace lowledger::horns
