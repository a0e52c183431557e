#pragma once

#include <algorithm>
#include <cstddef>
#include <string_view>

namespace lowledger::store {

/// Text of a statement, put together at compile time from its columns, its table and its condition.
template <std::size_t Size>
struct SqlText {
    char characters[Size]{};

    constexpr SqlText() = default;
    // A text in quotes is one, so that it can be added as it stands.
    constexpr SqlText(const char (&text)[Size]) {  // NOLINT(google-explicit-constructor)
        std::copy_n(text, Size, characters);
    }
    [[nodiscard]] constexpr std::string_view view() const { return {characters, Size - 1}; }
    constexpr operator std::string_view() const { return view(); }  // NOLINT(google-explicit-constructor)
};

template <std::size_t A, std::size_t B>
constexpr SqlText<A + B - 1> operator+(const SqlText<A>& a, const SqlText<B>& b) {
    SqlText<A + B - 1> both;
    std::copy_n(a.characters, A - 1, both.characters);
    std::copy_n(b.characters, B, both.characters + A - 1);
    return both;
}

template <std::size_t A, std::size_t B>
constexpr auto operator+(const SqlText<A>& a, const char (&b)[B]) {
    return a + SqlText<B>(b);
}

template <std::size_t A, std::size_t B>
constexpr auto operator+(const char (&a)[A], const SqlText<B>& b) {
    return SqlText<A>(a) + b;
}

}  // namespace lowledger::store
