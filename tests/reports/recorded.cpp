#include "tests/reports/recorded.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace lowledger::canvas {
namespace {

using units::Millimetres;

constexpr Millimetres hair{0.01};

Box between(Point a, Point b) {
    return {std::min(a.x, b.x), std::min(a.y, b.y), abs(a.x - b.x), abs(a.y - b.y)};
}

struct Inker {
    Box operator()(const Line& line) const {
        Box box = between(line.from, line.to);
        const Millimetres half = line.stroke.width / 2.0;
        // Ends are cut square, so a stroke widens across its direction alone.
        if (line.from.y == line.to.y) return {box.left, box.top - half, box.width, line.stroke.width};
        if (line.from.x == line.to.x) return {box.left - half, box.top, line.stroke.width, box.height};
        return {box.left - half, box.top - half, box.width + line.stroke.width,
                box.height + line.stroke.width};
    }
    Box operator()(const Shape& shape) const { return extent(shape.steps); }
    Box operator()(const Outline& outline) const {
        const Box box = extent(outline.steps);
        const Millimetres half = outline.stroke.width / 2.0;
        return {box.left - half, box.top - half, box.width + half * 2.0, box.height + half * 2.0};
    }
    Box operator()(const Text& text) const {
        const Millimetres height = units::in_millimetres(text.style.size) * 0.72;
        return {text.baseline.x, text.baseline.y - height, text.width, height};
    }
    Box operator()(const Link& link) const { return link.box; }
};

std::vector<std::string> lines_of(std::istream& in) {
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);)
        lines.push_back(line);
    return lines;
}

}  // namespace

Box ink_box(const Item& item) {
    return std::visit(Inker{}, item);
}

bool overlap(const Box& a, const Box& b) {
    return a.left + hair < b.right() && b.left + hair < a.right() && a.top + hair < b.bottom() &&
           b.top + hair < a.bottom();
}

bool within(const Box& inner, const Box& outer) {
    return inner.left >= outer.left - hair && inner.right() <= outer.right() + hair &&
           inner.top >= outer.top - hair && inner.bottom() <= outer.bottom() + hair;
}

std::vector<Shape> shapes_named(const Page& page, std::string_view name) {
    std::vector<Shape> found;
    for (const Item& item : page.items) {
        if (const auto* shape = std::get_if<Shape>(&item); shape != nullptr && shape->name == name) {
            found.push_back(*shape);
        }
    }
    return found;
}

std::vector<Text> texts(const Page& page) {
    std::vector<Text> found;
    for (const Item& item : page.items) {
        if (const auto* text = std::get_if<Text>(&item)) found.push_back(*text);
    }
    return found;
}

std::string difference_from_golden(const Page& page, std::string_view name) {
    const auto path = std::filesystem::path(LOWLEDGER_SOURCE) / "tests/golden" / (std::string(name) + ".txt");
    const std::string text = recorded_text(page);
    if (std::getenv("LOWLEDGER_WRITE_GOLDEN") != nullptr) {
        std::filesystem::create_directories(path.parent_path());
        std::ofstream(path) << text;
        return {};
    }
    std::ifstream file(path);
    if (!file) return path.string() + " is not there.";
    std::istringstream recorded(text);
    const std::vector<std::string> expected = lines_of(file);
    const std::vector<std::string> actual = lines_of(recorded);
    for (std::size_t i = 0; i < std::max(expected.size(), actual.size()); ++i) {
        const std::string want = i < expected.size() ? expected[i] : "(end)";
        const std::string have = i < actual.size() ? actual[i] : "(end)";
        if (want != have) {
            std::ostringstream difference;
            difference << name << " line " << i + 1 << "\n  stored: " << want << "\n  now:    " << have;
            return difference.str();
        }
    }
    return {};
}

}  // namespace lowledger::canvas
