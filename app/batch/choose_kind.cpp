#include "app/batch/choose_kind.h"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <string>
#include <vector>

#include "model/units/refusal.h"

namespace lowledger::batch {

namespace {

template <typename Thing>
std::string ids(std::span<const Thing> things) {
    std::vector<std::string> out;
    out.reserve(things.size());
    for (const Thing& thing : things)
        out.push_back(thing.id);
    return fmt::format("{}", fmt::join(out, ", "));
}

}  // namespace

const horns::HornKind& choose_kind(std::span<const horns::HornKind> kinds, std::string_view id,
                                   std::string_view asked_by) {
    if (const horns::HornKind* kind = horns::find_kind(kinds, id)) return *kind;
    throw units::Refusal(
        fmt::format("{} {}: there is no such kind. There are: {}.", asked_by, id, ids(kinds)));
}

const horns::Reader& choose_reader(const horns::HornKind& kind, std::string_view id) {
    if (id.empty()) return kind.readers.front();
    const auto found = std::ranges::find(kind.readers, id, &horns::Reader::id);
    if (found != kind.readers.end()) return *found;
    throw units::Refusal(fmt::format("--reader {}: {} has no such reader. There are: {}.", id, kind.id,
                                     ids(std::span<const horns::Reader>(kind.readers))));
}

}  // namespace lowledger::batch
