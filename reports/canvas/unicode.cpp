#include "reports/canvas/unicode.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <memory>
#include <new>
#include <utf8proc.h>

namespace lowledger::canvas {
namespace {

constexpr char32_t replacement = 0xFFFD;

bool is_plain_ascii(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return c >= ' ' && c < '\x7f'; });
}

const utf8proc_property_t& property(char32_t code_point) {
    return *utf8proc_get_property(static_cast<utf8proc_int32_t>(code_point));
}

/// The character at `offset`, or a replacement of one byte where none begins.
Character decoded(std::string_view text, std::size_t offset) {
    utf8proc_int32_t code_point = 0;
    const auto* bytes = reinterpret_cast<const utf8proc_uint8_t*>(text.data());
    const auto length =
        utf8proc_iterate(bytes + offset, static_cast<utf8proc_ssize_t>(text.size() - offset), &code_point);
    if (length <= 0) return {replacement, offset, 1};
    return {static_cast<char32_t>(code_point), offset, static_cast<std::size_t>(length)};
}

std::string cleaned(std::string_view text) {
    std::string clean;
    clean.reserve(text.size());
    for (std::size_t offset = 0; offset < text.size();) {
        const Character c = decoded(text, offset);
        offset += c.length;
        switch (property(c.code_point).category) {
            case UTF8PROC_CATEGORY_CC:
            case UTF8PROC_CATEGORY_ZL:
            case UTF8PROC_CATEGORY_ZP:
                clean += ' ';
                break;
            case UTF8PROC_CATEGORY_CF:
                break;
            default:
                clean += utf8(c.code_point);
        }
    }
    return clean;
}

std::string composed(const std::string& text) {
    utf8proc_uint8_t* mapped = nullptr;
    const auto length = utf8proc_map(reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
                                     static_cast<utf8proc_ssize_t>(text.size()), &mapped,
                                     static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPOSE));
    const std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> owner(mapped, &std::free);
    if (length < 0) throw std::bad_alloc();
    return {reinterpret_cast<const char*>(mapped), static_cast<std::size_t>(length)};
}

struct Range {
    char32_t first;
    char32_t last;
};

/// Blocks of the Unicode Standard whose scripts stack, join or reorder, or place marks by the font's rules.
constexpr std::array shaped_blocks{
    Range{0x0900, 0x109F},  // Devanagari to Sinhala, Thai, Lao, Tibetan, Myanmar
    Range{0x1100, 0x11FF},  // Hangul as single jamo
    Range{0x1700, 0x18AF},  // Tagalog to Khmer, Mongolian
    Range{0x1900, 0x1C7F},  // Limbu to Ol Chiki
    Range{0x1CD0, 0x1CFF},  // Vedic signs
    Range{0xA800, 0xA8FF},  // Syloti Nagri to Devanagari extended
    Range{0xA900, 0xAAFF},  // Kayah Li to Meetei Mayek extensions
    Range{0xABC0, 0xABFF},  // Meetei Mayek
    Range{0xD7B0, 0xD7FF},  // Hangul jamo extended
};

}  // namespace

std::string printable(std::string_view text) {
    if (is_plain_ascii(text)) return std::string(text);
    return composed(cleaned(text));
}

std::vector<Character> characters(std::string_view text) {
    std::vector<Character> all;
    all.reserve(text.size());
    for (std::size_t offset = 0; offset < text.size();) {
        all.push_back(decoded(text, offset));
        offset += all.back().length;
    }
    return all;
}

std::string utf8(char32_t code_point) {
    std::array<utf8proc_uint8_t, 4> bytes{};
    const auto length = utf8proc_encode_char(static_cast<utf8proc_int32_t>(code_point), bytes.data());
    return {reinterpret_cast<const char*>(bytes.data()), static_cast<std::size_t>(length)};
}

bool is_combining(char32_t code_point) {
    const auto category = property(code_point).category;
    return category == UTF8PROC_CATEGORY_MN || category == UTF8PROC_CATEGORY_MC ||
           category == UTF8PROC_CATEGORY_ME;
}

bool needs_shaping(char32_t code_point) {
    const auto direction = property(code_point).bidi_class;
    if (direction == UTF8PROC_BIDI_CLASS_R || direction == UTF8PROC_BIDI_CLASS_AL ||
        direction == UTF8PROC_BIDI_CLASS_AN)
        return true;
    return std::any_of(shaped_blocks.begin(), shaped_blocks.end(), [code_point](Range range) {
        return range.first <= code_point && code_point <= range.last;
    });
}

bool is_letter(char32_t code_point) {
    switch (property(code_point).category) {
        case UTF8PROC_CATEGORY_LU:
        case UTF8PROC_CATEGORY_LL:
        case UTF8PROC_CATEGORY_LT:
        case UTF8PROC_CATEGORY_LM:
        case UTF8PROC_CATEGORY_LO:
            return true;
        default:
            return false;
    }
}

}  // namespace lowledger::canvas
