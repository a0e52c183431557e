#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <memory>
#include <ostream>
#include <string>

#include "app/batch/verbs.h"
#include "model/store/studio_file.h"

namespace lowledger::batch {

namespace {

void check(const std::string& path, Surroundings& surroundings) {
    const auto file = store::StudioFile::open(path, store::Access::read_only);
    const auto complaints = file.check();
    if (complaints.empty()) {
        std::size_t sheets = 0;
        const auto students = file.students();
        for (const studio::Student& student : students)
            sheets += file.sheets(student.id).size();
        surroundings.out << fmt::format("{} is sound. {}: {} students, {} horns, {} tuning sheets.\n", path,
                                        file.facts().name, students.size(), file.horns().size(), sheets);
        return;
    }
    surroundings.errors << fmt::format(
        "{} is not sound. Keep it as it is and go on with a copy from before. What was found:\n", path);
    for (const std::string& complaint : complaints)
        surroundings.errors << "  " << complaint << '\n';
    surroundings.ending = Ending::not_sound;
}

}  // namespace

void add_check_verb(CLI::App& program, Surroundings& surroundings) {
    auto path = std::make_shared<std::string>();
    CLI::App* verb = program.add_subcommand("check", "Read a whole studio file and say whether it is sound.");
    verb->add_option("STUDIO", *path, "The studio file, NAME.lowledger")->required();
    verb->callback([path, &surroundings] { check(*path, surroundings); });
}

}  // namespace lowledger::batch
