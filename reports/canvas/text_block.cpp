#include "reports/canvas/text_block.h"

#include <algorithm>

#include "reports/canvas/unicode.h"

namespace lowledger::canvas {
namespace {

using units::Millimetres;

/// Covers the rounding of a sum of widths, so that a text fits a box of exactly its own width.
constexpr Millimetres rounding{1e-9};

bool is_letter_or_digit(char32_t c) {
    return is_letter(c) || (U'0' <= c && c <= U'9');
}

/// A line may break after this hyphen or slash: at least two letters or digits stand before it and a letter
/// after it, so that "B-flat", "-7" and "1/2" stay whole.
bool joins_words(const std::vector<Character>& all, std::size_t i) {
    const char32_t c = all[i].code_point;
    if (c != U'-' && c != U'/' && c != U'\u2013' && c != U'\u2010') return false;
    return i >= 2 && i + 1 < all.size() && is_letter_or_digit(all[i - 1].code_point) &&
           is_letter_or_digit(all[i - 2].code_point) && is_letter(all[i + 1].code_point);
}

/// What stays together on a line, with the spaces that follow it.
struct Piece {
    std::string word;
    std::string spaces;
};

std::vector<Piece> pieces(const std::string& paragraph) {
    std::vector<Piece> all(1);
    const auto chars = characters(paragraph);
    for (std::size_t i = 0; i < chars.size(); ++i) {
        if (chars[i].code_point == U' ') {
            all.back().spaces += ' ';
            continue;
        }
        if (!all.back().spaces.empty()) all.emplace_back();
        all.back().word.append(paragraph, chars[i].offset, chars[i].length);
        if (joins_words(chars, i)) all.emplace_back();
    }
    return all;
}

/// Letters with the marks that are drawn over them.
std::vector<std::string> clusters(const std::string& word) {
    std::vector<std::string> all;
    for (const Character& c : characters(word)) {
        if (all.empty() || !is_combining(c.code_point)) all.emplace_back();
        all.back().append(word, c.offset, c.length);
    }
    return all;
}

class LineBreaker {
  public:
    LineBreaker(const Faces& faces, const TextStyle& style, Millimetres width)
        : faces_(faces), style_(style), width_(width + rounding), space_(faces.width(" ", style)) {}

    void add_paragraph(std::string_view text) {
        const std::size_t before = lines_.size();
        for (const Piece& piece : pieces(printable(text)))
            add(piece);
        // A paragraph of nothing is a blank line.
        if (!line_.empty() || lines_.size() == before) finish_line();
    }

    std::vector<std::string> lines() && { return std::move(lines_); }

  private:
    void add(const Piece& piece) {
        const Millimetres wide = faces_.width(piece.word, style_);
        if (used_ + pending_ + wide > width_ && !line_.empty()) finish_line();
        if (wide > width_)
            add_in_parts(piece.word);
        else
            append(piece.word, wide);
        pending_ += space_ * static_cast<double>(piece.spaces.size());
        pending_spaces_ += piece.spaces;
    }

    void add_in_parts(const std::string& word) {
        for (const std::string& cluster : clusters(word)) {
            const Millimetres wide = faces_.width(cluster, style_);
            if (used_ + pending_ + wide > width_ && !line_.empty()) finish_line();
            append(cluster, wide);
        }
    }

    void append(const std::string& word, Millimetres wide) {
        // Spaces are drawn only once something follows them on the line.
        if (word.empty()) return;
        if (used_ + pending_ + wide <= width_) {
            line_ += pending_spaces_;
            used_ += pending_;
        }
        drop_pending();
        line_ += word;
        used_ += wide;
    }

    void finish_line() {
        lines_.push_back(std::move(line_));
        line_.clear();
        used_ = Millimetres();
        drop_pending();
    }

    void drop_pending() {
        pending_ = Millimetres();
        pending_spaces_.clear();
    }

    const Faces& faces_;
    TextStyle style_;
    Millimetres width_;
    Millimetres space_;
    std::vector<std::string> lines_;
    std::string line_;
    Millimetres used_;
    std::string pending_spaces_;
    Millimetres pending_;
};

}  // namespace

std::vector<std::string> wrapped(const Faces& faces, std::string_view text, const TextStyle& style,
                                 Millimetres width) {
    LineBreaker breaker(faces, style, width);
    if (text.ends_with('\n')) text.remove_suffix(1);
    if (text.ends_with('\r')) text.remove_suffix(1);
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        std::string_view paragraph = text.substr(0, end);
        if (paragraph.ends_with('\r')) paragraph.remove_suffix(1);
        breaker.add_paragraph(paragraph);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return std::move(breaker).lines();
}

std::string shortened(const Faces& faces, std::string_view text, const TextStyle& style, Millimetres width) {
    std::string whole = printable(text);
    if (faces.width(whole, style) <= width) return whole;
    const std::string ellipsis = utf8(U'\u2026');
    const Millimetres room = width + rounding;
    Millimetres used = faces.width(ellipsis, style);
    if (used > room) return {};
    std::string part;
    for (const std::string& cluster : clusters(whole)) {
        used += faces.width(cluster, style);
        if (used > room) break;
        part += cluster;
    }
    part.erase(part.find_last_not_of(' ') + 1);
    return part + ellipsis;
}

Millimetres leading(const TextStyle& style) {
    return units::in_millimetres(style.size) * 1.35;
}

Millimetres ascent(const TextStyle& style) {
    return units::in_millimetres(style.size);
}

void draw_text(Page& page, const Faces& faces, std::string_view text, const TextStyle& style, Point at,
               Align align) {
    std::string line = printable(text);
    if (line.empty()) return;
    const Millimetres wide = faces.width(line, style);
    if (align == Align::centre) at.x -= wide / 2.0;
    if (align == Align::right) at.x -= wide;
    page.items.emplace_back(Text{at, std::move(line), style, wide});
}

Millimetres draw_lines(Page& page, const Faces& faces, const std::vector<std::string>& lines,
                       const TextStyle& style, Point top_left, Millimetres width, Align align) {
    const double share = align == Align::left ? 0.0 : align == Align::centre ? 0.5 : 1.0;
    Point at{top_left.x + width * share, top_left.y + ascent(style)};
    for (const std::string& line : lines) {
        draw_text(page, faces, line, style, at, align);
        at.y += leading(style);
    }
    return top_left.y + leading(style) * static_cast<double>(lines.size());
}

Millimetres draw_block(Page& page, const Faces& faces, std::string_view text, const TextStyle& style,
                       Point top_left, Millimetres width, Align align) {
    return draw_lines(page, faces, wrapped(faces, text, style, width), style, top_left, width, align);
}

Millimetres block_height(const Faces& faces, std::string_view text, const TextStyle& style,
                         Millimetres width) {
    return leading(style) * static_cast<double>(wrapped(faces, text, style, width).size());
}

}  // namespace lowledger::canvas
