#pragma once

#include <ft2build.h>
#include <memory>
#include <optional>
#include <string>
#include <unordered_map>

#include "reports/canvas/faces.h"

#include FT_FREETYPE_H

namespace lowledger::canvas {

using FreeTypeLibrary = std::shared_ptr<FT_LibraryRec_>;
FreeTypeLibrary open_freetype();

/// One font file, opened: which characters it has, how far each advances, and its outline.
class Typeface {
  public:
    enum class Characters {
        /// The 16-bit table that PDF's text goes through, so that both agree on what the font has.
        basic_plane,
        /// Every plane, for outlines only.
        all
    };

    /// Empty if the file does not open as a TrueType font with such a table that may be embedded.
    static std::optional<Typeface> open(FreeTypeLibrary library, const FaceFile& file, Characters characters);

    [[nodiscard]] bool has(char32_t code_point) const;
    /// In whole thousandths of an em, rounded down as PDF's table of widths has it.
    [[nodiscard]] int advance(char32_t code_point) const;
    /// Kept, so that each is read once.
    [[nodiscard]] const Faces::Glyph& glyph(char32_t code_point) const;
    [[nodiscard]] const FaceFile& file() const { return file_; }

  private:
    using Handle = std::unique_ptr<FT_FaceRec_, FT_Error (*)(FT_Face)>;
    Typeface(FreeTypeLibrary library, Handle face, const FaceFile& file);

    FreeTypeLibrary library_;
    Handle face_;
    FaceFile file_;
    mutable std::unordered_map<char32_t, int> advances_;
    mutable std::unordered_map<char32_t, Faces::Glyph> glyphs_;
};

}  // namespace lowledger::canvas
