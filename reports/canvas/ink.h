#pragma once

#include <optional>
#include <vector>

#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"

namespace lowledger::canvas {

/// A path in page millimetres to fill (nonzero winding) or, with a stroke, to draw along.
struct Ink {
    std::vector<PathStep> steps;
    Tone tone = Tone::ink;
    std::optional<Stroke> stroke;
    bool operator==(const Ink&) const = default;
};

/// Everything that the page shows as paths, in drawing order, text as its glyphs' outlines: what a screen or
/// printer replays to show exactly the page. Links show nothing and are left out. Make it once a page and
/// keep it; only its scale changes with the zoom.
std::vector<Ink> inked(const Page& page, const Faces& faces);

}  // namespace lowledger::canvas
