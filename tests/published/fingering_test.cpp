#include <algorithm>
#include <gtest/gtest.h>
#include <map>
#include <set>
#include <sstream>

#include "model/horns/chart.h"
#include "tests/published/table.h"

namespace lowledger::published {
namespace {

using horns::ChartNote;
using horns::HornKind;
using horns::Way;

/// A row of the fingering tables that the ranking puts below second place or the chart does not call usual,
/// and why.
using Explained = std::map<std::string, std::string>;

struct Case {
    const char* kind;
    const char* table;
    const char* instrument;
    Explained exceptions;
};

/// The ninth partial, open, and the twelfth with the fourth are better in tune than the flat tenth; teachers
/// go by the tenth because its fingerings are those of an octave lower.
const char* const flat_tenth =
    "ninth and twelfth partials are better in tune than the flat tenth that charts go by";

const Case cases[] = {
    {"bbb-tuba-3", "fingerings_valved.csv", "BBb tuba/sousaphone 3v", {}},
    {"bbb-tuba-4", "fingerings_valved.csv", "BBb tuba 4v non-comp", {{"C4", flat_tenth}}},
};

/// 1 for the first of the ways; the number of ways and one if it is not among them.
std::size_t rank(const std::vector<Way>& ways, const horns::Fingering& fingering, int partial) {
    const auto at = std::ranges::find_if(
        ways, [&](const Way& way) { return way.fingering == fingering && way.partial == partial; });
    return static_cast<std::size_t>(at - ways.begin()) + 1;
}

class PublishedFingerings : public ::testing::TestWithParam<Case> {};

/// "13" or "4" of a row; a position is "p3", "#3" too (shortened), "T2" a position with the F valve.
std::string file_form(const std::string& cell, bool positions) {
    if (!positions) return cell;
    if (cell.starts_with('T')) return "p" + cell.substr(1) + "+F";
    return "p" + cell.substr(cell.starts_with('#') ? 1 : 0);
}

std::vector<Row> rows_of(const Case& wanted) {
    std::vector<Row> rows = table(wanted.table);
    std::erase_if(rows, [&](const Row& row) { return row.text("instrument") != wanted.instrument; });
    return rows;
}

const HornKind& kind_of(const Case& wanted) {
    const HornKind* kind = horns::find_kind(horns::built_in_kinds(), wanted.kind);
    if (kind == nullptr) throw std::runtime_error(std::string("no kind ") + wanted.kind);
    return *kind;
}

horns::Fingering standard_of(const Case& wanted, const Row& row) {
    const bool positions = std::string_view(wanted.table).starts_with("positions");
    return horns::parse_fingering(file_form(row.text("standard_fingering"), positions),
                                  kind_of(wanted).valve_labels())
        .value();
}

TEST_P(PublishedFingerings, TheTableIsNotEmptyAndExceptionsAreFew) {
    EXPECT_GE(rows_of(GetParam()).size(), 8U);
    EXPECT_LE(GetParam().exceptions.size(), 3U);
}

TEST_P(PublishedFingerings, EveryUsualFingeringIsRankedFirstOrSecond) {
    std::set<std::string> needed;
    for (const Row& row : rows_of(GetParam())) {
        const std::string& name = row.text("concert_note");
        const auto ways = horns::possible_fingerings(kind_of(GetParam()), units::parse_pitch(name).value());
        const std::size_t place = rank(ways, standard_of(GetParam(), row), row.integer("partial"));
        EXPECT_LE(place, ways.size()) << row.place() << " " << name << ": not found";
        if (place <= 2) continue;
        needed.insert(name);
        EXPECT_TRUE(GetParam().exceptions.contains(name))
            << row.place() << " " << name << " is ranked " << place;
    }
    for (const auto& [name, why] : GetParam().exceptions)
        EXPECT_TRUE(needed.contains(name)) << name << " needs no exception: " << why;
}

TEST_P(PublishedFingerings, TheChartCallsItUsual) {
    for (const Row& row : rows_of(GetParam())) {
        const std::string& name = row.text("concert_note");
        const auto entry = horns::chart_note(kind_of(GetParam()), units::parse_pitch(name).value());
        ASSERT_TRUE(entry) << row.place() << " " << name;
        EXPECT_EQ(entry->usual.fingering, standard_of(GetParam(), row)) << row.place() << " " << name;
        EXPECT_EQ(entry->usual.partial, row.integer("partial")) << row.place() << " " << name;
    }
}

/// Alternates are found, by fingering and partial: "3(p2)", "13(p4) 24(p6)"; what stands in words is left
/// out.
TEST_P(PublishedFingerings, AlternatesAreFound) {
    const bool positions = std::string_view(GetParam().table).starts_with("positions");
    for (const Row& row : rows_of(GetParam())) {
        const auto ways = horns::possible_fingerings(kind_of(GetParam()),
                                                     units::parse_pitch(row.text("concert_note")).value());
        std::istringstream words(row.text("alternates"));
        for (std::string word; words >> word;) {
            const auto open = word.find("(p");
            if (open == std::string::npos) continue;
            const auto fingering = horns::parse_fingering(file_form(word.substr(0, open), positions));
            const int partial = std::stoi(word.substr(open + 2));
            ASSERT_TRUE(fingering) << row.place() << " " << word;
            EXPECT_LE(rank(ways, *fingering, partial), ways.size())
                << row.place() << " " << row.text("concert_note") << " " << word;
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Kinds, PublishedFingerings, ::testing::ValuesIn(cases), [](const auto& each) {
    std::string name = each.param.kind;
    std::ranges::replace(name, '-', '_');
    return name;
});

void PrintTo(const Case& each, std::ostream* out) {
    *out << each.kind;
}

}  // namespace
}  // namespace lowledger::published
