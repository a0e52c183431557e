// Leaves pages for people to look at in the build folder: charts.pdf.
#include <filesystem>
#include <gtest/gtest.h>

#include "reports/canvas/faces.h"
#include "reports/canvas/paper.h"
#include "reports/canvas/pdf.h"
#include "reports/canvas/text_block.h"
#include "reports/charts/gauge_strip.h"
#include "reports/charts/lean_chart.h"
#include "reports/charts/sheet_chart.h"
#include "reports/charts/slide_rule.h"
#include "reports/charts/trend_chart.h"
#include "tests/reports/charts/sample_charts.h"

namespace lowledger::charts {
namespace {

using units::Millimetres;

struct Montage {
    canvas::Faces faces;
    canvas::Document document;
    Millimetres left{15.0};

    canvas::Page& page() { return document.pages.back(); }
    void new_page() { document.pages.push_back({canvas::size_of(canvas::Paper::a4), {}}); }
    void title(std::string_view text, Millimetres y) {
        canvas::draw_text(page(), faces, text, {units::Points(8.0), canvas::Weight::bold, canvas::Tone::ink},
                          {left, y}, canvas::Align::left);
    }
};

void lean_charts(Montage& m) {
    m.new_page();
    const engraving::Engraver usual(m.faces, Millimetres(1.5));
    const LeanChart handout = handout_chart();
    m.title("Lean chart, 14 notes, 180 mm, staff space 1.5 mm", Millimetres(15.0));
    draw_lean_chart(m.page(), usual, handout,
                    {m.left, Millimetres(18.0), Millimetres(180.0),
                     lean_chart_height(usual, handout, Millimetres(180.0))});
    m.title("The same, 115 mm", Millimetres(105.0));
    draw_lean_chart(m.page(), usual, handout,
                    {m.left, Millimetres(108.0), Millimetres(115.0),
                     lean_chart_height(usual, handout, Millimetres(115.0))});
    LeanChart before_only = handout;
    before_only.clef = horns::Clef::treble;
    before_only.words.after.clear();
    before_only.range = units::Cents(20.0);
    before_only.notes.resize(7);
    for (LeanNote& note : before_only.notes) {
        note.after.reset();
        note.spelling.octave += 2;
    }
    canvas::draw_text(m.page(), m.faces, "Before only, treble clef, cut at 20, 60 mm",
                      {units::Points(8.0), canvas::Weight::bold, canvas::Tone::ink},
                      {Millimetres(135.0), Millimetres(105.0)}, canvas::Align::left);
    const engraving::Engraver small(m.faces, Millimetres(1.1));
    draw_lean_chart(m.page(), small, before_only,
                    {Millimetres(135.0), Millimetres(108.0), Millimetres(60.0), Millimetres(60.0)});
}

void full_range(Montage& m) {
    m.new_page();
    const engraving::Engraver engraver(m.faces, Millimetres(1.4));
    const LeanChart chart = full_range_chart();
    m.title("Full range, 180 mm", Millimetres(15.0));
    draw_lean_chart(m.page(), engraver, chart,
                    {m.left, Millimetres(18.0), Millimetres(180.0),
                     lean_chart_height(engraver, chart, Millimetres(180.0))});
}

void sheets_and_trends(Montage& m) {
    m.new_page();
    const engraving::Engraver engraver(m.faces, Millimetres(1.5));
    constexpr Millimetres width{180.0};
    Millimetres y(15.0);
    const SheetChart five = five_sheets();
    m.title("Five sheets over time, 180 mm", y);
    const Millimetres height = sheet_chart_height(engraver, five, width);
    draw_sheets_over_time(m.page(), engraver, five, {m.left, y + Millimetres(3.0), width, height});
    y += height + Millimetres(12.0);
    m.title("Two sheets side by side", y);
    draw_two_sheets(m.page(), engraver, two_sheets(), {m.left, y + Millimetres(3.0), width, height});
    y += height + Millimetres(12.0);
    m.title("A year, 180 mm and 70 mm", y);
    const TrendChart year = school_year();
    draw_trend_chart(m.page(), m.faces, year, {m.left, y + Millimetres(3.0), width, Millimetres(45.0)});
    y += Millimetres(54.0);
    TrendChart one = year;
    one.series.resize(1);
    one.series[0].name.clear();
    one.most.reset();
    draw_trend_chart(m.page(), m.faces, one, {m.left, y, Millimetres(85.0), Millimetres(35.0)});
    one.series[0].points.resize(1);
    draw_trend_chart(m.page(), m.faces, one, {Millimetres(115.0), y, Millimetres(70.0), Millimetres(35.0)});
}

void rules_and_strips(Montage& m) {
    m.new_page();
    const auto mm = [](double v) { return Millimetres(v); };
    const std::vector<SlideRule> rules = {
        {mm(20), mm(35), mm(15), mm(5), mm(70)},      {mm(5), mm(5), mm(4), mm(2), mm(25)},
        {mm(33), mm(35), mm(10), mm(3), mm(50)},      {std::nullopt, mm(12.5), mm(8), mm(3), mm(70)},
        {mm(25), std::nullopt, mm(0), mm(3), mm(70)}, {mm(0), mm(90), mm(20), mm(3), mm(90)},
        {mm(10), mm(8), mm(2), mm(1), mm(15)}};
    Millimetres y(20.0);
    m.title("Slide rules, 75 mm and 110 mm", Millimetres(15.0));
    for (const SlideRule& rule : rules) {
        draw_slide_rule(m.page(), m.faces, rule, {m.left, y, mm(75), slide_rule_height()});
        draw_slide_rule(m.page(), m.faces, rule, {mm(95), y, mm(105), slide_rule_height()});
        y += slide_rule_height() + mm(5);
    }
    const std::vector<GaugeStrip> strips = {{"main slide", "35 mm", mm(35), mm(70)},
                                            {"second valve slide", "5 mm", mm(5), mm(25)},
                                            {"first valve slide", "48 mm", mm(48), mm(50)},
                                            {"third valve slide", "22.5 mm", mm(22.5), mm(70)},
                                            {"fourth valve slide", "0 mm", mm(0), mm(90)}};
    m.title("Gauge strips, true size", y);
    y += mm(4);
    for (const GaugeStrip& strip : strips) {
        draw_gauge_strip(m.page(), m.faces, strip, {m.left, y});
        y += gauge_strip_size(m.faces, strip).height + mm(4);
    }
    draw_print_check(m.page(), m.faces, "This line is 50 mm long.", {m.left, y});
}

TEST(Montage, ChartsAreLeftToLookAt) {
    Montage m;
    m.document.title = "Charts";
    lean_charts(m);
    full_range(m);
    sheets_and_trends(m);
    rules_and_strips(m);
    const std::filesystem::path path = std::filesystem::path(LOWLEDGER_MONTAGE) / "charts.pdf";
    std::filesystem::create_directories(path.parent_path());
    canvas::save_pdf(m.document, m.faces, path);
    EXPECT_GT(std::filesystem::file_size(path), 10000U);
}

}  // namespace
}  // namespace lowledger::charts
