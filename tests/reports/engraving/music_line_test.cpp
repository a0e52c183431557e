#include "reports/engraving/music_line.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

#include "model/units/refusal.h"
#include "reports/engraving/beaming.h"
#include "reports/engraving/music_text.h"
#include "reports/engraving/note_row.h"
#include "reports/engraving/spacing.h"
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

bool is_named(const canvas::Item& item, std::string_view prefix) {
    const auto* shape = std::get_if<canvas::Shape>(&item);
    return shape != nullptr && shape->name.starts_with(prefix);
}

struct Setting {
    MusicLine line;
    Millimetres width;
    std::vector<EngravedSystem> systems;
};

constexpr double space = 1.5;

/// A line of `seed` on staves between the narrowest and a page's width.
Setting set(const MusicLine& line, unsigned seed) {
    const Engraver engraver(faces(), Millimetres(space));
    const Millimetres narrowest = narrowest_width(engraver, line);
    const Millimetres width = narrowest * (1.0 + (seed % 4) * 0.5) + Millimetres(0.001);
    return {line, width, engrave(engraver, line, width)};
}

/// Half of the seeds write music, half throw notes about.
Setting set(unsigned seed) {
    return set(seed % 2 == 0 ? random_music(seed) : random_line(seed), seed);
}

constexpr unsigned seeds = 400;

/// What may not lie over anything else of its kind: all but staff, ledger and bar lines, stems, beams and
/// curves.
bool stands_alone(const canvas::Item& item) {
    if (std::holds_alternative<canvas::Text>(item)) return true;
    for (const char* name : {"notehead", "accidental", "augmentation", "rest", "flag", "fermata", "breath",
                             "dynamic", "arrow", "ottava", "gClef", "fClef", "cClef"}) {
        if (is_named(item, name)) return true;
    }
    return std::holds_alternative<canvas::Outline>(item);
}

/// Letters of one dynamic lean into each other; the box around a flag's curl reaches its own head.
bool parts_of_one_sign(const canvas::Item& a, const canvas::Item& b) {
    if (is_named(a, "notehead") && is_named(b, "flag")) {
        const Millimetres stem = canvas::ink_box(b).left;
        const Box head = canvas::ink_box(a);
        return std::min(abs(stem - head.left), abs(stem - head.right())) < Millimetres(0.3 * space);
    }
    return is_named(a, "dynamic") && is_named(b, "dynamic");
}

TEST(MusicLine, NoSignLiesOverAnother) {
    for (unsigned seed = 1; seed <= seeds; ++seed) {
        for (const EngravedSystem& system : set(seed).systems) {
            for (std::size_t a = 0; a < system.items.size(); ++a) {
                if (!stands_alone(system.items[a])) continue;
                for (std::size_t b = a + 1; b < system.items.size(); ++b) {
                    if (!stands_alone(system.items[b]) || parts_of_one_sign(system.items[a], system.items[b]))
                        continue;
                    ASSERT_FALSE(
                        canvas::overlap(canvas::ink_box(system.items[a]), canvas::ink_box(system.items[b])))
                        << "seed " << seed << ", items " << a << ", " << b << "\n"
                        << recorded_text(Page{{}, {system.items[a], system.items[b]}});
                }
            }
        }
    }
}

TEST(MusicLine, AccidentalsKeepAQuarterSpaceFromHeadsAndLedgerLines) {
    for (unsigned seed = 1; seed <= seeds; ++seed) {
        for (const EngravedSystem& system : set(seed).systems) {
            for (const canvas::Item& sign : system.items) {
                if (!is_named(sign, "accidental")) continue;
                const Box box = canvas::ink_box(sign);
                for (const canvas::Item& other : system.items) {
                    const auto* line = std::get_if<canvas::Line>(&other);
                    const bool ledger = line != nullptr && line->from.y == line->to.y &&
                                        !line->stroke.dashed &&
                                        abs(line->to.x - line->from.x) < Millimetres(5.0);
                    if (!ledger && !is_named(other, "notehead")) continue;
                    const Box one = canvas::ink_box(other);
                    if (one.top > box.bottom() || one.bottom() < box.top) continue;
                    const Millimetres white = std::max(one.left - box.right(), box.left - one.right());
                    EXPECT_GE(white.value(), 0.25 * space - 1e-6) << seed;
                }
            }
        }
    }
}

TEST(MusicLine, NoLineIsThinnerThanATenthOfAMillimetre) {
    for (unsigned seed = 1; seed <= 60; ++seed) {
        const Engraver engraver(faces(), Millimetres(0.6));
        for (const EngravedSystem& system : engrave(engraver, random_music(seed), Millimetres(150.0))) {
            for (const canvas::Item& item : system.items) {
                if (const auto* line = std::get_if<canvas::Line>(&item)) {
                    EXPECT_GE(line->stroke.width, Millimetres(0.1));
                } else if (const auto* outline = std::get_if<canvas::Outline>(&item)) {
                    EXPECT_GE(outline->stroke.width, Millimetres(0.1));
                }
            }
        }
    }
}

/// Corners of a path in order, curves by 20 points each.
std::vector<canvas::Point> points_of(const canvas::Shape& shape) {
    std::vector<canvas::Point> points;
    for (const canvas::PathStep& step : shape.steps) {
        if (const auto* to = std::get_if<canvas::MoveTo>(&step)) points.push_back(to->to);
        if (const auto* to = std::get_if<canvas::LineTo>(&step)) points.push_back(to->to);
        const auto* curve = std::get_if<canvas::CurveTo>(&step);
        if (curve == nullptr) continue;
        const canvas::Point from = points.back();
        for (int i = 1; i <= 20; ++i) {
            const double t = i / 20.0;
            const double u = 1.0 - t;
            const auto mix = [&](Millimetres a, Millimetres b, Millimetres c, Millimetres d) {
                return a * (u * u * u) + b * (3.0 * u * u * t) + c * (3.0 * u * t * t) + d * (t * t * t);
            };
            points.push_back({mix(from.x, curve->control1.x, curve->control2.x, curve->to.x),
                              mix(from.y, curve->control1.y, curve->control2.y, curve->to.y)});
        }
    }
    return points;
}

TEST(MusicLine, BeamsSlantALittleAndHoldTheirStems) {
    std::size_t beams = 0;
    for (unsigned seed = 1; seed <= seeds; ++seed) {
        for (const EngravedSystem& system : set(seed).systems) {
            for (const canvas::Item& item : system.items) {
                if (!is_named(item, "beam")) continue;
                ++beams;
                const auto corners = points_of(std::get<canvas::Shape>(item));
                const double rise = abs(corners[1].y - corners[0].y).value();
                const double run = (corners[1].x - corners[0].x).value();
                EXPECT_LE(rise, most_beam_slant.value() * space + 1e-6);
                EXPECT_LE(rise / run, 0.251);
                EXPECT_NEAR(abs(corners[3].y - corners[0].y).value(), beam_thickness.value() * space, 1e-6);
                std::size_t stems = 0;
                for (const canvas::Item& other : system.items) {
                    const auto* line = std::get_if<canvas::Line>(&other);
                    if (line == nullptr || line->from.x != line->to.x) continue;
                    const double share = (line->to.x - corners[0].x).value() / run;
                    if (share < 0.0 || share > 1.0) continue;
                    const double edge = corners[0].y.value() + share * (corners[1].y - corners[0].y).value();
                    const double tip = line->to.y.value();
                    const double inner = edge + (corners[3].y - corners[0].y).value();
                    if (tip < std::min(edge, inner) || tip > std::max(edge, inner)) continue;
                    ++stems;
                    EXPECT_GE(abs(line->to.y - line->from.y).value(), 2.4 * space) << seed;
                }
                EXPECT_GE(stems, 2U) << seed;
            }
        }
    }
    EXPECT_GT(beams, 200U);
}

bool lies_in_a_beam(const EngravedSystem& system, const canvas::Point& tip) {
    return std::any_of(system.items.begin(), system.items.end(), [&](const canvas::Item& item) {
        const Box box = canvas::ink_box(item);
        return is_named(item, "beam") && tip.x >= box.left && tip.x <= box.right() && tip.y >= box.top &&
               tip.y <= box.bottom();
    });
}

// A note's items follow each other: ledger lines, accidental, head, stem.
TEST(MusicLine, StemsStandAtTheirSideAndAreAnOctaveLong) {
    for (unsigned seed = 1; seed <= seeds; ++seed) {
        for (const EngravedSystem& system : set(seed).systems) {
            for (std::size_t i = 0; i + 1 < system.items.size(); ++i) {
                if (!is_named(system.items[i], "notehead") || is_named(system.items[i], "noteheadWhole"))
                    continue;
                const Box head = canvas::ink_box(system.items[i]);
                const auto& stem = std::get<canvas::Line>(system.items[i + 1]);
                ASSERT_EQ(stem.from.x, stem.to.x) << seed;
                const bool up = stem.to.y < stem.from.y;
                const Box ink = canvas::ink_box(stem);
                EXPECT_NEAR((up ? ink.right() - head.right() : ink.left - head.left).value(), 0.0, 1e-6)
                    << seed;
                if (lies_in_a_beam(system, stem.to)) continue;
                const double middle = (head.top + head.height / 2.0).value() / space;
                EXPECT_EQ(up, middle > 2.01) << seed;
                EXPECT_NEAR(std::abs(stem.to.y.value() / space - middle),
                            std::max(3.5, std::abs(middle - 2.0)), 0.02)
                    << seed;
            }
        }
    }
}

TEST(MusicLine, LedgerLinesReachOverTheirHeadEvenly) {
    std::size_t ledgers = 0;
    for (unsigned seed = 1; seed <= seeds; ++seed) {
        for (const EngravedSystem& system : set(seed).systems) {
            const canvas::Line* ledger = nullptr;
            for (const canvas::Item& item : system.items) {
                const auto* line = std::get_if<canvas::Line>(&item);
                if (line != nullptr && line->from.y == line->to.y && !line->stroke.dashed &&
                    line->from.x > Millimetres(0.0)) {
                    ledger = line;
                } else if (is_named(item, "notehead") && ledger != nullptr) {
                    const Box head = canvas::ink_box(item);
                    EXPECT_NEAR((head.left - ledger->from.x).value(), 0.3 * space, 1e-6) << seed;
                    EXPECT_NEAR((ledger->to.x - head.right()).value(), 0.3 * space, 1e-6) << seed;
                    ledger = nullptr;
                    ++ledgers;
                }
            }
        }
    }
    EXPECT_GT(ledgers, 500U);
}

TEST(MusicLine, TiesEndBesideHeadsOrAtTheSystemsEnd) {
    std::size_t ties = 0;
    for (unsigned seed = 2; seed <= seeds; seed += 2) {
        for (const EngravedSystem& system : set(seed).systems) {
            for (const canvas::Item& item : system.items) {
                if (!is_named(item, "tie")) continue;
                ++ties;
                const Box tie = canvas::ink_box(item);
                bool left = false;
                bool right = tie.right() > system.staff_width - Millimetres(0.5 * space);
                for (const canvas::Item& other : system.items) {
                    const bool dot = is_named(other, "augmentation");
                    if (!dot && !is_named(other, "notehead")) continue;
                    const Box head = canvas::ink_box(other);
                    const Millimetres height =
                        abs(head.top + head.height / 2.0 - (tie.top + tie.height / 2.0));
                    if (height > Millimetres(1.6 * space)) continue;
                    left = left || abs(tie.left - head.right()) < Millimetres(0.2 * space);
                    right = right || (!dot && abs(head.left - tie.right()) < Millimetres(0.2 * space));
                    // From the system before it comes out of nowhere, close to its note.
                    left = left || (right && tie.width < Millimetres(2.0 * space));
                }
                EXPECT_TRUE(left) << seed;
                EXPECT_TRUE(right) << seed;
                EXPECT_GT(tie.width, Millimetres(0.8 * space)) << seed;
            }
        }
    }
    EXPECT_GT(ties, 100U);
}

TEST(MusicLine, SlursRunClearOfHeadsAndAccidentals) {
    std::size_t slurs = 0;
    for (unsigned seed = 2; seed <= seeds; seed += 2) {
        for (const EngravedSystem& system : set(seed).systems) {
            for (const canvas::Item& item : system.items) {
                if (!is_named(item, "slur")) continue;
                ++slurs;
                for (const canvas::Item& other : system.items) {
                    if (!is_named(other, "notehead") && !is_named(other, "accidental") &&
                        !is_named(other, "rest"))
                        continue;
                    const Box box = canvas::ink_box(other);
                    for (const canvas::Point& p : points_of(std::get<canvas::Shape>(item))) {
                        EXPECT_FALSE(p.x > box.left && p.x < box.right() && p.y > box.top &&
                                     p.y < box.bottom())
                            << seed << "\n"
                            << recorded_text(Page{{}, {item, other}}) << music_text(set(seed).line);
                    }
                }
            }
        }
    }
    EXPECT_GT(slurs, 100U);
}

TEST(MusicLine, SystemsFillTheirWidthAndLoseNothing) {
    for (unsigned seed = 1; seed <= seeds; ++seed) {
        const Setting setting = set(seed);
        std::size_t heads = 0;
        for (const EngravedSystem& system : setting.systems) {
            const bool last = &system == &setting.systems.back();
            if (!last) {
                EXPECT_NEAR(system.staff_width.value(), setting.width.value(), 1e-6) << seed;
            }
            EXPECT_LE(system.staff_width, setting.width + Millimetres(1e-6)) << seed;
            for (const canvas::Item& item : system.items) {
                const Box box = canvas::ink_box(item);
                EXPECT_GE(box.top, system.top - Millimetres(1e-6));
                EXPECT_LE(box.bottom(), system.bottom + Millimetres(1e-6));
                if (!std::holds_alternative<canvas::Text>(item)) {
                    EXPECT_LE(box.right(), system.staff_width + Millimetres(1e-6))
                        << seed << recorded_text(Page{{}, {item}});
                }
                if (is_named(item, "notehead")) ++heads;
            }
        }
        const auto notes = std::count_if(setting.line.events.begin(), setting.line.events.end(),
                                         [](const Event& e) { return std::holds_alternative<LineNote>(e); });
        EXPECT_EQ(heads, static_cast<std::size_t>(notes)) << seed;
    }
}

TEST(MusicLine, BreaksAtBarLinesIfItCan) {
    const Engraver engraver(faces(), Millimetres(space));
    std::string text = "time=4/4";
    for (int bar = 0; bar < 12; ++bar)
        text += " Bb2/4 C3/8 D3 Eb3/2 |";
    const MusicLine line = parse_music(text);
    const auto systems = engrave(engraver, line, Millimetres(180.0));
    EXPECT_GE(systems.size(), 2U);
    for (const EngravedSystem& system : systems) {
        const bool bar_at_end =
            std::any_of(system.items.begin(), system.items.end(), [&](const canvas::Item& item) {
                const auto* upright = std::get_if<canvas::Line>(&item);
                return upright != nullptr && upright->from.x == upright->to.x &&
                       abs(canvas::ink_box(item).right() - system.staff_width) < Millimetres(1e-6);
            });
        EXPECT_TRUE(bar_at_end);
    }
    const MusicLine one_long_bar =
        parse_music("Bb2/4 C3 D3 Eb3 F3 G3 A3 Bb3 A3 G3 F3 Eb3 D3 C3 Bb2 C3 D3 Eb3 F3 G3");
    EXPECT_GE(engrave(engraver, one_long_bar, Millimetres(60.0)).size(), 2U);
}

TEST(MusicLine, LongerNotesGetMoreSpace) {
    const Engraver engraver(faces(), Millimetres(space));
    const MusicLine line = parse_music("D3/1 D3/2 D3/4 D3/8 r/8 |.");
    Page page;
    draw_music(page, engraver, line, {}, Millimetres(60.0));
    std::vector<Millimetres> at;
    for (const canvas::Item& item : page.items) {
        if (is_named(item, "notehead"))
            at.push_back(canvas::ink_box(item).left + canvas::ink_box(item).width / 2.0);
    }
    ASSERT_EQ(at.size(), 4U);
    EXPECT_NEAR((at[1] - at[0]) / (at[2] - at[1]), 1.414, 0.01);
    EXPECT_NEAR((at[2] - at[1]) / (at[3] - at[2]), 1.414, 0.01);
}

TEST(MusicLine, AccidentalsHoldUntilTheBarLine) {
    using enum AccidentalMark;
    const MusicLine line =
        parse_music("clef=bass key=2b Bb2 B2 B2 Bb2 | Bb2 F#2 F#3 F2 r | F#3~ | F#3 F#3 | F3");
    EXPECT_EQ(
        accidentals_of(line),
        (std::vector<AccidentalMark>{hidden, always, hidden, always, hidden, hidden, always, always, always,
                                     hidden, hidden, always, hidden, hidden, always, hidden, hidden}));
}

std::vector<BeamGroup> groups(const char* text) {
    return beam_groups(parse_music(text));
}

TEST(Beams, GroupByBeat) {
    using Groups = std::vector<BeamGroup>;
    EXPECT_EQ(groups("time=4/4 C3/8 D3 E3 F3 G3 F3 E3 D3"), (Groups{{0, 1, 2, 3}, {4, 5, 6, 7}}));
    EXPECT_EQ(groups("time=2/4 C3/8 D3 E3 F3"), (Groups{{0, 1, 2, 3}}));
    EXPECT_EQ(groups("time=3/4 C3/8 D3 E3 F3 G3 F3"), (Groups{{0, 1}, {2, 3}, {4, 5}}));
    EXPECT_EQ(groups("time=6/8 C3/8 D3 E3 F3 G3 F3"), (Groups{{0, 1, 2}, {3, 4, 5}}));
    EXPECT_EQ(groups("time=4/4 C3/4 D3/8 E3 F3/4. G3/8"), (Groups{{1, 2}}));
    EXPECT_EQ(groups("time=4/4 C3/8 D3/4 E3/8 r/8 C3 D3 E3"), (Groups{{5, 6}}));
    EXPECT_EQ(groups("time=4/4 C3/8 D3 | E3/1"), (Groups{{0, 1}}));
}

TEST(Beams, LieFlatOverLevelNotes) {
    const auto beam = [](int a, int b, int c) {
        return beam_over({{StaffSpaces(0.0), {a}}, {StaffSpaces(4.0), {b}}, {StaffSpaces(8.0), {c}}});
    };
    EXPECT_EQ(beam(1, 2, 1).start, beam(1, 2, 1).end);
    EXPECT_TRUE(beam(0, 1, 2).up);
    EXPECT_GT(beam(0, 1, 2).end, beam(0, 1, 2).start);
    EXPECT_FALSE(beam(8, 7, 6).up);
    EXPECT_LT(beam(8, 7, 6).end, beam(8, 7, 6).start);
    // Ledger lines: the beam still comes to the middle line.
    EXPECT_GE(beam(-8, -8, -8).start, StaffSpaces(2.0));
    EXPECT_FALSE(beam(4, 4, 4).up);
}

TEST(MusicLine, TooNarrowAStaffIsRefused) {
    const Engraver engraver(faces(), Millimetres(space));
    Page page;
    EXPECT_THROW(draw_music(page, engraver, exercise(), {}, Millimetres(15.0)), units::Refusal);
    EXPECT_TRUE(page.items.empty());
}

TEST(MusicLine, AnEmptyLineIsAStaff) {
    const Engraver engraver(faces(), Millimetres(space));
    Page page;
    draw_music(page, engraver, parse_music("clef=treble"), {}, Millimetres(80.0));
    EXPECT_EQ(canvas::shapes_named(page, "gClef").size(), 1U);
}

TEST(MusicLine, AgreesWithTheStoredPage) {
    const Engraver engraver(faces(), Millimetres(1.75));
    Page page{{Millimetres(200.0), Millimetres(40.0)}, {}};
    draw_music(page, engraver, exercise(), {Millimetres(10.0), Millimetres(8.0)}, Millimetres(180.0));
    EXPECT_EQ(canvas::difference_from_golden(page, "music-line"), "");
    Page slurred{{Millimetres(200.0), Millimetres(40.0)}, {}};
    draw_music(slurred, engraver, routine_exercises().at(1), {Millimetres(10.0), Millimetres(8.0)},
               Millimetres(180.0));
    EXPECT_EQ(canvas::difference_from_golden(slurred, "music-line-slurred"), "");
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
