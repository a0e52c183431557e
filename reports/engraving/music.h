#pragma once

#include <functional>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "model/horns/reader.h"
#include "model/units/pitch.h"
#include "model/units/quantity.h"
#include "reports/engraving/staff.h"

namespace lowledger::engraving {

enum class Duration { whole, half, quarter, eighth };

enum class BarLine { single, double_line, final_line, repeat_starts, repeat_ends };

enum class Dynamic { pp, p, mp, mf, f, ff };

enum class Hairpin { louder, softer };

/// A note in a line of music, with what stands above and below it.
struct LineNote {
    units::Spelling spelling;
    Duration duration = Duration::quarter;
    /// Fingering or position under the staff; may be empty.
    std::string figure{};
    /// Augmentation dots, 0 or 1.
    int dots = 0;
    /// To the next note, which has the same spelling.
    bool tied = false;
    bool slur_starts = false;
    bool slur_ends = false;
    bool fermata = false;
    /// A breath mark after it.
    bool breath = false;
    /// An arrow and signed cents under the staff.
    std::optional<units::Cents> tendency{};
    std::optional<Dynamic> dynamic{};
    /// From this note to the next one with a dynamic or another hairpin, or to the line's last note.
    std::optional<Hairpin> hairpin{};
    /// Above the staff.
    std::string words{};
    bool operator==(const LineNote&) const = default;
};

struct Rest {
    Duration duration = Duration::quarter;
    int dots = 0;
    bool operator==(const Rest&) const = default;
};

using Event = std::variant<LineNote, Rest, BarLine>;

struct TimeSignature {
    int beats = 4;
    /// 1, 2, 4 or 8.
    int unit = 4;
    bool operator==(const TimeSignature&) const = default;
};

/// One voice on one staff, in time. Accidentals are shown where the key or the bar so far says otherwise, and
/// hold until the next bar line.
struct MusicLine {
    horns::Clef clef = horns::Clef::bass;
    KeySignature key{};
    std::vector<Event> events{};
    std::optional<TimeSignature> time{};
    /// In bold above the first note; may be empty.
    std::string tempo{};
    bool operator==(const MusicLine&) const = default;
};

/// Length in eighths; a dotted eighth has one and a half.
double eighths_of(Duration duration, int dots);
double eighths_of(const TimeSignature& time);

/// The same line sounding higher or lower, in the key of six flats to five sharps that is as far from its
/// own. Each note keeps its place in the key, so that a raised fourth stays one; where that gave a double
/// accidental that was none, it is the usual spelling. Figures and tendencies are gone: they were those of
/// other notes. Throws Refusal beyond MIDI 0..127.
MusicLine transposed(const MusicLine& line, units::Semitones by);

/// A line of sounding notes as the reader's part has it, spelled as `transposed` does. Figures and tendencies
/// stay, for the notes sound the same.
MusicLine for_reader(const MusicLine& sounding, const horns::Reader& reader);

/// The line of sounding notes with the figure and the tendency of each note anew; a note that a tie leads to
/// has none.
MusicLine with_figures(MusicLine sounding, const std::function<std::string(units::Pitch)>& figure_of,
                       const std::function<std::optional<units::Cents>(units::Pitch)>& tendency_of);

}  // namespace lowledger::engraving
