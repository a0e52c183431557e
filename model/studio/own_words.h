#pragma once

#include <string>
#include <vector>

namespace lowledger::studio {

/// A teacher's own wording of a sentence that may be changed.
struct OwnText {
    /// The sentence's id.
    std::string sentence;
    std::string text;
    bool operator==(const OwnText&) const = default;
};

/// The picture at the head of the studio's pages, as the file it came from.
struct HeadPicture {
    enum class Type { png, jpeg } type = Type::png;
    /// The whole file, at most four million bytes.
    std::vector<unsigned char> bytes;
    bool operator==(const HeadPicture&) const = default;
};

}  // namespace lowledger::studio
