#include "reports/canvas/pdf.h"

#include <array>
#include <cmath>

#include "reports/canvas/haru.h"
#include "reports/canvas/unicode.h"
#include "reports/canvas/whole_file.h"

namespace lowledger::canvas {
namespace {

using units::Millimetres;

/// Black and greys that a copier keeps apart.
float grey(Tone tone) {
    switch (tone) {
        case Tone::ink:
        case Tone::accent:
            return 0.0F;
        case Tone::faint:
            return 0.38F;
        case Tone::pale:
            return 0.88F;
        case Tone::paper:
            return 1.0F;
    }
    return 0.0F;
}

/// The library writes anything, even what is no number; a page is at most 14400 points wide (ISO
/// 32000-1:2008, annex C.2).
float in_pdf(units::Points points) {
    constexpr double furthest = 14400.0;
    if (!(std::abs(points.value()) <= furthest))
        throw units::Refusal(
            "The PDF was not made: something on a page has the place or size " +
            std::to_string(points.value()) +
            " pt, which is no place on a page. This is a mistake in the program; please report it.");
    return static_cast<float>(points.value());
}

float in_pdf(Millimetres length) {
    return in_pdf(units::in_points(length));
}

/// Titles as the library can write them: nothing above U+FFFF.
std::string title_text(std::string_view text) {
    const std::string clean = printable(text);
    std::string title;
    for (const Character& c : characters(clean))
        title += utf8(c.code_point > 0xFFFF ? U'\u25A1' : c.code_point);
    return title;
}

/// An address in the characters that a URI may have (RFC 3986, 2.1): every other byte as %XX.
std::string uri_text(std::string_view address) {
    constexpr std::string_view digits = "0123456789ABCDEF";
    constexpr std::string_view refused = " \"<>\\^`{|}";
    std::string uri;
    for (const char c : address) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte > ' ' && byte < 0x7F && refused.find(c) == std::string_view::npos) {
            uri += c;
            continue;
        }
        uri += '%';
        uri += digits[byte / 16U];
        uri += digits[byte % 16U];
    }
    return uri;
}

class PagePainter {
  public:
    PagePainter(HaruDocument& document, HPDF_Page haru_page, const Faces& faces, Millimetres height)
        : document_(document), pen_(document, haru_page), faces_(faces), height_(height) {}

    void operator()(const Line& line) {
        set_stroke(line.stroke);
        step(MoveTo{line.from});
        step(LineTo{line.to});
        pen_.stroke();
    }

    void operator()(const Shape& shape) {
        if (shape.steps.empty()) return;
        pen_.set_fill(grey(shape.tone));
        path(shape.steps);
        pen_.fill();
    }

    void operator()(const Outline& outline) {
        if (outline.steps.empty()) return;
        set_stroke(outline.stroke);
        path(outline.steps);
        pen_.stroke();
    }

    void operator()(const Text& text) {
        std::vector<HaruPen::Piece> pieces;
        Millimetres x = text.baseline.x;
        for (Run& run : faces_.runs(text.text, text.style)) {
            pieces.push_back({document_.font(faces_.files()[run.face].path), in_pdf(x), std::move(run.text)});
            x += run.width;
        }
        if (pieces.empty()) return;
        pen_.text(pieces, y(text.baseline), in_pdf(text.style.size), grey(text.style.tone));
    }

    void operator()(const Link& link) {
        const Box& box = link.box;
        pen_.link(in_pdf(box.left), in_pdf(height_ - box.bottom()), in_pdf(box.right()),
                  in_pdf(height_ - box.top), uri_text(link.address));
    }

  private:
    static float x(Point point) { return in_pdf(point.x); }
    [[nodiscard]] float y(Point point) const { return in_pdf(height_ - point.y); }

    void set_stroke(const Stroke& stroke) {
        pen_.set_stroke(in_pdf(stroke.width), grey(stroke.tone), stroke.dashed);
    }

    void path(const std::vector<PathStep>& steps) {
        for (const PathStep& each : steps)
            std::visit([this](const auto& known) { step(known); }, each);
    }
    void step(const MoveTo& to) { pen_.move_to(x(to.to), y(to.to)); }
    void step(const LineTo& to) { pen_.line_to(x(to.to), y(to.to)); }
    void step(const CurveTo& to) {
        pen_.curve_to(x(to.control1), y(to.control1), x(to.control2), y(to.control2), x(to.to), y(to.to));
    }
    void step(const Close&) { pen_.close(); }

    HaruDocument& document_;
    HaruPen pen_;
    const Faces& faces_;
    Millimetres height_;
};

}  // namespace

std::string pdf_bytes(const Document& document, const Faces& faces) {
    if (document.pages.empty()) throw units::Refusal("The PDF was not made: there is no page to print.");
    HaruDocument haru;
    haru.describe(title_text(document.title), title_text(document.author), document.language);
    std::vector<HPDF_Page> pages;
    for (const Page& page : document.pages) {
        pages.push_back(haru.add_page(in_pdf(page.size.width), in_pdf(page.size.height)));
        PagePainter painter(haru, pages.back(), faces, page.size.height);
        for (const Item& item : page.items)
            std::visit(painter, item);
    }
    for (const Bookmark& bookmark : document.bookmarks) {
        if (bookmark.page >= pages.size())
            throw units::Refusal("The PDF was not made: the bookmark " + bookmark.title + " leads to page " +
                                 std::to_string(bookmark.page + 1) + " of " + std::to_string(pages.size()) +
                                 ". This is a mistake in the program; please report it.");
        haru.add_bookmark(title_text(bookmark.title), pages[bookmark.page]);
    }
    return haru.bytes();
}

void save_pdf(const Document& document, const Faces& faces, const std::filesystem::path& path) {
    write_file_whole(path, pdf_bytes(document, faces));
}

}  // namespace lowledger::canvas
