#include "tests/truth/report.h"

#include <algorithm>
#include <cmath>

namespace lowledger::truth {
namespace {

std::string line(const Report::Row& cells) {
    std::string text = "|";
    for (const std::string& cell : cells)
        text += " " + cell + " |";
    return text + "\n";
}

}  // namespace

void Report::heading(const std::string& text) {
    text_ += "## " + text + "\n\n";
}

void Report::paragraph(const std::string& text) {
    text_ += text + "\n\n";
}

void Report::table(const Row& head, const std::vector<Row>& rows) {
    text_ += line(head) + line(Row(head.size(), "---"));
    for (const Row& row : rows)
        text_ += line(row);
    text_ += "\n";
}

void Report::verdict(bool holds, const std::string& what) {
    text_ += (holds ? "- holds: " : "- DOES NOT HOLD: ") + what + "\n\n";
    if (!holds) failed_.push_back(what);
}

void Report::aim(bool reached, const std::string& what) {
    text_ += (reached ? "- reached: " : "- not reached: ") + what + "\n\n";
}

int Report::count(int whole, int least) const {
    return std::max(least, static_cast<int>(std::lround(whole * share_)));
}

}  // namespace lowledger::truth
