#include "reports/engraving/engraver.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

#include "model/units/refusal.h"
#include "tests/reports/recorded.h"

namespace lowledger::engraving {
namespace {

using canvas::Box;
using canvas::Page;
using units::Millimetres;

class OnAStaff : public testing::Test {
  protected:
    static const canvas::Faces& faces() {
        static const canvas::Faces one;
        return one;
    }
    Page draw(const Note& note, horns::Clef clef = horns::Clef::bass) const {
        Page page;
        engraver.draw_note(page, {clef, staff.top_left, staff.width}, note, anchor);
        return page;
    }
    /// Middle of the only notehead of the page.
    static Millimetres middle(const Box& box) { return box.top + box.height / 2.0; }
    static std::vector<canvas::Line> lines(const Page& page, bool upright) {
        std::vector<canvas::Line> found;
        for (const canvas::Item& item : page.items) {
            const auto* line = std::get_if<canvas::Line>(&item);
            if (line != nullptr && (line->from.x == line->to.x) == upright) found.push_back(*line);
        }
        return found;
    }
    static units::Spelling named(const char* name) { return units::parse_spelling(name).value(); }

    Engraver engraver{faces(), Millimetres(1.75)};
    Staff staff{horns::Clef::bass, {Millimetres(10.0), Millimetres(50.0)}, Millimetres(100.0)};
    Millimetres anchor{60.0};
};

TEST_F(OnAStaff, FiveLinesASpaceApartAndNeverTooThin) {
    for (const double space : {0.5, 1.0, 1.75, 5.0}) {
        Page page;
        Engraver(faces(), Millimetres(space)).draw_staff(page, staff);
        const auto drawn = lines(page, false);
        ASSERT_EQ(drawn.size(), 5U);
        for (std::size_t i = 0; i < drawn.size(); ++i) {
            EXPECT_NEAR(drawn[i].from.y.value(), 50.0 + space * static_cast<double>(i), 1e-9);
            EXPECT_GE(drawn[i].stroke.width, Millimetres(0.1));
            EXPECT_NEAR(drawn[i].stroke.width.value(), std::max(0.1, 0.13 * space), 1e-9);
        }
    }
}

TEST_F(OnAStaff, HeadsSitOnTheirLine) {
    const auto head_at = [&](const char* name, horns::Clef clef) {
        const Page page = draw({named(name)}, clef);
        return (middle(canvas::ink_box(canvas::shapes_named(page, "noteheadWhole").at(0))) -
                staff.top_left.y) /
               engraver.space();
    };
    EXPECT_NEAR(head_at("F3", horns::Clef::bass), 1.0, 0.02);
    EXPECT_NEAR(head_at("G2", horns::Clef::bass), 4.0, 0.02);
    EXPECT_NEAR(head_at("Bb1", horns::Clef::bass), 6.5, 0.02);
    EXPECT_NEAR(head_at("G4", horns::Clef::treble), 3.0, 0.02);
    EXPECT_NEAR(head_at("C4", horns::Clef::alto), 2.0, 0.02);
    EXPECT_NEAR(head_at("C4", horns::Clef::tenor), 1.0, 0.02);
}

TEST_F(OnAStaff, ClefsStandOnTheirLine) {
    // The C clef is symmetrical about its line; the dots of the F clef and the curl of the G clef surround
    // theirs, so that the line crosses the glyph.
    for (const auto clef : {horns::Clef::alto, horns::Clef::tenor}) {
        Page page;
        const Staff here{clef, staff.top_left, staff.width};
        engraver.draw_clef(page, here, Millimetres(12.0));
        const Box box = canvas::ink_box(page.items.at(0));
        EXPECT_NEAR(middle(box).value(), engraver.y_of(here, line_of_clef(clef)).value(), 0.02);
    }
    Page page;
    engraver.draw_clef(page, staff, Millimetres(12.0));
    const Box bass = canvas::ink_box(page.items.at(0));
    EXPECT_NEAR(bass.left.value(), 12.0, 1e-6);
    EXPECT_NEAR(bass.width.value(), engraver.clef_width(horns::Clef::bass).value(), 1e-2);
    EXPECT_GT(bass.top, engraver.y_of(staff, top_line));
    EXPECT_LT(bass.bottom(), engraver.y_of(staff, bottom_line));
}

TEST_F(OnAStaff, StemsStandAtTheRightSideAndLength) {
    for (const char* name : {"Bb1", "G2", "C3", "D3", "E3", "A3", "F4"}) {
        const Note note{named(name), Duration::quarter};
        const Page page = draw(note);
        const auto stems = lines(page, true);
        ASSERT_EQ(stems.size(), 1U) << name;
        const Box head = canvas::ink_box(canvas::shapes_named(page, "noteheadBlack").at(0));
        const StaffPosition position = engraver.position_of(staff.clef, note);
        const bool up = position < middle_line;
        EXPECT_EQ(stems[0].to.y < stems[0].from.y, up) << name;
        const Millimetres half = stems[0].stroke.width / 2.0;
        const Millimetres edge = up ? head.right() - half : head.left + half;
        EXPECT_NEAR(stems[0].from.x.value(), edge.value(), 0.02) << name;
        const double length = abs(stems[0].to.y - middle(head)) / engraver.space();
        EXPECT_NEAR(length, std::max(3.5, std::abs(position.half_spaces - 4) / 2.0), 0.02) << name;
        EXPECT_GT(head.bottom(), stems[0].from.y) << "the stem starts in the head";
        EXPECT_LT(head.top, stems[0].from.y) << "the stem starts in the head";
    }
    EXPECT_TRUE(lines(draw({named("D3"), Duration::whole}), true).empty());
}

TEST_F(OnAStaff, FlagsHangFromTheTipAtTheStemsRight) {
    for (const char* name : {"G2", "A3"}) {
        const Page page = draw({named(name), Duration::eighth});
        const auto stem = lines(page, true).at(0);
        const bool up = stem.to.y < stem.from.y;
        const Box flag = canvas::ink_box(canvas::shapes_named(page, up ? "flag8thUp" : "flag8thDown").at(0));
        EXPECT_NEAR(flag.left.value(), (stem.from.x - stem.stroke.width / 2.0).value(), 0.02);
        EXPECT_NEAR((up ? flag.top : flag.bottom()).value(), stem.to.y.value(), 0.02);
    }
}

TEST_F(OnAStaff, LedgerLinesOverhangTheHeadEvenly) {
    for (const char* name : {"E1", "C2", "C4", "G4"}) {
        const Page page = draw({named(name)});
        const Box head = canvas::ink_box(canvas::shapes_named(page, "noteheadWhole").at(0));
        const auto ledgers = lines(page, false);
        ASSERT_FALSE(ledgers.empty()) << name;
        for (const canvas::Line& ledger : ledgers) {
            EXPECT_NEAR((head.left - ledger.from.x) / engraver.space(), 0.3, 0.02);
            EXPECT_NEAR((ledger.to.x - head.right()) / engraver.space(), 0.3, 0.02);
            EXPECT_GE(ledger.stroke.width, engraver.staff_line());
        }
    }
}

TEST_F(OnAStaff, AccidentalsAreAQuarterSpaceClear) {
    for (const char* name : {"Bb1", "C#2", "Ebb2", "F##3", "Gb3", "D#4"}) {
        const Page page = draw({named(name)});
        const Box head = canvas::ink_box(canvas::shapes_named(page, "noteheadWhole").at(0));
        Millimetres clear = head.left;
        for (const canvas::Line& ledger : lines(page, false))
            clear = std::min(clear, ledger.from.x);
        const auto accidental =
            std::find_if(page.items.begin(), page.items.end(), [](const canvas::Item& item) {
                const auto* shape = std::get_if<canvas::Shape>(&item);
                return shape != nullptr && shape->name.starts_with("accidental");
            });
        ASSERT_NE(accidental, page.items.end()) << name;
        EXPECT_NEAR((clear - canvas::ink_box(*accidental).right()) / engraver.space(), 0.25, 0.02) << name;
    }
}

TEST_F(OnAStaff, TheExtentIsKnownBeforeDrawing) {
    for (const char* name : {"Bb0", "Bb1", "C#2", "G2", "D3", "Ab3", "F#4"}) {
        for (const Duration duration :
             {Duration::whole, Duration::half, Duration::quarter, Duration::eighth}) {
            const Note note{named(name), duration, AccidentalMark::always};
            const Page page = draw(note);
            const Extent extent = engraver.note_extent(staff.clef, note);
            const Box told{anchor - extent.left, staff.top_left.y + extent.top, extent.left + extent.right,
                           extent.bottom - extent.top};
            Millimetres left = told.right();
            for (const canvas::Item& item : page.items) {
                EXPECT_TRUE(canvas::within(canvas::ink_box(item), told)) << name;
                left = std::min(left, canvas::ink_box(item).left);
            }
            EXPECT_NEAR(left.value(), told.left.value(), 0.02) << "no wider than the ink";
        }
    }
}

TEST_F(OnAStaff, ASpaceThatCannotBeReadIsRefused) {
    EXPECT_THROW(Engraver(faces(), Millimetres(0.2)), units::Refusal);
    EXPECT_THROW(Engraver(faces(), Millimetres(-1.0)), units::Refusal);
    EXPECT_THROW(Engraver(faces(), Millimetres(std::nan(""))), units::Refusal);
}

TEST_F(OnAStaff, TendenciesPointTheWayTheyLean) {
    Page page;
    engraver.draw_tendency(page, units::Cents(14.0), {anchor, Millimetres(20.0)});
    EXPECT_EQ(canvas::shapes_named(page, "arrowBlackUp").size(), 1U);
    EXPECT_EQ(canvas::texts(page).at(0).text, "+14");
    engraver.draw_tendency(page, units::Cents(-8.0), {anchor, Millimetres(30.0)});
    EXPECT_EQ(canvas::shapes_named(page, "arrowBlackDown").size(), 1U);
    EXPECT_EQ(canvas::texts(page).at(1).text, "\u22128");
    engraver.draw_tendency(page, units::Cents(0.2), {anchor, Millimetres(40.0)});
    EXPECT_EQ(canvas::texts(page).at(2).text, "0");
}

// SMuFL 1.4 (W3C Music Notation Community Group), glyph tables 4.3 'Clefs', 4.20 'Noteheads', 4.32 'Flags',
// 4.33 'Standard accidentals (12-EDO)', 4.37 'Rests', 4.39 'Octaves', and the tables of
// augmentation dots, holds and pauses, dynamics; names from memory.
TEST(Symbols, AreNamedAsInSmufl) {
    EXPECT_EQ(smufl_name(Symbol::g_clef), "gClef");
    EXPECT_EQ(smufl_name(Symbol::f_clef), "fClef");
    EXPECT_EQ(smufl_name(Symbol::c_clef), "cClef");
    EXPECT_EQ(smufl_name(Symbol::notehead_whole), "noteheadWhole");
    EXPECT_EQ(smufl_name(Symbol::notehead_half), "noteheadHalf");
    EXPECT_EQ(smufl_name(Symbol::notehead_black), "noteheadBlack");
    EXPECT_EQ(smufl_name(Symbol::double_flat), "accidentalDoubleFlat");
    EXPECT_EQ(smufl_name(Symbol::flat), "accidentalFlat");
    EXPECT_EQ(smufl_name(Symbol::natural), "accidentalNatural");
    EXPECT_EQ(smufl_name(Symbol::sharp), "accidentalSharp");
    EXPECT_EQ(smufl_name(Symbol::double_sharp), "accidentalDoubleSharp");
    EXPECT_EQ(smufl_name(Symbol::flag_8th_up), "flag8thUp");
    EXPECT_EQ(smufl_name(Symbol::flag_8th_down), "flag8thDown");
    EXPECT_EQ(smufl_name(Symbol::rest_whole), "restWhole");
    EXPECT_EQ(smufl_name(Symbol::rest_half), "restHalf");
    EXPECT_EQ(smufl_name(Symbol::rest_quarter), "restQuarter");
    EXPECT_EQ(smufl_name(Symbol::rest_8th), "rest8th");
    EXPECT_EQ(smufl_name(Symbol::ottava_bassa), "ottavaBassaVb");
    EXPECT_EQ(smufl_name(Symbol::augmentation_dot), "augmentationDot");
    EXPECT_EQ(smufl_name(Symbol::fermata_above), "fermataAbove");
    EXPECT_EQ(smufl_name(Symbol::breath_mark), "breathMarkComma");
    EXPECT_EQ(smufl_name(Symbol::dynamic_piano), "dynamicPiano");
    EXPECT_EQ(smufl_name(Symbol::dynamic_mezzo), "dynamicMezzo");
    EXPECT_EQ(smufl_name(Symbol::dynamic_forte), "dynamicForte");
}

}  // namespace
}  // namespace lowledger::engraving
