#pragma once

#include <filesystem>
#include <fontconfig/fontconfig.h>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"

namespace lowledger::canvas {

/// The fonts that fontconfig knows, of the kind a page can use: upright TrueType files of one fixed face.
class FontSearch {
  public:
    /// The system's fonts; a list of its own, since the library never frees the one it shares.
    FontSearch();
    /// The fonts of one fontconfig file. Throws Refusal if it does not load.
    explicit FontSearch(const std::filesystem::path& configuration);

    /// Exactly this family and weight; nothing near it.
    [[nodiscard]] std::optional<FaceFile> find(const std::string& family, Weight weight) const;
    /// All that have the character, the nearest to the system's sans-serif first.
    [[nodiscard]] std::vector<FaceFile> with(char32_t code_point) const;

  private:
    std::shared_ptr<FcConfig> configuration_;
    /// Made at the first need: it looks at every font.
    mutable std::shared_ptr<FcFontSet> by_nearness_;
};

}  // namespace lowledger::canvas
