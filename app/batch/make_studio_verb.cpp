#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <memory>
#include <ostream>
#include <string>

#include "app/batch/sample_studio.h"
#include "app/batch/verbs.h"
#include "model/units/refusal.h"

namespace lowledger::batch {

namespace {

struct Asked {
    std::string path;
    std::string as_of;
    std::uint64_t seed = usual_sample_seed;
};

void make_studio(const Asked& asked, std::ostream& out) {
    const auto as_of = studio::Date::parse_iso(asked.as_of);
    if (!as_of)
        throw units::Refusal(
            fmt::format("--as-of {}: that is no date. Write it as 2026-11-25.", asked.as_of));
    const SampleSources sources = built_in_sample_sources();
    make_sample_studio(asked.path, sources, *as_of, asked.seed);
    out << fmt::format("{} is made: {}, {} students and {} horns, all invented.\n", asked.path,
                       sources.facts.name, sources.students.size(), sources.horns.size());
}

}  // namespace

void add_make_studio_verb(CLI::App& program, Surroundings& surroundings) {
    auto asked = std::make_shared<Asked>();
    CLI::App* verb = program.add_subcommand(
        "make-studio", "Make the sample studio: an invented school's two terms up to a date.");
    verb->add_option("FILE", asked->path, "The file to make, NAME.lowledger; nothing is overwritten")
        ->required();
    verb->add_option("--as-of", asked->as_of, "The day it is made for, 2026-11-25")
        ->type_name("DATE")
        ->required();
    verb->add_option("--seed", asked->seed, "Another number makes other horns, players and readings")
        ->type_name("N")
        ->capture_default_str();
    verb->callback([asked, &surroundings] { make_studio(*asked, surroundings.out); });
}

}  // namespace lowledger::batch
