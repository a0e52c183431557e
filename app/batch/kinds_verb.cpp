#include <CLI/CLI.hpp>
#include <algorithm>
#include <fmt/format.h>
#include <ostream>

#include "app/batch/verbs.h"
#include "model/horns/kind.h"

namespace lowledger::batch {

namespace {

void list_kinds(std::ostream& out) {
    std::size_t widest = 0;
    for (const horns::HornKind& kind : horns::built_in_kinds())
        widest = std::max(widest, kind.id.size());
    for (const horns::HornKind& kind : horns::built_in_kinds()) {
        std::string slides;
        for (const horns::SlideKind& slide : kind.slides)
            slides += (slides.empty() ? "" : " ") + slide.id;
        out << fmt::format("{:<{}}  {} (slides: {})\n", kind.id, widest, kind.name, slides);
    }
}

}  // namespace

void add_kinds_verb(CLI::App& program, Surroundings& surroundings) {
    program.add_subcommand("kinds", "List the kinds of horn: key, name, slides.")->callback([&surroundings] {
        list_kinds(surroundings.out);
    });
}

}  // namespace lowledger::batch
