#include "tests/reports/charts/sample_charts.h"

#include <array>
#include <optional>
#include <string>
#include <utility>

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

SheetChart five_sheets() {
    SheetChart chart;
    chart.tolerance = units::Cents(15.0);
    chart.unit = "cents";
    const LeanChart handout = handout_chart();
    for (const LeanNote& n : handout.notes)
        chart.notes.push_back({n.spelling, n.fingering});
    constexpr std::array<const char*, 5> labels = {"12 Sept", "3 Oct", "7 Nov", "16 Jan", "6 March"};
    for (std::size_t s = 0; s < labels.size(); ++s) {
        SheetLeans sheet{labels.at(s), {}};
        for (std::size_t i = 0; i < handout.notes.size(); ++i) {
            const double wobble = static_cast<double>((i * 5 + s * 3) % 7) - 3.0;
            const double share = 1.0 - 0.2 * static_cast<double>(s);
            std::optional<units::Cents> lean = *handout.notes[i].before * share + units::Cents(wobble);
            if ((i + s) % 6 == 5) lean.reset();
            sheet.leans.push_back(lean);
        }
        chart.sheets.push_back(std::move(sheet));
    }
    return chart;
}

SheetChart two_sheets() {
    SheetChart chart = five_sheets();
    chart.sheets.erase(chart.sheets.begin() + 1, chart.sheets.end() - 1);
    return chart;
}

TrendChart school_year() {
    using namespace std::chrono;
    struct Sheet {
        year_month_day day;
        const char* label;
        double share;
        int count;
    };
    const std::array<Sheet, 8> sheets = {{{2025y / 9 / 12, "12 Sept", 36, 14},
                                          {2025y / 9 / 19, "19 Sept", 43, 14},
                                          {2025y / 9 / 22, "22 Sept", 40, 12},
                                          {2025y / 11 / 7, "7 Nov", 57, 14},
                                          {2025y / 12 / 5, "5 Dec", 64, 14},
                                          {2026y / 1 / 16, "16 Jan", 61, 18},
                                          {2026y / 3 / 6, "6 March", 78, 18},
                                          {2026y / 3 / 27, "27 March", 100, 18}}};
    TrendChart chart;
    chart.unit = "%";
    chart.title = "Notes within tolerance";
    chart.most = 100.0;
    chart.series = {{"Ana", {}}, {"all of the section", {}}, {"last year", {}}};
    for (const Sheet& sheet : sheets) {
        chart.series[0].points.push_back(
            {sheet.day, sheet.label, sheet.share, std::to_string(sheet.count) + " notes"});
        chart.series[1].points.push_back({sheet.day, sheet.label, 50.0 + sheet.share * 0.3, ""});
        chart.series[2].points.push_back({sheet.day, sheet.label, sheet.share * 0.5 + 10.0, ""});
    }
    chart.series[1].points[4].value.reset();
    return chart;
}

}  // namespace lowledger::charts
