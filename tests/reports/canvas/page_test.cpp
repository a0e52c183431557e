#include "reports/canvas/page.h"

#include <gtest/gtest.h>

#include "reports/canvas/faces.h"
#include "reports/canvas/paper.h"
#include "reports/canvas/text_block.h"

namespace lowledger::canvas {
namespace {

using units::Millimetres;

Point at(double x, double y) {
    return {Millimetres(x), Millimetres(y)};
}

TEST(RecordedText, GivesEveryItemALine) {
    Page page{size_of(Paper::a4), {}};
    page.items.emplace_back(Line{at(10, 20), at(-0.001, 20.456), {Millimetres(0.25), Tone::faint, true}});
    page.items.emplace_back(Shape{{MoveTo{at(1, 1)}, LineTo{at(3, 2)}, Close{}}, Tone::pale, ""});
    page.items.emplace_back(Shape{
        {MoveTo{at(1, 1)}, CurveTo{at(2, 0), at(3, 0), at(4, 1)}, Close{}}, Tone::ink, "notehead.whole"});
    page.items.emplace_back(Outline{{MoveTo{at(0, 0)}, LineTo{at(1, 0)}}, {Millimetres(0.5), Tone::accent}});
    page.items.emplace_back(
        Text{at(5, 6), "B\u266D", {units::Points(9.5), Weight::bold, Tone::ink}, Millimetres(7.126)});
    page.items.emplace_back(
        Link{{Millimetres(1), Millimetres(2), Millimetres(3), Millimetres(4)}, "https://example.org/"});
    EXPECT_EQ(recorded_text(page),
              "page 210.00 x 297.00\n"
              "line 10.00 20.00 to 0.00 20.46 0.25 faint dashed\n"
              "shape pale M 1.00 1.00 L 3.00 2.00 Z\n"
              "shape ink notehead.whole 1.00 0.00 to 4.00 1.00 steps 3\n"
              "outline 0.50 accent M 0.00 0.00 L 1.00 0.00\n"
              "text 5.00 6.00 9.5pt bold ink wide 7.13 \"B\u266D\"\n"
              "link 1.00 2.00 to 4.00 6.00 https://example.org/\n");
}

TEST(RecordedText, HoldsMeasuredText) {
    const Faces faces;
    Page page{size_of(Paper::letter), {}};
    draw_text(page, faces, "Z\u0307o\u0301\u0142w", {}, at(15, 20));
    // Noto Sans has (hmtx table) 572, 605, 258 and 786 thousandths of an em; at 10 pt that is 7.84 mm.
    EXPECT_EQ(recorded_text(page),
              "page 215.90 x 279.40\ntext 15.00 20.00 10.0pt ink wide 7.84 \"\u017B\u00F3\u0142w\"\n");
}

TEST(Extent, OfNothingIsEmpty) {
    EXPECT_EQ(extent({}), Box{});
}

TEST(Paper, HasTheSizesOfItsStandards) {
    // ISO 216:2007, table of the A series; ANSI/ASME Y14.1, size A (8.5 by 11 inches).
    EXPECT_EQ(size_of(Paper::a4), (Size{Millimetres(210), Millimetres(297)}));
    EXPECT_DOUBLE_EQ(size_of(Paper::letter).width.value(), 8.5 * 25.4);
    EXPECT_DOUBLE_EQ(size_of(Paper::letter).height.value(), 11 * 25.4);
    const Box live = live_area(size_of(Paper::letter));
    EXPECT_DOUBLE_EQ(live.right().value(), 215.9 - 15.0);
    EXPECT_DOUBLE_EQ(live.bottom().value(), 279.4 - 15.0);
}

}  // namespace
}  // namespace lowledger::canvas
