#include "reports/engraving/music_line.h"

#include <gtest/gtest.h>

#include "model/units/refusal.h"
#include "reports/engraving/note_row.h"
#include "tests/reports/engraving/sample_music.h"
#include "tests/reports/recorded.h"

namespace lowledger::engraving {
namespace {

using canvas::Box;
using canvas::Page;
using units::Millimetres;

const canvas::Faces& faces() {
    static const canvas::Faces one;
    return one;
}

LineNote note(const char* name, Duration duration = Duration::quarter) {
    return {units::parse_spelling(name).value(), duration, ""};
}

bool is_staff_line(const canvas::Item& item, Millimetres staff_width) {
    const auto* line = std::get_if<canvas::Line>(&item);
    return line != nullptr && line->to.x - line->from.x > staff_width * 0.99;
}

bool is_named(const canvas::Item& item, std::string_view prefix) {
    const auto* shape = std::get_if<canvas::Shape>(&item);
    return shape != nullptr && shape->name.starts_with(prefix);
}

bool ends_with_part_of_note(const canvas::Item& item) {
    const auto* line = std::get_if<canvas::Line>(&item);
    const bool upright = line != nullptr && line->from.x == line->to.x;
    return upright || is_named(item, "flag") || std::holds_alternative<canvas::Text>(item);
}

/// The ink of each event, from the recorded page: a head takes the ledger lines and the accidental before it
/// and the stem, flag and figure after it; a rest and the lines of a bar line stand alone.
std::vector<std::vector<Box>> ink_of_events(const Page& page, Millimetres staff_width) {
    std::vector<std::vector<Box>> events;
    bool has_head = true;
    for (const canvas::Item& item : page.items) {
        if (is_staff_line(item, staff_width) || is_named(item, "fClef") || is_named(item, "gClef") ||
            is_named(item, "cClef")) {
            continue;
        }
        const bool head = is_named(item, "notehead");
        const bool goes_on = has_head ? ends_with_part_of_note(item) : true;
        if (!goes_on || events.empty() || is_named(item, "rest")) {
            events.emplace_back();
            has_head = false;
        }
        events.back().push_back(canvas::ink_box(item));
        if (head || is_named(item, "rest")) has_head = true;
    }
    return events;
}

TEST(MusicLine, NoInkTouchesTheInkOfAnotherNote) {
    for (unsigned seed = 1; seed <= 300; ++seed) {
        MusicLine line = random_line(seed);
        line.key.fifths = 0;
        // Bar lines overlap nothing by the test of anchors below; here they would join the event before.
        std::erase_if(line.events, [](const Event& e) { return std::holds_alternative<BarLine>(e); });
        const Engraver engraver(faces(), Millimetres(1.5));
        const Millimetres width =
            narrowest_line(engraver, line) * (1.0 + (seed % 3) * 0.2) + Millimetres(0.001);
        Page page;
        draw_music_line(page, engraver, line, {Millimetres(10.0), Millimetres(60.0)}, width);
        const auto events = ink_of_events(page, width);
        ASSERT_EQ(events.size(), line.events.size()) << seed;
        for (std::size_t a = 0; a < events.size(); ++a) {
            for (std::size_t b = a + 1; b < events.size(); ++b) {
                for (const Box& one : events[a]) {
                    for (const Box& other : events[b])
                        ASSERT_FALSE(canvas::overlap(one, other))
                            << "seed " << seed << ", events " << a << ", " << b;
                }
            }
        }
    }
}

TEST(MusicLine, BarLinesStandClearAndTheLastEndsTheStaff) {
    for (unsigned seed = 1; seed <= 300; ++seed) {
        const MusicLine line = random_line(seed);
        const Engraver engraver(faces(), Millimetres(1.5));
        const Millimetres width = narrowest_line(engraver, line) * 1.1;
        const Staff staff{line.clef, {Millimetres(10.0), Millimetres(60.0)}, width};
        const auto anchors = anchors_of(engraver, line, staff);
        const auto marks = accidentals_of(line);
        Millimetres last_right = staff.top_left.x;
        for (std::size_t i = 0; i < line.events.size(); ++i) {
            Extent extent;
            if (const auto* n = std::get_if<LineNote>(&line.events[i])) {
                extent = engraver.note_extent(line.clef, {n->spelling, n->duration, marks[i]});
            } else if (const auto* rest = std::get_if<Rest>(&line.events[i])) {
                extent.left = extent.right = engraver.rest_width(rest->duration) / 2.0;
            } else {
                extent.left = extent.right = engraver.bar_line_width(std::get<BarLine>(line.events[i])) / 2.0;
            }
            EXPECT_GT(anchors[i] - extent.left, last_right) << "seed " << seed << ", event " << i;
            last_right = anchors[i] + extent.right;
        }
        EXPECT_NEAR(last_right.value(), (staff.top_left.x + width).value(), 1e-6) << seed;
    }
}

TEST(MusicLine, LongerNotesGetMoreSpace) {
    const Engraver engraver(faces(), Millimetres(1.5));
    const MusicLine line{horns::Clef::bass,
                         {},
                         {note("D3", Duration::whole), note("D3", Duration::half), note("D3"),
                          note("D3", Duration::eighth), note("D3", Duration::eighth), BarLine::final_line}};
    const auto at = anchors_of(engraver, line, {line.clef, {}, Millimetres(180.0)});
    EXPECT_NEAR((at[1] - at[0]) / (at[2] - at[1]), 1.415, 0.01);
    EXPECT_NEAR((at[2] - at[1]) / (at[3] - at[2]), 1.413, 0.01);
    EXPECT_NEAR((at[3] - at[2]) / (at[4] - at[3]), 1.415, 0.01);
}

TEST(MusicLine, AccidentalsHoldUntilTheBarLine) {
    using enum AccidentalMark;
    const MusicLine line{horns::Clef::bass,
                         {-2},
                         {note("Bb2"), note("B2"), note("B2"), note("Bb2"), BarLine::single, note("Bb2"),
                          note("F#2"), note("F#3"), note("F2"), Rest{}}};
    EXPECT_EQ(accidentals_of(line), (std::vector<AccidentalMark>{hidden, always, hidden, always, hidden,
                                                                 hidden, always, always, always, hidden}));
}

TEST(MusicLine, TooNarrowAStaffIsRefused) {
    const Engraver engraver(faces(), Millimetres(1.5));
    Page page;
    EXPECT_THROW(draw_music_line(page, engraver, exercise(), {}, Millimetres(40.0)), units::Refusal);
    EXPECT_TRUE(page.items.empty());
}

TEST(MusicLine, AgreesWithTheStoredPage) {
    const Engraver engraver(faces(), Millimetres(1.75));
    Page page{{Millimetres(200.0), Millimetres(40.0)}, {}};
    draw_music_line(page, engraver, exercise(), {Millimetres(10.0), Millimetres(12.0)}, Millimetres(180.0));
    EXPECT_EQ(canvas::difference_from_golden(page, "music-line"), "");
}

TEST(NoteRow, NothingTouchesInTheNarrowestColumns) {
    const Engraver engraver(faces(), Millimetres(1.5));
    const NoteRow row = full_row();
    const Millimetres column = narrowest_column(engraver, row);
    const Staff staff{row.clef, {Millimetres(10.0), Millimetres(30.0)}, Millimetres(200.0)};
    Page page;
    draw_note_row(page, engraver, row, staff, staff.top_left.x + first_column(engraver, row), column);
    const NoteRowHeights heights = row_heights(engraver, row);
    const Box told{staff.top_left.x, staff.top_left.y + heights.top, staff.width, heights.height()};
    std::vector<Box> heads_and_texts;
    for (const canvas::Item& item : page.items) {
        EXPECT_TRUE(canvas::within(canvas::ink_box(item), told));
        if (is_named(item, "notehead") || is_named(item, "accidental") || is_named(item, "fClef") ||
            is_named(item, "ottava") || std::holds_alternative<canvas::Text>(item)) {
            heads_and_texts.push_back(canvas::ink_box(item));
        }
    }
    for (std::size_t a = 0; a < heads_and_texts.size(); ++a) {
        for (std::size_t b = a + 1; b < heads_and_texts.size(); ++b)
            EXPECT_FALSE(canvas::overlap(heads_and_texts[a], heads_and_texts[b])) << a << ", " << b;
    }
    EXPECT_EQ(canvas::shapes_named(page, "noteheadWhole").size(), row.notes.size());
}

TEST(NoteRow, PedalsStandAnOctaveUpUnderOneSign) {
    const Engraver engraver(faces(), Millimetres(1.5));
    NoteRow row;
    for (const char* name : {"Bb0", "C1", "Bb1"})
        row.notes.push_back({units::parse_spelling(name).value(), "0", false, std::nullopt});
    Page page;
    draw_note_row(page, engraver, row, {row.clef, {}, Millimetres(80.0)}, Millimetres(20.0),
                  Millimetres(15.0));
    ASSERT_EQ(canvas::shapes_named(page, "ottavaBassaVb").size(), 1U);
    const auto heads = canvas::shapes_named(page, "noteheadWhole");
    EXPECT_NEAR(canvas::ink_box(heads[0]).top.value(), canvas::ink_box(heads[2]).top.value(), 1e-6);
}

TEST(NoteRow, AgreesWithTheStoredPage) {
    const Engraver engraver(faces(), Millimetres(1.75));
    const NoteRow row = full_row();
    Page page{{Millimetres(200.0), Millimetres(50.0)}, {}};
    draw_note_row(page, engraver, row, {row.clef, {Millimetres(10.0), Millimetres(12.0)}, Millimetres(180.0)},
                  Millimetres(10.0) + first_column(engraver, row), narrowest_column(engraver, row));
    EXPECT_EQ(canvas::difference_from_golden(page, "note-row"), "");
}

}  // namespace
}  // namespace lowledger::engraving
