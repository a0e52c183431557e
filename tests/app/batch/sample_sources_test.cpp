#include "app/batch/sample_sources.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "model/units/refusal.h"

namespace lowledger::batch {
namespace {

using testing::AllOf;
using testing::HasSubstr;

constexpr std::string_view school =
    "[studio]\nname='S'\nteacher='T'\nschool='S'\na4_hertz=440\nusual_room_celsius=21\n"
    "[calendar]\nhorns_filed_in_week=-9\n";
constexpr std::string_view horns = "[[horn]]\nmark='T-1'\nkind='bbb-tuba-3'\n";
constexpr std::string_view students =
    "[[student]]\nname='Ann'\nplays=[{horn='T-1', from=-9}]\nsheets=[{week=-2}]\n";

std::string refusal(std::string_view school_text, std::string_view horn_text, std::string_view student_text,
                    std::string_view timetable = "", std::string_view lending = "",
                    std::string_view notes = "") {
    try {
        (void)read_sample_sources({{"school.toml", school_text},
                                   {"horns.toml", horn_text},
                                   {"students.toml", student_text},
                                   {"timetable.toml", timetable},
                                   {"lending.toml", lending},
                                   {"notes.toml", notes}});
    } catch (const units::Refusal& refusal) {
        return refusal.what();
    }
    return "";
}

TEST(SampleSources, OnesThatComeWithTheProgramAreWhole) {
    const SampleSources sources = built_in_sample_sources();
    EXPECT_GE(sources.students.size(), 20U);
    EXPECT_GE(sources.horns.size(), 12U);
    EXPECT_THAT(sources.facts.name, HasSubstr("invented"));
    for (const SampleHorn& horn : sources.horns)
        EXPECT_NE(horns::find_kind(horns::built_in_kinds(), horn.kind), nullptr) << horn.mark;
}

TEST(SampleSources, MistakesAreNamedByFileLineAndKey) {
    EXPECT_EQ(refusal(school, horns, students), "");
    EXPECT_THAT(refusal(school, "[[horn]]\nmark='T-1'\nkind='k'\ncolour='red'\n", students),
                AllOf(HasSubstr("horns.toml, line 4"), HasSubstr("colour")));
    EXPECT_THAT(refusal(school, "[[horn]]\nmark='T-1'\n", students),
                AllOf(HasSubstr("horns.toml, line 1"), HasSubstr("kind is missing")));
    EXPECT_THAT(
        refusal(school, horns, "[[student]]\nname='Ann'\nreader='tenor'\nplays=[{horn='T-1', from=-9}]\n"),
        AllOf(HasSubstr("Ann"), HasSubstr("tenor"), HasSubstr("bbb-tuba-3")));
    EXPECT_THAT(refusal(school, horns, "[[student]]\nname='Ann'\naccidentals='naturals'\n"),
                AllOf(HasSubstr("students.toml"), HasSubstr("accidentals")));
    EXPECT_THAT(refusal(school, horns, "[[student]]\nname='Ann'\nlevel='genius'\n"),
                AllOf(HasSubstr("students.toml, line 3"), HasSubstr("beginner")));
    EXPECT_THAT(refusal(school, horns, "[[student]]\nname='Ann'\nsheets=[{week=-2}]\n"),
                AllOf(HasSubstr("students.toml, line 3"), HasSubstr("plays no horn")));
    EXPECT_THAT(refusal(school, horns, "[[student]]\nname='Ann'\nplays=[{horn='T-7', from=-9}]\n"),
                AllOf(HasSubstr("Ann"), HasSubstr("T-7")));
    EXPECT_THAT(refusal(school, horns, "[[student]]\nname='Ann'\nlesson={at='25:10'}\n"),
                AllOf(HasSubstr("students.toml, line 3"), HasSubstr("16:05")));
    EXPECT_THAT(refusal(school, horns, students, "[[group]]\nname='G'\nat='12:40'\nmembers=[{name='Bea'}]\n"),
                AllOf(HasSubstr("timetable.toml"), HasSubstr("Bea")));
    EXPECT_THAT(refusal(school, horns, students, "[[term]]\nname='T'\nfirst=-9\n"),
                AllOf(HasSubstr("timetable.toml, line 1"), HasSubstr("last is missing")));
    EXPECT_THAT(refusal(school, horns, students, "", "[[loan]]\nhorn='T-9'\nstudent='Ann'\nfrom=-3\n"),
                AllOf(HasSubstr("lending.toml"), HasSubstr("T-9")));
    EXPECT_THAT(refusal(school, horns, students, "", "[[upkeep]]\non='T-1'\nwork='sung'\nnoted=-3\n"),
                AllOf(HasSubstr("lending.toml, line 3"), HasSubstr("work")));
    EXPECT_THAT(refusal(school, horns, students, "", "", "[[beginner]]\nnext='Slurs.'\n"),
                AllOf(HasSubstr("notes.toml, line 1"), HasSubstr("done")));
    EXPECT_THAT(refusal(school, horns, "[[student]\n"), HasSubstr("students.toml, line 1"));
}

}  // namespace
}  // namespace lowledger::batch
