#include <CLI/CLI.hpp>
#include <memory>
#include <ostream>
#include <string>

#include "app/batch/verbs.h"
#include "model/store/studio_file.h"

namespace lowledger::batch {

void add_dump_verb(CLI::App& program, Surroundings& surroundings) {
    auto path = std::make_shared<std::string>();
    CLI::App* verb = program.add_subcommand(
        "dump", "Print all records of a studio as SQL text in a fixed order: equal dumps are equal studios.");
    verb->add_option("STUDIO", *path, "The studio file, NAME.lowledger")->required();
    verb->callback([path, &surroundings] {
        surroundings.out << store::StudioFile::open(*path, store::Access::read_only).dump();
    });
}

}  // namespace lowledger::batch
