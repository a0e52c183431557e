#include "app/batch/choose_kind.h"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <string>
#include <vector>

#include "model/exchange/kind_files.h"
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

std::vector<horns::HornKind> kinds_of(const OwnKinds& own) {
    if (!own.folder.empty()) return exchange::kinds_with_folder(own.folder);
    return own.studio.empty() ? horns::built_in_kinds() : exchange::kinds_with_own(own.studio);
}

horns::HornKind kind_asked(const OwnKinds& own, const std::string& id_or_file, std::string_view asked_by) {
    if (id_or_file.ends_with(".toml")) return exchange::read_kind_file(id_or_file);
    return choose_kind(kinds_of(own), id_or_file, asked_by);
}

const horns::Reader& choose_reader(const horns::HornKind& kind, std::string_view id) {
    if (id.empty()) return kind.readers.front();
    const auto found = std::ranges::find(kind.readers, id, &horns::Reader::id);
    if (found != kind.readers.end()) return *found;
    throw units::Refusal(fmt::format("--reader {}: {} has no such reader. There are: {}.", id, kind.id,
                                     ids(std::span<const horns::Reader>(kind.readers))));
}

}  // namespace lowledger::batch
