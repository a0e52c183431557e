#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace lowledger::canvas {

/// A character of UTF-8 text with the bytes that spell it.
struct Character {
    char32_t code_point = 0;
    std::size_t offset = 0;
    std::size_t length = 0;
};

/// Text as a page can carry it: valid UTF-8 in normal form C (Unicode Standard Annex 15), so that an accent
/// typed apart from its letter finds it. A byte that is no UTF-8 becomes U+FFFD; tabs, line ends and other
/// controls become a space; invisible format characters (joiners, direction marks, soft hyphens) are left
/// out.
std::string printable(std::string_view text);

/// The characters of valid UTF-8, such as `printable` gives.
std::vector<Character> characters(std::string_view text);

/// UTF-8 of one character.
std::string utf8(char32_t code_point);

/// A mark that is drawn over the character before it.
bool is_combining(char32_t code_point);

/// The character is of a script that is written from right to left or whose letters join, stack or change
/// places; drawn one by one they would be wrong.
bool needs_shaping(char32_t code_point);

bool is_letter(char32_t code_point);

}  // namespace lowledger::canvas
