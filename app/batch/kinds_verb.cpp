#include <CLI/CLI.hpp>
#include <algorithm>
#include <fmt/format.h>
#include <memory>
#include <ostream>
#include <string>
#include <vector>

#include "app/batch/choose_kind.h"
#include "app/batch/verbs.h"

namespace lowledger::batch {

namespace {

template <typename Thing>
std::string ids(const std::vector<Thing>& things) {
    std::string out;
    for (const Thing& thing : things)
        out += (out.empty() ? "" : " ") + thing.id;
    return out;
}

void list_kinds(const std::vector<horns::HornKind>& kinds, std::ostream& out) {
    std::size_t widest = 0;
    for (const horns::HornKind& kind : kinds)
        widest = std::max(widest, kind.id.size());
    for (const horns::HornKind& kind : kinds)
        out << fmt::format("{:<{}}  {} (slides: {}; readers: {})\n", kind.id, widest, kind.name,
                           ids(kind.slides), ids(kind.readers));
}

}  // namespace

void add_kinds_verb(CLI::App& program, Surroundings& surroundings) {
    auto own = std::make_shared<OwnKinds>();
    CLI::App* verb = program.add_subcommand("kinds", "List the kinds of horn: key, name, slides, readers.");
    auto* studio = verb->add_option("--studio", own->studio,
                                    "With a teacher's own, of the folder kinds beside this studio")
                       ->type_name("STUDIO");
    verb->add_option("--kinds", own->folder, "With a teacher's own, of this folder")
        ->type_name("FOLDER")
        ->excludes(studio);
    verb->callback([own, &surroundings] { list_kinds(kinds_of(*own), surroundings.out); });
}

}  // namespace lowledger::batch
