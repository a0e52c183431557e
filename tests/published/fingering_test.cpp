#include <algorithm>
#include <gtest/gtest.h>
#include <map>
#include <set>
#include <sstream>

#include "model/horns/chart.h"
#include "tests/published/table.h"

namespace lowledger::published {
namespace {

using horns::HornKind;
using horns::Way;

/// A row of the fingering tables that the ranking puts below second place or the chart does not call usual,
/// and why.
using Explained = std::map<std::string, std::string>;

struct Case {
    const char* kind;
    const char* table;
    const char* instrument;
    /// Ranked third or lower.
    Explained exceptions;
    /// Called usual by the table, not by the chart.
    Explained other_usual;
};

/// The ninth partial, open, and the twelfth with the fourth are better in tune than the flat tenth; teachers
/// go by the tenth because its fingerings are those of an octave lower.
const char* const flat_tenth =
    "ninth and twelfth partials are better in tune than the flat tenth that charts go by";

/// The third valve of a three-valve compensating horn is built for three semitones exactly; 1-2 is ten cents
/// sharp.
const char* const third_alone = "the third alone is in tune where 1-2 is not";

/// The table is of a horn without the sixth valve, which was built to be in tune where 2-4 is 25 cents sharp.
const char* const sixth_for_second = "the sixth valve with the fourth is in tune where 2-4 is not";

/// The flat seventh partial is taught; the ninth of the F side is in tune and near, but no chart goes by it.
const char* const ninth_with_f =
    "the F valve's ninth partial and the open eighth are better in tune than the seventh";

constexpr const char* valved = "fingerings_valved.csv";
constexpr const char* positions = "positions_trombone.csv";

/// Low notes that the table for a plain trombone plays in sixth and seventh.
const Explained with_f_valve = {{"F2", "the F valve in first for sixth"},
                                {"E2", "the F valve in second for seventh"},
                                {"B2", "the F valve in second for seventh"},
                                {"C3", "the F valve in first for sixth"}};

const Case cases[] = {
    {"bbb-tuba-3", valved, "BBb tuba/sousaphone 3v", {}, {}},
    {"sousaphone-3", valved, "BBb tuba/sousaphone 3v", {}, {}},
    {"marching-tuba-3", valved, "BBb tuba/sousaphone 3v", {}, {}},
    {"bbb-tuba-4", valved, "BBb tuba 4v non-comp", {{"C4", flat_tenth}}, {}},
    {"sousaphone-4", valved, "BBb tuba 4v non-comp", {{"C4", flat_tenth}}, {}},
    {"marching-tuba-4", valved, "BBb tuba 4v non-comp", {{"C4", flat_tenth}}, {}},
    {"cimbasso-bbb-4", valved, "BBb tuba 4v non-comp", {{"C4", flat_tenth}}, {}},
    {"marching-tuba-cc-4", valved, "CC tuba 4v", {{"D4", flat_tenth}}, {}},
    {"f-tuba-6",
     valved,
     "F tuba 4v (upper range only)",
     {{"G4", flat_tenth}, {"B1", sixth_for_second}, {"Gb2", sixth_for_second}},
     {{"B1", sixth_for_second}, {"Gb2", sixth_for_second}}},
    {"f-tuba-4-comp", valved, "F tuba 4v (upper range only)", {{"G4", flat_tenth}}, {}},
    {"cimbasso-f-4", valved, "F tuba 4v (upper range only)", {{"G4", flat_tenth}}, {}},
    {"cimbasso-f-6",
     valved,
     "F tuba 4v (upper range only)",
     {{"G4", flat_tenth}, {"B1", sixth_for_second}, {"Gb2", sixth_for_second}},
     {{"B1", sixth_for_second}, {"Gb2", sixth_for_second}}},
    {"marching-trombone-3", valved, "Bb euphonium/baritone 3v", {}, {}},
    {"valve-trombone-4", valved, "Bb euphonium 4v non-comp", {{"C5", flat_tenth}}, {}},
    {"baritone-4-comp", valved, "Bb euphonium 4v compensating", {{"C5", flat_tenth}}, {}},
    {"cc-tuba-4", valved, "CC tuba 4v", {{"D4", flat_tenth}}, {}},
    {"cc-tuba-5", valved, "CC tuba 5v (5=flat whole step)", {{"D4", flat_tenth}}, {}},
    {"eb-tuba-4-comp", valved, "Eb tuba 4v compensating", {{"F4", flat_tenth}}, {}},
    {"f-tuba-4", valved, "F tuba 4v (upper range only)", {{"G4", flat_tenth}}, {}},
    {"f-tuba-5", valved, "F tuba 4v (upper range only)", {{"G4", flat_tenth}}, {}},
    {"cimbasso-f-5", valved, "F tuba 4v (upper range only)", {{"G4", flat_tenth}}, {}},
    {"euphonium-3", valved, "Bb euphonium/baritone 3v", {}, {}},
    {"baritone-3", valved, "Bb euphonium/baritone 3v", {}, {}},
    {"marching-baritone-3", valved, "Bb euphonium/baritone 3v", {}, {}},
    {"marching-euphonium-3", valved, "Bb euphonium/baritone 3v", {}, {}},
    {"valve-trombone-3", valved, "Bb euphonium/baritone 3v", {}, {}},
    {"baritone-3-comp",
     valved,
     "Bb euphonium/baritone 3v",
     {{"C5", flat_tenth}, {"G4", third_alone}},
     {{"G2", third_alone}, {"D3", third_alone}, {"G3", third_alone}, {"G4", third_alone}}},
    {"euphonium-3-comp",
     valved,
     "Bb euphonium/baritone 3v",
     {{"C5", flat_tenth}, {"G4", third_alone}},
     {{"G2", third_alone}, {"D3", third_alone}, {"G3", third_alone}, {"G4", third_alone}}},
    {"euphonium-4", valved, "Bb euphonium 4v non-comp", {{"C5", flat_tenth}}, {}},
    {"euphonium-4-comp", valved, "Bb euphonium 4v compensating", {{"C5", flat_tenth}}, {}},
    {"tenor-trombone", positions, "Tenor trombone (no valve)", {}, {}},
    {"tenor-trombone-f",
     positions,
     "Tenor trombone (no valve)",
     {{"Gb4", ninth_with_f}, {"G4", ninth_with_f}},
     with_f_valve},
    {"tenor-trombone-f", positions, "Tenor/bass trombone F-attachment", {}, {}},
    {"bass-trombone-f", positions, "Tenor/bass trombone F-attachment", {}, {}},
};

/// 1 for the first of the ways; the number of ways and one if it is not among them.
std::size_t rank(const std::vector<Way>& ways, const horns::Fingering& fingering, int partial) {
    const auto at = std::ranges::find_if(
        ways, [&](const Way& way) { return way.fingering == fingering && way.partial == partial; });
    return static_cast<std::size_t>(at - ways.begin()) + 1;
}

class PublishedFingerings : public ::testing::TestWithParam<Case> {};

/// "13" or "4" of a row; a position is "p3", "#3" too (shortened), "T2" a position with the F valve.
std::string file_form(const std::string& cell, bool is_position) {
    if (!is_position) return cell;
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
    const bool is_position = std::string_view(wanted.table) == positions;
    return horns::parse_fingering(file_form(row.text("standard_fingering"), is_position),
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
        if (GetParam().other_usual.contains(name)) {
            EXPECT_NE(entry->usual.fingering, standard_of(GetParam(), row)) << name << " needs no exception";
            continue;
        }
        ASSERT_TRUE(entry) << row.place() << " " << name;
        EXPECT_EQ(entry->usual.fingering, standard_of(GetParam(), row)) << row.place() << " " << name;
        EXPECT_EQ(entry->usual.partial, row.integer("partial")) << row.place() << " " << name;
    }
}

/// Alternates are found, by fingering and partial: "3(p2)", "13(p4) 24(p6)"; what stands in words is left
/// out.
TEST_P(PublishedFingerings, AlternatesAreFound) {
    const bool is_position = std::string_view(GetParam().table) == positions;
    for (const Row& row : rows_of(GetParam())) {
        const auto ways = horns::possible_fingerings(kind_of(GetParam()),
                                                     units::parse_pitch(row.text("concert_note")).value());
        std::istringstream words(row.text("alternates"));
        for (std::string word; words >> word;) {
            const auto open = word.find("(p");
            if (open == std::string::npos) continue;
            const auto fingering = horns::parse_fingering(file_form(word.substr(0, open), is_position));
            const int partial = std::stoi(word.substr(open + 2));
            ASSERT_TRUE(fingering) << row.place() << " " << word;
            EXPECT_LE(rank(ways, *fingering, partial), ways.size())
                << row.place() << " " << row.text("concert_note") << " " << word;
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Kinds, PublishedFingerings, ::testing::ValuesIn(cases), [](const auto& each) {
    std::string name = std::string(each.param.kind) + "_" + std::to_string(each.index);
    std::ranges::replace(name, '-', '_');
    return name;
});

void PrintTo(const Case& each, std::ostream* out) {
    *out << each.kind;
}

}  // namespace
}  // namespace lowledger::published
