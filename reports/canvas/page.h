#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "model/units/quantity.h"

namespace lowledger::canvas {

/// On a page: mm from its left and top edges, y down.
struct Point {
    units::Millimetres x;
    units::Millimetres y;
    bool operator==(const Point&) const = default;
};

struct Size {
    units::Millimetres width;
    units::Millimetres height;
    bool operator==(const Size&) const = default;
};

struct Box {
    units::Millimetres left;
    units::Millimetres top;
    units::Millimetres width;
    units::Millimetres height;
    [[nodiscard]] constexpr units::Millimetres right() const { return left + width; }
    [[nodiscard]] constexpr units::Millimetres bottom() const { return top + height; }
    bool operator==(const Box&) const = default;
};

/// What a mark is for; each painter has its own colours for these (paper: black and greys).
enum class Tone {
    /// Text, rules, notes.
    ink,
    /// Secondary text and hairlines.
    faint,
    /// A tint behind other things, such as the tolerance band.
    pale,
    /// What is about to be done: where a slide should stand.
    accent,
    /// The page itself, to knock out what lies under.
    paper,
};

/// A line's look: butt ends, round joins.
struct Stroke {
    units::Millimetres width{0.2};
    Tone tone = Tone::ink;
    bool dashed = false;
    bool operator==(const Stroke&) const = default;
};

/// The pattern of a dashed stroke, from its start.
constexpr units::Points dash{3.0};
constexpr units::Points dash_gap{2.0};

struct Line {
    Point from;
    Point to;
    Stroke stroke;
    bool operator==(const Line&) const = default;
};

/// One step of a path, in page coordinates; `curve` is a cubic with two controls.
struct MoveTo {
    Point to;
    bool operator==(const MoveTo&) const = default;
};
struct LineTo {
    Point to;
    bool operator==(const LineTo&) const = default;
};
struct CurveTo {
    Point control1;
    Point control2;
    Point to;
    bool operator==(const CurveTo&) const = default;
};
struct Close {
    bool operator==(const Close&) const = default;
};
using PathStep = std::variant<MoveTo, LineTo, CurveTo, Close>;

/// A filled shape (nonzero winding) with no outline. `name` says what it is in recorded text:
/// "notehead.whole".
struct Shape {
    std::vector<PathStep> steps;
    Tone tone = Tone::ink;
    std::string name;
    bool operator==(const Shape&) const = default;
};

/// An outline.
struct Outline {
    std::vector<PathStep> steps;
    Stroke stroke;
    bool operator==(const Outline&) const = default;
};

enum class Weight { regular, bold };

struct TextStyle {
    units::Points size{10.0};
    Weight weight = Weight::regular;
    Tone tone = Tone::ink;
    bool operator==(const TextStyle&) const = default;
};

/// One line of text from `baseline` to the right; NFC UTF-8. `width` is its measured advance.
struct Text {
    Point baseline;
    std::string text;
    TextStyle style;
    units::Millimetres width;
    bool operator==(const Text&) const = default;
};

/// A place that opens a web or mail address.
struct Link {
    Box box;
    std::string address;
    bool operator==(const Link&) const = default;
};

using Item = std::variant<Line, Shape, Outline, Text, Link>;

struct Page {
    Size size;
    std::vector<Item> items;
    bool operator==(const Page&) const = default;
};

struct Bookmark {
    std::string title;
    /// Index into the pages.
    std::size_t page = 0;
    bool operator==(const Bookmark&) const = default;
};

/// What is printed, saved or previewed: pages laid out once. Painters only replay it.
struct Document {
    std::string title;
    std::string author;
    /// BCP 47, "en".
    std::string language = "en";
    std::vector<Page> pages;
    std::vector<Bookmark> bookmarks;
    bool operator==(const Document&) const = default;
};

/// The box around every point of a path, curves' controls included; empty for an empty path.
Box extent(const std::vector<PathStep>& steps);

/// The page as lines of text, mm to 0.01, for golden tests: its size, then one item a line in drawing order.
/// A shape with a name is given by that, its extent and the number of its steps; any other path in full.
std::string recorded_text(const Page& page);

}  // namespace lowledger::canvas
