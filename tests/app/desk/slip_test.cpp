#include "app/desk/slip.h"

#include <gtest/gtest.h>
#include <stdexcept>

namespace lowledger::desk {
namespace {

const studio::Date first_day{2026, 11, 25};

Slip loan_slip() {
    Slip slip("Lend a horn", "&Lend");
    slip.text("to", "&To:", "  Ada ")
        .date("from", "&From:", first_day)
        .date_or_none("due", "&Due:", std::nullopt)
        .check("signed", "&Signed", true)
        .choice("case", "&Case:", {{"hard", "hard case"}, {"bag", "bag"}}, "bag")
        .several("days", "Da&ys:", {{"1", "Monday"}, {"2", "Tuesday"}, {"3", "Wednesday"}}, {"1", "3"})
        .needs("to", "Say who takes it.")
        .must([](const SlipAnswers& answers) -> std::optional<SlipProblem> {
            const auto due = answers.date_or_none("due");
            if (due && *due < answers.date("from")) return SlipProblem{"due", "Due before it is lent."};
            return std::nullopt;
        });
    return slip;
}

TEST(Slip, SaysWhatItStartsWith) {
    const auto answers = loan_slip().filled_in({});
    EXPECT_EQ(answers.text("to"), "Ada");
    EXPECT_EQ(answers.date("from"), first_day);
    EXPECT_EQ(answers.date_or_none("due"), std::nullopt);
    EXPECT_TRUE(answers.checked("signed"));
    EXPECT_EQ(answers.chosen("case"), "bag");
    EXPECT_EQ(answers.several("days"), (std::vector<std::string>{"1", "3"}));
    EXPECT_FALSE(loan_slip().problem(answers));
}

TEST(Slip, TheFirstProblemNamesItsField) {
    const auto slip = loan_slip();
    const auto nobody = slip.problem(slip.filled_in({{"to", " "}, {"due", "2026-11-01"}}));
    ASSERT_TRUE(nobody);
    EXPECT_EQ(nobody->field, "to");
    const auto early = slip.problem(slip.filled_in({{"due", "2026-11-01"}}));
    ASSERT_TRUE(early);
    EXPECT_EQ(early->field, "due");
    EXPECT_FALSE(slip.problem(slip.filled_in({{"due", "2026-12-01"}})));
}

TEST(Slip, AnUnknownStartIsTheFirstChoice) {
    const auto slip = Slip("", "").choice("key", "", {{"a", "A"}, {"b", "B"}}, "gone");
    EXPECT_EQ(slip.filled_in({}).chosen("key"), "a");
}

TEST(Slip, MistakesOfTheProgramAreNotPassedOver) {
    EXPECT_THROW((void)loan_slip().filled_in({{"nobody", ""}}), std::logic_error);
    EXPECT_THROW((void)loan_slip().filled_in({{"case", "box"}}), std::logic_error);
    EXPECT_THROW((void)loan_slip().filled_in({}).text("nobody"), std::logic_error);
    EXPECT_THROW((void)loan_slip().filled_in({}).date("to"), std::logic_error);
    EXPECT_THROW((void)loan_slip().filled_in({}).date("due"), std::logic_error);
    EXPECT_THROW(Slip("", "").choice("none", "", {}, ""), std::logic_error);
}

}  // namespace
}  // namespace lowledger::desk
