#include "reports/engraving/music.h"

#include <array>
#include <cstdlib>

namespace lowledger::engraving {
namespace {

using units::Letter;
using units::Spelling;

constexpr int octave_semitones = 12;
constexpr int letters = 7;
constexpr std::array<Letter, letters> by_fifths = {Letter::f, Letter::c, Letter::g, Letter::d,
                                                   Letter::a, Letter::e, Letter::b};

/// Place on the line of fifths: F 0, C 1, ... B 6, F# 7.
int fifth_of(const Spelling& spelling) {
    int place = 0;
    while (by_fifths.at(static_cast<std::size_t>(place)) != spelling.letter)
        ++place;
    return place + letters * spelling.alteration;
}

Spelling spelled(int fifth, units::Pitch pitch) {
    int alteration = 0;
    int place = fifth;
    for (; place < 0; place += letters)
        --alteration;
    for (; place >= letters; place -= letters)
        ++alteration;
    // The octave is the one in which the letter gives the pitch.
    Spelling spelling{by_fifths.at(static_cast<std::size_t>(place)), alteration, 4};
    spelling.octave += (pitch - units::pitch_of(spelling)).count / octave_semitones;
    return spelling;
}

KeySignature moved(KeySignature key, units::Semitones by) {
    constexpr int most_flats = 6;
    constexpr int fifths_per_semitone = 7;
    const int place = (key.fifths + fifths_per_semitone * by.count + most_flats) % octave_semitones;
    return {(place + octave_semitones) % octave_semitones - most_flats};
}

/// Moved and spelled, figures and all.
MusicLine moved(const MusicLine& line, units::Semitones by) {
    MusicLine result = line;
    const bool octaves = by.count % octave_semitones == 0;
    if (!octaves) result.key = moved(line.key, by);
    const int shift = result.key.fifths - line.key.fifths;
    for (Event& event : result.events) {
        auto* note = std::get_if<LineNote>(&event);
        if (note == nullptr) continue;
        const units::Pitch pitch = units::pitch_of(note->spelling) + by;
        const int was = std::abs(note->spelling.alteration);
        int fifth = fifth_of(note->spelling) + shift;
        Spelling spelling = spelled(fifth, pitch);
        if (std::abs(spelling.alteration) > 1 && std::abs(spelling.alteration) > was) {
            fifth += spelling.alteration > 0 ? -octave_semitones : octave_semitones;
            spelling = spelled(fifth, pitch);
        }
        note->spelling = spelling;
    }
    return result;
}

}  // namespace

double eighths_of(Duration duration, int dots) {
    double eighths = 1.0;
    switch (duration) {
        case Duration::whole:
            eighths = 8.0;
            break;
        case Duration::half:
            eighths = 4.0;
            break;
        case Duration::quarter:
            eighths = 2.0;
            break;
        case Duration::eighth:
            break;
    }
    return dots == 0 ? eighths : eighths * 1.5;
}

double eighths_of(const TimeSignature& time) {
    return 8.0 * time.beats / time.unit;
}

MusicLine transposed(const MusicLine& line, units::Semitones by) {
    MusicLine result = moved(line, by);
    for (Event& event : result.events) {
        auto* note = std::get_if<LineNote>(&event);
        if (note == nullptr || by.count == 0) continue;
        note->figure.clear();
        note->tendency.reset();
    }
    return result;
}

MusicLine for_reader(const MusicLine& sounding, const horns::Reader& reader) {
    MusicLine part = moved(sounding, reader.written_above);
    part.clef = reader.clef;
    return part;
}

MusicLine with_figures(MusicLine sounding, const std::function<std::string(units::Pitch)>& figure_of,
                       const std::function<std::optional<units::Cents>(units::Pitch)>& tendency_of) {
    bool tied = false;
    for (Event& event : sounding.events) {
        auto* note = std::get_if<LineNote>(&event);
        if (note == nullptr) continue;
        const units::Pitch pitch = units::pitch_of(note->spelling);
        note->figure = tied ? std::string() : figure_of(pitch);
        note->tendency = tied ? std::nullopt : tendency_of(pitch);
        tied = note->tied;
    }
    return sounding;
}

}  // namespace lowledger::engraving
