#pragma once

#include <compare>
#include <optional>
#include <string>
#include <string_view>

#include "model/units/hertz.h"

namespace lowledger::units {

/// A number of equal-tempered semitones, up positive.
struct Semitones {
    int count = 0;
    constexpr auto operator<=>(const Semitones&) const = default;
};

/// A sounding pitch of the equal-tempered scale, as its MIDI number (A4 = 69, C4 = 60).
class Pitch {
  public:
    /// Throws Refusal outside 0..127.
    explicit Pitch(int midi);
    [[nodiscard]] int midi() const { return midi_; }

    auto operator<=>(const Pitch&) const = default;
    friend Pitch operator+(Pitch p, Semitones by) { return Pitch(p.midi_ + by.count); }
    friend Pitch operator-(Pitch p, Semitones by) { return Pitch(p.midi_ - by.count); }
    friend Semitones operator-(Pitch a, Pitch b) { return {a.midi_ - b.midi_}; }

  private:
    int midi_;
};

/// Frequency in equal temperament: a4 2^((midi-69)/12).
Hertz equal_tempered(Pitch pitch, Hertz a4 = standard_a4);

enum class Letter { c, d, e, f, g, a, b };

/// How a pitch is written: a letter, its alteration (+1 sharp, -1 flat), and the octave, which changes at C
/// (C4 = middle C).
struct Spelling {
    Letter letter = Letter::c;
    int alteration = 0;
    int octave = 4;
    bool operator==(const Spelling&) const = default;

    /// Staff steps (lines and spaces) from C0, alteration left out: C4 is 28. What a staff position is
    /// counted in.
    [[nodiscard]] constexpr int diatonic_step() const { return octave * 7 + static_cast<int>(letter); }
};

enum class Accidentals { flats, sharps };

/// The usual spelling of a pitch, black keys as flats or as sharps.
Spelling spell(Pitch pitch, Accidentals prefer = Accidentals::flats);

/// The sounding pitch of a spelling. Throws Refusal outside MIDI 0..127.
Pitch pitch_of(const Spelling& spelling);

/// A note's name in files: letter, `b` or `#`, octave; "Bb2".
std::string file_name(const Spelling& spelling);
std::string file_name(Pitch pitch);

/// Reads a note's name: letter in either case, up to two of `b`/`#` or the signs U+266D/U+266F, octave 0..9
/// (-1 too). Empty if it is no note.
std::optional<Spelling> parse_spelling(std::string_view text);
std::optional<Pitch> parse_pitch(std::string_view text);

}  // namespace lowledger::units
