#pragma once

#include <memory>
#include <optional>
#include <string_view>

#include "model/units/pitch.h"
#include "model/units/quantity.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/engraving/music.h"
#include "reports/engraving/staff.h"
#include "reports/engraving/symbols.h"

namespace lowledger::engraving {

/// Which accidental stands before a note.
enum class AccidentalMark {
    /// A flat or a sharp where the spelling has one.
    as_spelled,
    /// None: the key or an earlier note has said it.
    hidden,
    /// A natural too.
    always,
};

/// Another stem than the usual one, under a beam.
struct Stem {
    bool up = true;
    /// From the head's middle to the tip.
    StaffSpaces length;
    bool flag = true;
    bool operator==(const Stem&) const = default;
};

struct Note {
    units::Spelling spelling;
    Duration duration = Duration::whole;
    AccidentalMark accidental = AccidentalMark::as_spelled;
    /// Written an octave above `spelling`, for a line that is read 8va bassa.
    bool octave_up = false;
    /// Augmentation dots, 0 or 1.
    int dots = 0;
    std::optional<Stem> stem{};
    bool operator==(const Note&) const = default;
};

/// Ink beside and around an anchor: to its left and right, and above and below the staff's top line (above is
/// negative, as y goes down).
struct Extent {
    units::Millimetres left;
    units::Millimetres right;
    units::Millimetres top;
    units::Millimetres bottom;
};

/// Puts notation on a page. All lengths follow the staff space, after common practice of engraving: staff
/// lines 0.13 of a space (0.1 mm at least), stems 0.12, ledger lines 0.16 and 0.3 beyond the head,
/// accidentals a quarter space clear of head and ledger line. A note's anchor is the middle of its head.
/// Holds on to `faces`; copies share the outlines.
class Engraver {
  public:
    /// Throws canvas::MissingFace, and Refusal for a space that is not between 0.5 and 20 mm.
    Engraver(const canvas::Faces& faces, units::Millimetres space);

    [[nodiscard]] const canvas::Faces& faces() const { return *faces_; }
    [[nodiscard]] const SymbolSet& symbols() const { return *symbols_; }
    [[nodiscard]] units::Millimetres space() const { return space_; }
    [[nodiscard]] units::Millimetres length(StaffSpaces spaces) const { return space_ * spaces.value(); }
    [[nodiscard]] units::Millimetres staff_line() const;
    [[nodiscard]] units::Millimetres staff_height() const { return space_ * 4.0; }
    [[nodiscard]] units::Millimetres y_of(const Staff& staff, StaffPosition position) const;

    /// Five lines.
    void draw_staff(canvas::Page& page, const Staff& staff) const;

    [[nodiscard]] units::Millimetres clef_width(horns::Clef clef) const;
    void draw_clef(canvas::Page& page, const Staff& staff, units::Millimetres left) const;
    [[nodiscard]] units::Millimetres key_width(KeySignature key) const;
    void draw_key(canvas::Page& page, const Staff& staff, KeySignature key, units::Millimetres left) const;

    [[nodiscard]] StaffPosition position_of(horns::Clef clef, const Note& note) const;
    /// Ink of the note with accidental, ledger lines, stem and flag; known before anything is drawn.
    [[nodiscard]] Extent note_extent(horns::Clef clef, const Note& note) const;
    void draw_note(canvas::Page& page, const Staff& staff, const Note& note, units::Millimetres anchor) const;

    /// The stem that is drawn: the note's own, or by its position. A whole note has none, but a side to it.
    [[nodiscard]] Stem stem_of(horns::Clef clef, const Note& note) const;
    /// From a head's middle to the stem's, right positive.
    [[nodiscard]] units::Millimetres stem_offset(Duration duration, bool up) const;
    [[nodiscard]] units::Millimetres stem_width_on_page() const;
    [[nodiscard]] units::Millimetres head_width(Duration duration) const;
    /// From a dotted note's head's middle to its dot's right edge.
    [[nodiscard]] units::Millimetres dot_right(horns::Clef clef, const Note& note) const;

    [[nodiscard]] units::Millimetres rest_width(Duration duration, int dots = 0) const;
    void draw_rest(canvas::Page& page, const Staff& staff, Duration duration, units::Millimetres left,
                   int dots = 0) const;

    /// Beats over unit, each two spaces high.
    [[nodiscard]] units::Millimetres time_width(const TimeSignature& time) const;
    void draw_time(canvas::Page& page, const Staff& staff, const TimeSignature& time,
                   units::Millimetres left) const;

    [[nodiscard]] units::Millimetres bar_line_width(BarLine kind) const;
    void draw_bar_line(canvas::Page& page, const Staff& staff, BarLine kind, units::Millimetres left) const;

    /// The sign 8vb at `from` and a dashed line with a hook up at `to`; `top` is the sign's top.
    void draw_ottava_bassa(canvas::Page& page, units::Millimetres from, units::Millimetres to,
                           units::Millimetres top) const;
    [[nodiscard]] units::Millimetres ottava_bassa_height() const;
    [[nodiscard]] units::Millimetres ottava_bassa_width() const;

    /// "mf", from `left` on the letters' baseline.
    [[nodiscard]] units::Millimetres dynamic_width(Dynamic dynamic) const;
    /// Above its baseline and below it.
    [[nodiscard]] units::Millimetres dynamic_ascent() const;
    [[nodiscard]] units::Millimetres dynamic_descent() const;
    void draw_dynamic(canvas::Page& page, Dynamic dynamic, canvas::Point baseline_left) const;

    /// A sign centred at `bottom_centre.x`, standing on `bottom_centre.y`.
    void draw_standing(canvas::Page& page, Symbol symbol, canvas::Point bottom_centre) const;

    /// Fingerings, positions and the numbers of tendencies are set in this.
    [[nodiscard]] canvas::TextStyle figure_style() const;
    /// A fingering or position, centred at `at.x` on the baseline `at.y`.
    void draw_figure(canvas::Page& page, std::string_view text, canvas::Point at,
                     canvas::Weight weight = canvas::Weight::regular) const;

    /// An arrow up for sharp, down for flat, with the signed cents; at 0 the number alone.
    [[nodiscard]] canvas::Size tendency_size(units::Cents lean) const;
    void draw_tendency(canvas::Page& page, units::Cents lean, canvas::Point top_centre) const;

    /// A small fork: this fingering is not the usual one.
    [[nodiscard]] canvas::Size fork_size() const;
    void draw_fork(canvas::Page& page, canvas::Point top_centre) const;

  private:
    void draw_symbol(canvas::Page& page, Symbol symbol, canvas::Point at) const;
    [[nodiscard]] units::Millimetres repeat_dot_width() const;
    void draw_stem(canvas::Page& page, const Staff& staff, const Note& note, units::Millimetres anchor) const;
    /// From a head's middle to its dot's left edge.
    [[nodiscard]] units::Millimetres dot_offset(horns::Clef clef, const Note& note) const;

    const canvas::Faces* faces_;
    std::shared_ptr<const SymbolSet> symbols_;
    units::Millimetres space_;
};

}  // namespace lowledger::engraving
