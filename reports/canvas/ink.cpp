#include "reports/canvas/ink.h"

namespace lowledger::canvas {
namespace {

struct Inker {
    const Faces& faces;
    std::vector<Ink>& all;

    void operator()(const Line& line) const {
        all.push_back({{MoveTo{line.from}, LineTo{line.to}}, line.stroke.tone, line.stroke});
    }
    void operator()(const Shape& shape) const { all.push_back({shape.steps, shape.tone, std::nullopt}); }
    void operator()(const Outline& outline) const {
        all.push_back({outline.steps, outline.stroke.tone, outline.stroke});
    }
    void operator()(const Text& text) const {
        auto steps = faces.outlines(text.text, text.style, text.baseline);
        if (!steps.empty()) all.push_back({std::move(steps), text.style.tone, std::nullopt});
    }
    void operator()(const Link&) const {}
};

}  // namespace

std::vector<Ink> inked(const Page& page, const Faces& faces) {
    std::vector<Ink> all;
    all.reserve(page.items.size());
    for (const Item& item : page.items)
        std::visit(Inker{faces, all}, item);
    return all;
}

}  // namespace lowledger::canvas
