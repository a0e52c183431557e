// Simulates horns, players and rooms whose truth is known, and writes as tables what the profile and the
// settings make of them (docs/truth.md).
#include <CLI/CLI.hpp>
#include <fstream>
#include <functional>
#include <iostream>
#include <map>

#include "tests/truth/sections.h"

namespace {

using lowledger::truth::Report;

const std::vector<std::pair<std::string, std::function<void(Report&)>>>& sections() {
    using namespace lowledger::truth;
    static const std::vector<std::pair<std::string, std::function<void(Report&)>>> all{
        {"optimum", optimum}, {"calibration", calibration}, {"wrong_worlds", wrong_worlds}, {"worth", worth}};
    return all;
}

}  // namespace

int main(int argc, char** argv) {
    CLI::App app("Simulates horns whose truth is known and tells how well they are tuned");
    double share = 1.0;
    std::vector<std::string> wanted;
    std::string file;
    app.add_option("--share", share, "Part of the whole run, 0 to 1")->check(CLI::Range(0.0, 1.0));
    app.add_option("--section", wanted, "Only these sections");
    app.add_option("--output", file, "Write the tables there instead of to standard output");
    CLI11_PARSE(app, argc, argv);

    Report report(share);
    int run = 0;
    for (const auto& [name, section] : sections()) {
        if (!wanted.empty() && std::ranges::find(wanted, name) == wanted.end()) continue;
        section(report);
        ++run;
    }
    if (run == 0) {
        std::cerr << "There is no such section.\n";
        return 2;
    }
    if (file.empty()) {
        std::cout << report.text();
    } else if (!(std::ofstream(file) << report.text())) {
        std::cerr << file << " cannot be written.\n";
        return 2;
    }
    for (const std::string& what : report.failed())
        std::cerr << "Does not hold: " << what << "\n";
    return report.failed().empty() ? 0 : 1;
}
