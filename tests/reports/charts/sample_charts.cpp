#include "tests/reports/charts/sample_charts.h"

#include <array>

namespace lowledger::charts {
namespace {

LeanNote note(const char* name, const char* fingering, double before, double after, double spread) {
    return {units::parse_spelling(name).value(),
            fingering,
            units::Cents(before),
            units::Cents(after),
            units::Cents(spread),
            false,
            true};
}

}  // namespace

LeanChart handout_chart() {
    LeanChart chart;
    chart.tolerance = units::Cents(15.0);
    chart.words = {"before", "after", "cents"};
    chart.notes = {note("Bb0", "0", -31, -24, 9), note("E1", "24", 27, 16, 8),  note("F1", "4", 14, 6, 7),
                   note("A1", "2", 12, 1, 5),     note("Bb1", "0", 18, 2, 4),   note("C2", "13", 34, 12, 6),
                   note("D2", "12", 20, 7, 6),    note("Eb2", "1", 6, -4, 5),   note("F2", "0", 9, -3, 4),
                   note("F#2", "23", 64, 55, 6),  note("Ab2", "1", -9, -17, 5), note("Bb2", "0", 11, 0, 4),
                   note("D3", "12", -6, -13, 7),  note("Eb3", "1", 2, -6, 6)};
    chart.notes[2].measured = false;
    chart.notes[5].alternate = true;
    chart.notes[12].measured = false;
    return chart;
}

LeanChart full_range_chart() {
    constexpr std::array<const char*, 12> fingerings = {"13", "23", "12", "1", "2", "0",
                                                        "23", "12", "1",  "2", "0", "2"};
    LeanChart chart;
    chart.tolerance = units::Cents(10.0);
    chart.words = {"before", "after", "cents"};
    for (int midi = 28; midi <= 60; ++midi) {
        const auto k = static_cast<std::size_t>(midi % 12);
        const double before = ((midi * 7) % 31) - 12.0;
        LeanNote n;
        n.spelling = units::spell(units::Pitch(midi));
        n.fingering = fingerings.at(k);
        n.before = units::Cents(before);
        n.after = units::Cents(before * 0.5 - 2.0);
        n.spread = units::Cents(4.0);
        chart.notes.push_back(n);
    }
    return chart;
}

}  // namespace lowledger::charts
