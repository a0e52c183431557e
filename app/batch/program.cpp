#include "app/batch/program.h"

#include <CLI/CLI.hpp>
#include <exception>
#include <ostream>

#include "app/batch/verbs.h"
#include "model/exchange/settings_json.h"
#include "model/units/refusal.h"

namespace lowledger::batch {

namespace {

constexpr const char* what_it_is =
    "Slide settings, handouts and studios of low brass without a window.\n"
    "Each verb has its own --help.";

constexpr const char* endings =
    "Ends with 0: done; 1: refused, and a sentence on the error stream says why and what to do;\n"
    "2: the command line is wrong; 3: 'check' found a studio that is not sound; 4: a mistake of the "
    "program's own.";

Ending run_verb(CLI::App& program, int count, const char* const* words, Surroundings& surroundings) {
    try {
        program.parse(count, words);
        surroundings.out.flush();
        if (!surroundings.out)
            throw units::Refusal(
                "What was asked for cannot be written out. Check the disk or where it goes to.");
        return surroundings.ending;
    } catch (const CLI::ParseError& error) {
        const int code = program.exit(error, surroundings.out, surroundings.errors);
        return code == 0 ? Ending::done : Ending::wrong_command;
    } catch (const units::Refusal& refusal) {
        surroundings.errors << refusal.what() << '\n';
        return Ending::refused;
    }
}

}  // namespace

Ending run(int count, const char* const* words, std::ostream& out, std::ostream& errors, studio::Date today) {
    try {
        Surroundings surroundings{out, errors, today};
        CLI::App program(what_it_is, "lowledger-batch");
        program.footer(endings);
        program.require_subcommand(1);
        program.set_version_flag("--version", std::string(exchange::engine_version()));
        program.get_formatter()->column_width(30);
        add_settings_verb(program, surroundings);
        add_handouts_verb(program, surroundings);
        add_pages_verb(program, surroundings);
        add_make_studio_verb(program, surroundings);
        add_chart_verb(program, surroundings);
        add_kinds_verb(program, surroundings);
        add_check_verb(program, surroundings);
        add_dump_verb(program, surroundings);
        return run_verb(program, count, words, surroundings);
    } catch (const std::exception& mistake) {
        errors << "The program made a mistake: " << mistake.what()
               << ". Please report it with what you typed.\n";
        return Ending::failed;
    }
}

}  // namespace lowledger::batch
