#include "model/horns/reader.h"

#include <algorithm>
#include <gtest/gtest.h>

#include "model/horns/kind.h"

namespace lowledger::horns {
namespace {

using units::Accidentals;
using units::Pitch;
using units::Spelling;

const Reader& reader_of(std::string_view kind_id, std::string_view reader_id) {
    const HornKind* kind = find_kind(built_in_kinds(), kind_id);
    if (kind == nullptr) throw std::runtime_error("no such kind");
    const auto at = std::ranges::find(kind->readers, reader_id, &Reader::id);
    if (at == kind->readers.end()) throw std::runtime_error("no such reader");
    return *at;
}

std::string written_name(std::string_view kind, std::string_view reader, const char* sounding) {
    return units::file_name(written(units::parse_spelling(sounding).value(), reader_of(kind, reader)));
}

TEST(Reader, WrittenAndSoundingPitchGoThereAndBackOverAllKinds) {
    for (const HornKind& kind : built_in_kinds()) {
        for (const Reader& reader : kind.readers) {
            for (int midi = kind.usual_range.low.midi(); midi <= kind.usual_range.high.midi(); ++midi) {
                for (const auto prefer : {Accidentals::flats, Accidentals::sharps}) {
                    const Spelling heard = units::spell(Pitch(midi), prefer);
                    const Spelling seen = written(heard, reader);
                    EXPECT_EQ(sounding(seen, reader), Pitch(midi)) << kind.id << " " << reader.id;
                    EXPECT_LE(std::abs(seen.alteration), 1) << kind.id << " " << reader.id;
                }
            }
        }
    }
}

TEST(Reader, EveryKindBeginsWithItsOwnClefAtPitch) {
    for (const HornKind& kind : built_in_kinds()) {
        EXPECT_EQ(kind.readers.front().clef, kind.clef) << kind.id;
        EXPECT_EQ(kind.readers.front().written_above, units::Semitones{0}) << kind.id;
    }
}

/// Common practice of brass bands: treble clef parts sound a major ninth (euphonium), a major thirteenth
/// (E-flat bass), two octaves and a second (B-flat bass) below what is written.
TEST(Reader, TheOpenNoteIsWrittenC) {
    EXPECT_EQ(written_name("euphonium-3", "treble-b-flat", "Bb3"), "C5");
    EXPECT_EQ(written_name("eb-tuba-3-comp", "treble-e-flat", "Eb2"), "C4");
    EXPECT_EQ(written_name("bbb-tuba-3-comp", "treble-b-flat", "Bb1"), "C4");
    EXPECT_EQ(written_name("euphonium-3", "bass-b-flat", "Bb2"), "C3");
    EXPECT_EQ(written_name("tenor-trombone", "tenor", "Bb3"), "Bb3");
}

TEST(Reader, SpellingFollowsTheInterval) {
    EXPECT_EQ(written_name("euphonium-3", "treble-b-flat", "Gb3"), "Ab4");
    EXPECT_EQ(written_name("euphonium-3", "treble-b-flat", "F#3"), "G#4");
    EXPECT_EQ(written_name("euphonium-3", "treble-b-flat", "A3"), "B4");
    EXPECT_EQ(written_name("euphonium-3", "treble-b-flat", "E3"), "F#4");
    EXPECT_EQ(written_name("euphonium-3", "treble-b-flat", "D#3"), "F4") << "rather than E sharp";
    EXPECT_EQ(written_name("eb-tuba-3-comp", "treble-e-flat", "Gb2"), "Eb4");
}

}  // namespace
}  // namespace lowledger::horns
