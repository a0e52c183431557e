#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "model/horns/kind.h"

namespace lowledger::batch {

/// The kind of that id. Throws Refusal that begins with `asked_by` ("--kind") and lists the ids there are.
const horns::HornKind& choose_kind(std::span<const horns::HornKind> kinds, std::string_view id,
                                   std::string_view asked_by);

/// Where a teacher's own kinds are looked for, besides the built-in ones.
struct OwnKinds {
    /// A studio with a folder `kinds` beside it; empty: none.
    std::string studio;
    /// Such a folder itself; empty: none.
    std::string folder;
};

/// The built-in kinds and the teacher's own.
std::vector<horns::HornKind> kinds_of(const OwnKinds& own);

/// The kind of that id among those, or the kind of a file whose name ends in .toml. Throws Refusal.
horns::HornKind kind_asked(const OwnKinds& own, const std::string& id_or_file, std::string_view asked_by);

/// The reader of that id; the kind's first for an empty one. Throws Refusal that lists the kind's readers.
const horns::Reader& choose_reader(const horns::HornKind& kind, std::string_view id);

}  // namespace lowledger::batch
