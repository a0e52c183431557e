#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <memory>
#include <ostream>
#include <vector>

#include "app/batch/print_request.h"
#include "app/batch/verbs.h"

namespace lowledger::batch {

namespace {

void print_handouts(const PrintRequest& asked, const Surroundings& surroundings) {
    const studio::Date day = day_of(asked, surroundings.today);
    require_place(asked);
    const canvas::Faces faces;
    const words::Words words;
    const auto file = store::StudioFile::open(asked.studio, store::Access::read_only);
    const studio::StudioFacts facts = facts_of(file, asked);
    std::vector<pages::NamedDocument> handouts;
    for (const PlayerAsked& player : players_of(file, asked, day, surroundings.errors))
        handouts.push_back(
            {name_of(player),
             pages::handout(inputs_of(file, facts, player, day, asked.large_print), words, faces)});
    write_documents(asked, handouts, "Tuning handouts", faces, surroundings.errors);
    surroundings.out << fmt::format("{} handouts are in {}.\n", handouts.size(), asked.into);
}

}  // namespace

void add_handouts_verb(CLI::App& program, Surroundings& surroundings) {
    auto asked = std::make_shared<PrintRequest>();
    CLI::App* verb = program.add_subcommand(
        "handouts", "Print what students take home: all of a studio, or those named. Changes no studio.");
    add_print_options(*verb, *asked);
    verb->callback([asked, &surroundings] { print_handouts(*asked, surroundings); });
}

}  // namespace lowledger::batch
