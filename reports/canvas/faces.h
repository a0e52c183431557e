#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/units/refusal.h"
#include "reports/canvas/page.h"

namespace lowledger::canvas {

/// A face that the pages need is not on this system; the sentence names the Debian package that brings it.
class MissingFace : public units::Refusal {
    using Refusal::Refusal;
};

/// A font file of the system.
struct FaceFile {
    std::string path;
    /// PostScript name.
    std::string name;
};

/// A piece of a text that one face draws.
struct Run {
    /// Index into Faces::files().
    std::size_t face = 0;
    std::string text;
    units::Millimetres width;
};

/// The type that pages are set in: Noto Sans for text, DejaVu Sans for signs that it lacks (sharps, flats,
/// arrows, boxes), Noto Music for notation, then the system's other fonts for scripts that need no shaping.
/// Found through fontconfig; measured with FreeType's unhinted advances, so that screen and PDF agree. One
/// FreeType library each: use one Faces a thread.
class Faces {
  public:
    /// Throws MissingFace.
    Faces();
    ~Faces();
    Faces(const Faces&) = delete;
    Faces& operator=(const Faces&) = delete;

    /// Advance of one line of text.
    [[nodiscard]] units::Millimetres width(std::string_view text, const TextStyle& style) const;
    /// The text cut into runs by coverage; what no face has is drawn as U+25A1 and listed by `undrawable`.
    [[nodiscard]] std::vector<Run> runs(std::string_view text, const TextStyle& style) const;
    /// The characters of `text`, each once, that no face of this system can draw.
    [[nodiscard]] std::vector<std::string> undrawable(std::string_view text) const;
    /// Glyph outlines of one line of text with its baseline starting at `at`.
    [[nodiscard]] std::vector<PathStep> outlines(std::string_view text, const TextStyle& style,
                                                 Point at) const;

    /// The outline of a music glyph (a code point of Noto Music, or an accidental of DejaVu Sans) in staff
    /// spaces: x right, y up, origin where the font has it.
    struct Glyph {
        struct Step {
            enum class Kind { move, line, curve, close } kind;
            /// Up to three points (controls, end), x right, y up, in font units of 1/1000 em or the face's
            /// own.
            double x[3];
            double y[3];
        };
        std::vector<Step> steps;
        double units_per_em = 1000.0;
        double left = 0, right = 0, bottom = 0, top = 0;
    };
    enum class MusicFace { notation, signs };
    [[nodiscard]] Glyph music_glyph(char32_t code_point, MusicFace face) const;

    [[nodiscard]] const std::vector<FaceFile>& files() const;

  private:
    struct Implementation;
    std::unique_ptr<Implementation> implementation_;
};

}  // namespace lowledger::canvas
