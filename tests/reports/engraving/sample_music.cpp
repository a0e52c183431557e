#include "tests/reports/engraving/sample_music.h"

namespace lowledger::engraving {
namespace {

LineNote note(const char* name, Duration duration, const char* figure) {
    return {units::parse_spelling(name).value(), duration, figure};
}

}  // namespace

MusicLine exercise() {
    using enum Duration;
    return {horns::Clef::bass,
            {-2},
            {note("Bb1", quarter, "0"),
             note("C2", quarter, "13"),
             note("D2", eighth, "12"),
             note("E2", eighth, "2"),
             note("Eb2", quarter, "1"),
             BarLine::single,
             note("F2", half, "0"),
             note("F#2", eighth, "23"),
             Rest{eighth},
             Rest{quarter},
             BarLine::single,
             note("Bb2", eighth, "0"),
             note("Db3", eighth, "23"),
             note("D3", quarter, "12"),
             note("G3", half, "12"),
             BarLine::double_line,
             note("Bb3", whole, "0"),
             BarLine::single,
             Rest{half},
             note("E4", quarter, "2"),
             note("A4", eighth, "12"),
             note("E1", eighth, "24"),
             BarLine::single,
             Rest{whole},
             BarLine::final_line}};
}

NoteRow full_row() {
    NoteRow row;
    const auto add = [&](const char* name, const char* fingering) {
        row.notes.push_back({units::parse_spelling(name).value(), fingering, false, std::nullopt});
    };
    add("Bb0", "0");
    add("B0", "1234");
    add("C1", "134");
    add("Eb1", "124");
    add("E1", "24");
    add("F1", "4");
    add("Gb1", "23");
    add("Bb1", "0");
    add("C#2", "23");
    add("Eb2", "1");
    add("G2", "12");
    add("Abb2", "12");
    add("F3", "0");
    add("F##3", "12");
    add("Bb3", "0");
    row.notes[5].alternate = true;
    row.notes[6].tendency = units::Cents(14.0);
    row.notes[9].tendency = units::Cents(-8.0);
    row.notes[14].tendency = units::Cents(0.0);
    return row;
}

MusicLine random_line(unsigned seed) {
    std::mt19937 random(seed);
    const auto pick = [&](int from, int to) {
        return from + static_cast<int>(random() % static_cast<unsigned>(to - from + 1));
    };
    MusicLine line;
    line.clef = static_cast<horns::Clef>(pick(0, 3));
    line.key.fifths = pick(-7, 7);
    const int centre = units::Spelling{units::Letter::d, 0, 3}.diatonic_step();
    for (int i = 0; i < 10; ++i) {
        if (pick(0, 5) == 0) {
            line.events.emplace_back(Rest{static_cast<Duration>(pick(0, 3))});
        } else {
            const int step = centre + pick(-16, 14);
            const units::Spelling spelling{static_cast<units::Letter>(step % 7), pick(-2, 2), step / 7};
            line.events.emplace_back(LineNote{spelling, static_cast<Duration>(pick(0, 3)), "123"});
        }
        if (pick(0, 3) == 0) line.events.emplace_back(static_cast<BarLine>(pick(0, 1)));
    }
    line.events.emplace_back(BarLine::final_line);
    return line;
}

}  // namespace lowledger::engraving
