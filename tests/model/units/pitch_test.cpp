#include "model/units/pitch.h"

#include <gtest/gtest.h>

#include "model/units/refusal.h"

namespace lowledger::units {
namespace {

TEST(Pitch, EveryNameReadsBackAsItsPitch) {
    for (int midi = 0; midi < 128; ++midi) {
        const Pitch pitch(midi);
        EXPECT_EQ(pitch_of(spell(pitch, Accidentals::flats)), pitch);
        EXPECT_EQ(pitch_of(spell(pitch, Accidentals::sharps)), pitch);
        EXPECT_EQ(parse_pitch(file_name(pitch)), pitch);
    }
}

TEST(Pitch, OutsideMidiIsRefused) {
    EXPECT_THROW(Pitch(-1), Refusal);
    EXPECT_THROW(Pitch(128), Refusal);
}

}  // namespace
}  // namespace lowledger::units
