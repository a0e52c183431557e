#include "tests/reports/engraving/sample_music.h"

#include <algorithm>
#include <array>
#include <utility>

#include "reports/engraving/music_text.h"

namespace lowledger::engraving {
namespace {

LineNote note(const char* name, Duration duration, const char* figure) {
    return {units::parse_spelling(name).value(), duration, figure};
}

/// Makes a line bar by bar.
class Composer {
  public:
    explicit Composer(unsigned seed) : random_(seed) {}

    MusicLine compose() {
        line_.clef = static_cast<horns::Clef>(pick(0, 3));
        line_.key.fifths = pick(-5, 5);
        constexpr std::array<TimeSignature, 4> times = {{{4, 4}, {3, 4}, {2, 4}, {6, 8}}};
        line_.time = times.at(static_cast<std::size_t>(pick(0, 3)));
        if (pick(0, 1) == 0) line_.tempo = "Slow";
        middle_ = line_.clef == horns::Clef::treble ? 34 : line_.clef == horns::Clef::bass ? 22 : 28;
        step_ = middle_ + pick(-5, 5);
        const int bars = pick(1, 9);
        for (int bar = 1; bar <= bars; ++bar) {
            fill_bar();
            end_bar(bar == bars);
        }
        return line_;
    }

  private:
    int pick(int from, int to) {
        return from + static_cast<int>(random_() % static_cast<unsigned>(to - from + 1));
    }
    bool now_and_then(int in) { return pick(1, in) == 1; }

    void fill_bar() {
        constexpr std::array<std::pair<Duration, int>, 6> lengths = {{{Duration::eighth, 0},
                                                                      {Duration::quarter, 0},
                                                                      {Duration::quarter, 1},
                                                                      {Duration::half, 0},
                                                                      {Duration::half, 1},
                                                                      {Duration::whole, 0}}};
        double room = eighths_of(*line_.time);
        while (room > 0.5) {
            const auto [duration, dots] =
                lengths.at(static_cast<std::size_t>(std::min(pick(0, 5), pick(0, 5))));
            if (eighths_of(duration, dots) > room) continue;
            room -= eighths_of(duration, dots);
            if (!tied_ && now_and_then(8)) {
                line_.events.emplace_back(Rest{duration, dots});
            } else {
                add_note(duration, dots);
            }
        }
    }

    void add_note(Duration duration, int dots) {
        LineNote note;
        if (tied_) {
            note.spelling = *tied_;
        } else {
            step_ = std::clamp(step_ + pick(-4, 4), middle_ - reach, middle_ + reach);
            note.spelling = {static_cast<units::Letter>(step_ % 7), 0, step_ / 7};
            note.spelling.alteration =
                now_and_then(5) ? pick(-1, 1) : alteration_in(line_.key, note.spelling.letter);
            if (now_and_then(3)) note.figure = now_and_then(2) ? "12" : "0";
            if (now_and_then(9)) note.tendency = units::Cents(pick(-30, 30));
            if (now_and_then(9)) note.dynamic = static_cast<Dynamic>(pick(0, 5));
            if (now_and_then(9)) note.hairpin = static_cast<Hairpin>(pick(0, 1));
            if (now_and_then(12)) note.words = "hold it";
        }
        note.duration = duration;
        note.dots = dots;
        note.fermata = now_and_then(12);
        note.tied = now_and_then(7);
        tied_.reset();
        if (note.tied) tied_ = note.spelling;
        if (!slur_ && now_and_then(4)) {
            note.slur_starts = slur_ = true;
        } else if (slur_ && now_and_then(3)) {
            note.slur_ends = true;
            slur_ = false;
        }
        note.breath = !note.tied && !slur_ && now_and_then(6);
        line_.events.emplace_back(note);
    }

    void end_bar(bool last) {
        if (!last) {
            line_.events.emplace_back(static_cast<BarLine>(std::max(pick(-12, 4), 0)));
            return;
        }
        if (tied_ || slur_) {
            line_.events.emplace_back(BarLine::single);
            LineNote note{tied_.value_or(units::Spelling{units::Letter::d, 0, 3})};
            note.slur_ends = slur_;
            line_.events.emplace_back(note);
        }
        line_.events.emplace_back(BarLine::final_line);
    }

    std::mt19937 random_;
    MusicLine line_;
    static constexpr int reach = 12;
    int middle_ = 0;
    int step_ = 0;
    bool slur_ = false;
    std::optional<units::Spelling> tied_;
};

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

std::vector<MusicLine> routine_exercises() {
    std::vector<MusicLine> lines;
    for (const char* text :
         {"clef=bass key=2b time=4/4 tempo=\"Slow, one breath each\" mf Bb2/1^[0]{+4}, | A2/1^[12]{+9}, | "
          "Bb2/1^[0], | "
          "Ab2/1^[1], | Bb2/1^[0], | G2/1^[12] |.",
          "clef=bass key=2b time=4/4 p < (Bb2/8 C3 D3 Eb3 F3 Eb3 D3 C3) | f > (Bb2 D3 F3 D3) Bb2/2 | p "
          "(F2/4[0] G2[12]) (A2/8[12] Bb2 C3[1] D3) | \"hold\" Bb2/1^ |.",
          "clef=bass key=0 time=3/4 |: C3/4. D3/8 E3/4 | F3/2.~ | F3/4 r/4 E3/8 D3 | C3/2. :|",
          "clef=treble key=0 time=6/8 C4/8 E4 G4 C5 G4 E4 | (C4/4. G4/4.) | F#4/8 G4 Ab4 A4 Bb4 B4 | C5/2. "
          "|.",
          "clef=bass key=2b time=4/4 Bb1/2 F1[4] | Bb0/2{-25} C1/4 D1 | Bb1/1 || Bb3/4 F4 Bb4/2 |.",
          "clef=tenor key=2# time=2/4 D4/8 F#4 A4 D5 | C#5/8 r/8 r/4 | Bb3/4 B3/8 A3 | D4/2 |."}) {
        lines.push_back(parse_music(text));
    }
    return lines;
}

MusicLine random_music(unsigned seed) {
    return Composer(seed).compose();
}

}  // namespace lowledger::engraving
