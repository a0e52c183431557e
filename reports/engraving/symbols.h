#pragma once

#include <map>
#include <string_view>
#include <vector>

#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/engraving/staff.h"

namespace lowledger::engraving {

/// The signs of notation that we draw as shapes.
enum class Symbol {
    g_clef,
    f_clef,
    c_clef,
    notehead_whole,
    notehead_half,
    notehead_black,
    double_flat,
    flat,
    natural,
    sharp,
    double_sharp,
    flag_8th_up,
    flag_8th_down,
    rest_whole,
    rest_half,
    rest_quarter,
    rest_8th,
    ottava_bassa,
    augmentation_dot,
    fermata_above,
    breath_mark,
    dynamic_piano,
    dynamic_mezzo,
    dynamic_forte,
};

/// The symbol's glyph name in the Standard Music Font Layout (SMuFL 1.4, tables of glyphs): "gClef".
std::string_view smufl_name(Symbol symbol);

/// Ink of something drawn about an origin: right and up positive.
struct InkBox {
    StaffSpaces left;
    StaffSpaces right;
    StaffSpaces bottom;
    StaffSpaces top;
    [[nodiscard]] constexpr StaffSpaces width() const { return right - left; }
};

/// The outlines of all symbols in staff spaces, y up, with SMuFL's origins: clefs on the line that they name,
/// accidentals and rests at the height of their note or of the staff line they belong to, flags at the stem's
/// tip; x from the left edge of the ink.
class SymbolSet {
  public:
    /// Throws canvas::MissingFace.
    explicit SymbolSet(const canvas::Faces& faces);

    [[nodiscard]] const InkBox& ink(Symbol symbol) const;
    /// The shape with its origin at `at`, on a page where a staff space is `space`.
    [[nodiscard]] canvas::Shape shape(Symbol symbol, canvas::Point at, units::Millimetres space,
                                      canvas::Tone tone = canvas::Tone::ink) const;

    /// A step in staff spaces; `kind` says how many of the points it uses.
    struct Drawing {
        std::vector<canvas::Faces::Glyph::Step> steps;
        InkBox ink;
    };

  private:
    std::map<Symbol, Drawing> drawings_;
};

}  // namespace lowledger::engraving
