#include "model/routines/library.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <set>

#include "model/units/refusal.h"

namespace lowledger::routines {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

std::string refusal_of(const char* text) {
    try {
        read_routines(text, "mine.toml");
    } catch (const units::Refusal& refusal) {
        return refusal.what();
    }
    return {};
}

TEST(RoutineLibrary, HasADozenWholeRoutines) {
    EXPECT_GE(library().size(), 12U);
    std::set<std::string> titles;
    for (const studio::Routine& routine : library()) {
        EXPECT_TRUE(titles.insert(routine.title).second) << routine.title;
        EXPECT_THAT(routine.aim, Not(IsEmpty())) << routine.key;
        EXPECT_THAT(routine.steps, Not(IsEmpty())) << routine.key;
        EXPECT_THAT(routine.dose, Not(IsEmpty())) << routine.key;
        EXPECT_TRUE(routine.length.has_value()) << routine.key;
        EXPECT_FALSE(routine.id.filed());
    }
}

TEST(RoutineLibrary, ReadsEveryKey) {
    const auto routines = read_routines(
        "[[routine]]\nkey = \"k\"\ntitle = \"T\"\naim = \"A\"\nsteps = [\"one\", \"two\"]\ndose = \"D\"\n"
        "length_minutes = 7\nlevels = [\"advanced\"]\nhorns = [\"tuba\"]\nmusic = \"F2\"\n",
        "mine.toml");
    ASSERT_EQ(routines.size(), 1U);
    EXPECT_EQ(routines[0], (studio::Routine{.id = {},
                                            .key = "k",
                                            .title = "T",
                                            .aim = "A",
                                            .steps = {"one", "two"},
                                            .dose = "D",
                                            .length = std::chrono::minutes(7),
                                            .levels = {studio::Level::advanced},
                                            .horns = {"tuba"},
                                            .music = "F2"}));
}

TEST(RoutineLibrary, SaysWhereAFileIsWrongAndWhatIsAllowed) {
    EXPECT_THAT(refusal_of("[[routine]]\nkey = \"k\"\n"), HasSubstr("mine.toml, line 1: 'title'"));
    EXPECT_THAT(refusal_of("[[routine]]\nkey = \"k\"\ntitle = \"T\"\nname = \"x\"\n"),
                testing::AllOf(HasSubstr("line 4: 'name'"), HasSubstr("length_minutes")));
    EXPECT_THAT(refusal_of("[[routine]]\nkey = \"k\"\ntitle = \"T\"\nlevels = [\"expert\"]\n"),
                testing::AllOf(HasSubstr("line 4"), HasSubstr("beginner, middle and advanced")));
    EXPECT_THAT(refusal_of("[[routine]]\nkey = \"k\"\ntitle = \"T\"\nlength_minutes = 0\n"),
                HasSubstr("from 1 to 600"));
    EXPECT_THAT(refusal_of("[[routine]]\nkey = \"k\"\ntitle = \"T\"\nsteps = [\"\"]\n"), HasSubstr("line 4"));
    EXPECT_THAT(
        refusal_of("[[routine]]\nkey = \"k\"\ntitle = \"T\"\n[[routine]]\nkey = \"k\"\ntitle = \"U\"\n"),
        HasSubstr("line 5: 'key'"));
    EXPECT_THAT(refusal_of("routine = 3\n"), HasSubstr("[[routine]]"));
    EXPECT_THAT(refusal_of("[[routine]\n"), HasSubstr("mine.toml, line"));
}

}  // namespace
}  // namespace lowledger::routines
