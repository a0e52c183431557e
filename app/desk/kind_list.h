#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "app/desk/listing.h"
#include "model/horns/kind.h"
#include "reports/words/words.h"

namespace lowledger::desk {

class Desk;

/// The kinds that can be chosen, and what keeps a teacher's own from being among them.
struct KindsOffered {
    std::vector<horns::HornKind> kinds;
    /// A sentence with file, line and key for each file that is left out; empty where all is well.
    std::string problem;
};

/// The built-in kinds and the teacher's own, without those whose file is refused.
KindsOffered kinds_offered(const Desk& desk);

/// The family a list groups a kind by, as it is called: "Tuba".
std::string kind_family(const words::Words& words, const horns::HornKind& kind);

/// Kinds whose name, family or open note has every word of `find` in it, by family, in the order given. The
/// id of a row is the index into `kinds`.
Listing kinds_listing(const std::vector<horns::HornKind>& kinds, const words::Words& words,
                      std::string_view find);

}  // namespace lowledger::desk
