#pragma once

#include <string>
#include <vector>

#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"

namespace lowledger::canvas {

/// A text of a document with characters that no face of this system can draw: a box stands for each.
struct UndrawableText {
    std::string text;
    /// Each once.
    std::vector<std::string> characters;
    bool operator==(const UndrawableText&) const = default;
};

/// Every such text of the document's pages, in drawing order, each once.
std::vector<UndrawableText> undrawable(const Document& document, const Faces& faces);

}  // namespace lowledger::canvas
