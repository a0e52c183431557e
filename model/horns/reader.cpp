#include "model/horns/reader.h"

#include <array>
#include <cstdlib>

namespace lowledger::horns {
namespace {

/// Staff steps of an interval's simple part: unison, minor and major second, ..., major seventh.
constexpr std::array<int, 12> steps_of_semitones = {0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6};

int staff_steps(units::Semitones interval) {
    const int octaves = interval.count / 12;
    return 7 * octaves + steps_of_semitones.at(static_cast<std::size_t>(interval.count % 12));
}

units::Spelling moved_by_steps(const units::Spelling& from, int steps) {
    const int step = from.diatonic_step() + steps;
    return {static_cast<units::Letter>(step % 7), 0, step / 7};
}

/// A sign before a letter that has a plain neighbour there, or two signs.
bool is_awkward(const units::Spelling& spelling) {
    if (std::abs(spelling.alteration) > 1) return true;
    const bool below_a_semitone_step =
        spelling.letter == units::Letter::e || spelling.letter == units::Letter::b;
    const bool above_a_semitone_step =
        spelling.letter == units::Letter::f || spelling.letter == units::Letter::c;
    return (spelling.alteration > 0 && below_a_semitone_step) ||
           (spelling.alteration < 0 && above_a_semitone_step);
}

}  // namespace

units::Spelling written(const units::Spelling& sounding, const Reader& reader) {
    if (reader.written_above == units::Semitones{0}) return sounding;
    const units::Pitch pitch = units::pitch_of(sounding) + reader.written_above;
    units::Spelling spelling = moved_by_steps(sounding, staff_steps(reader.written_above));
    spelling.alteration = (pitch - units::pitch_of(spelling)).count;
    if (!is_awkward(spelling)) return spelling;
    return units::spell(pitch,
                        sounding.alteration > 0 ? units::Accidentals::sharps : units::Accidentals::flats);
}

units::Pitch sounding(const units::Spelling& written, const Reader& reader) {
    return units::pitch_of(written) - reader.written_above;
}

}  // namespace lowledger::horns
