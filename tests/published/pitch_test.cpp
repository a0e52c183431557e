#include "model/units/pitch.h"

#include <array>
#include <gtest/gtest.h>

#include "model/acoustics/tube.h"
#include "tests/published/table.h"

namespace lowledger::published {
namespace {

/// Note names, MIDI numbers and frequencies: UNSW, newt.phys.unsw.edu.au/jw/notes.html; McGill University,
/// MUMT 307.
TEST(PublishedPitch, NamesNumbersAndFrequencies) {
    for (const Row& row : table("et_notes.csv")) {
        const auto pitch = units::parse_pitch(row.text("note"));
        ASSERT_TRUE(pitch) << row.place();
        EXPECT_EQ(pitch->midi(), row.integer("midi")) << row.place();
        EXPECT_NEAR(units::equal_tempered(*pitch).value(), row.number("hz_A440"), 5e-5) << row.place();
    }
}

/// Harmonics against equal temperament, derived from 1200 log2(n); the fifth, 13.7 cents flat, is also worked
/// at galvanizedjazz.com/tuba/fifthPartial.html. Partials 11 and 13 against the nearest semitone.
TEST(PublishedPitch, HarmonicsAgainstEqualTemperament) {
    constexpr std::array<int, 16> semitones = {0, 12, 19, 24, 28, 31, 34, 36, 38, 40, 42, 43, 44, 46, 47, 48};
    constexpr std::array<double, 16> cents = {0.0,   0.0,     1.955,   0.0,   -13.686, 1.955,   -31.174, 0.0,
                                              3.910, -13.686, -48.682, 1.955, 40.528,  -31.174, -11.731, 0.0};
    const units::Pitch pedal(22);
    const units::Millimetres open = acoustics::open_length(units::equal_tempered(pedal));
    for (std::size_t i = 0; i < cents.size(); ++i) {
        const units::Pitch note = pedal + units::Semitones{semitones[i]};
        EXPECT_NEAR(acoustics::lean(open, static_cast<int>(i) + 1, note).value(), cents[i], 5e-4)
            << "partial " << i + 1;
    }
}

/// Theory column of the tendencies by partial that teachers print, rounded: L. Pitts, "tuba", The
/// Instrumentalist.
TEST(PublishedPitch, TendenciesThatTeachersPrint) {
    const units::Millimetres open = acoustics::open_length(units::equal_tempered(units::Pitch(22)));
    for (const auto& [n, midi, cents] :
         {std::tuple{3, 41, 2.0}, {5, 50, -14.0}, {6, 53, 2.0}, {7, 56, -32.0}})
        EXPECT_NEAR(acoustics::lean(open, n, units::Pitch(midi)).value(), cents, 1.0) << "partial " << n;
}

}  // namespace
}  // namespace lowledger::published
