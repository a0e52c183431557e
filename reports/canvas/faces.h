#pragma once

#include <filesystem>
#include <memory>
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
/// Found through fontconfig; measured with FreeType's unhinted advances in whole thousandths of an em, as PDF
/// states them, so that screen and PDF agree. One FreeType library each: use one Faces a thread.
///
/// Every text is taken as `printable` (unicode.h) makes it.
class Faces {
  public:
    /// Throws MissingFace.
    Faces();
    /// From the fonts of one fontconfig file instead of the system's. Throws MissingFace, or Refusal if the
    /// file does not load.
    explicit Faces(const std::filesystem::path& fontconfig_file);
    ~Faces();
    Faces(const Faces&) = delete;
    Faces& operator=(const Faces&) = delete;

    /// Advance of one line of text.
    [[nodiscard]] units::Millimetres width(std::string_view text, const TextStyle& style) const;
    /// The text cut into runs by coverage; what no face has is drawn as U+25A1 and listed by `undrawable`.
    [[nodiscard]] std::vector<Run> runs(std::string_view text, const TextStyle& style) const;
    /// The characters of `text`, each once, that no face of this system can draw: no font has them, their
    /// script needs shaping, or they lie above U+FFFF, which the PDF library cannot write.
    [[nodiscard]] std::vector<std::string> undrawable(std::string_view text) const;
    /// Glyph outlines of one line of text with its baseline starting at `at`.
    [[nodiscard]] std::vector<PathStep> outlines(std::string_view text, const TextStyle& style,
                                                 Point at) const;

    /// A glyph's outline as the font has it: x right, y up, font units, origin on the baseline.
    struct Glyph {
        struct Step {
            enum class Kind { move, line, curve, close } kind;
            /// One point (move, line), three (curve: two controls and the end) or none (close).
            double x[3];
            double y[3];
        };
        std::vector<Step> steps;
        double units_per_em = 1000.0;
        /// The ink's exact extent; all 0 for a blank.
        double left = 0, right = 0, bottom = 0, top = 0;
    };
    enum class MusicFace {
        /// Noto Music: 1000 units to the em, 4 staff spaces.
        notation,
        /// DejaVu Sans, whose accidentals look better.
        signs
    };
    /// The outline of a music glyph, kept as long as this Faces. Throws Refusal if the face lacks it.
    [[nodiscard]] const Glyph& music_glyph(char32_t code_point, MusicFace face) const;

    /// The faces that text is set in; the system's further fonts are added as texts first need them.
    [[nodiscard]] const std::vector<FaceFile>& files() const;

  private:
    struct Implementation;
    std::unique_ptr<Implementation> implementation_;
};

}  // namespace lowledger::canvas
