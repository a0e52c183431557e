#include "model/exchange/csv.h"

#include <array>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "model/exchange/utf8.h"
#include "model/units/refusal.h"

namespace lowledger::exchange {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;

std::string refusal(std::string_view text) {
    try {
        (void)read_csv(text, "sheet.csv");
    } catch (const units::Refusal& refusal) {
        return refusal.what();
    }
    return "read without complaint";
}

// RFC 4180 (Shafranovich 2005), section 2, its own examples.
TEST(Csv, Rfc4180LineEndsAndLastLineWithoutOne) {
    const CsvTable table = read_csv("field_name,b,c\r\naaa,bbb,ccc\r\nzzz,yyy,xxx", "t.csv");
    EXPECT_THAT(table.head, ElementsAre("field_name", "b", "c"));
    ASSERT_EQ(table.rows.size(), 2U);
    EXPECT_THAT(table.rows[1].fields, ElementsAre("zzz", "yyy", "xxx"));
}

TEST(Csv, Rfc4180QuotedBreaksCommasAndQuotes) {
    const CsvTable table =
        read_csv("a,b,c\r\n\"aaa\",\"b \r\nbb\",\"ccc\"\r\n\"aaa\",\"b\"\"bb\",\"c,c\"\r\n", "t.csv");
    ASSERT_EQ(table.rows.size(), 2U);
    EXPECT_THAT(table.rows[0].fields, ElementsAre("aaa", "b \r\nbb", "ccc"));
    EXPECT_THAT(table.rows[1].fields, ElementsAre("aaa", "b\"bb", "c,c"));
    EXPECT_EQ(table.rows[1].line, 4U);
}

TEST(Csv, MarkSpacesBlankLinesAndEmptyRowsOfASpreadsheet) {
    const CsvTable table =
        read_csv("\xEF\xBB\xBF\n note , cents ,\n\n Bb2 ,\" -7 \",\n,,\nF2,3,,\n", "t.csv");
    EXPECT_THAT(table.head, ElementsAre("note", "cents"));
    ASSERT_EQ(table.rows.size(), 2U);
    EXPECT_EQ(table.rows[0], (CsvRow{4, {"Bb2", "-7"}}));
    EXPECT_EQ(table.rows[1], (CsvRow{6, {"F2", "3"}}));
}

TEST(Csv, SemicolonsWhereTheHeadHasNoComma) {
    const CsvTable table = read_csv("note;cents\nBb2;-7,5\n", "t.csv");
    EXPECT_THAT(table.rows[0].fields, ElementsAre("Bb2", "-7,5"));
}

TEST(Csv, RefusalsNameFileAndLine) {
    EXPECT_THAT(refusal("note,cents\nBb2,1\nZo\xEB,2\n"),
                AllOf(HasSubstr("sheet.csv, line 3:"), HasSubstr("UTF-8")));
    EXPECT_THAT(refusal("\xFF\xFEn\0"), AllOf(HasSubstr("sheet.csv"), HasSubstr("UTF-16")));
    EXPECT_THAT(refusal("note,cents\nBb2,\"1\n"), AllOf(HasSubstr("line 2:"), HasSubstr("never closed")));
    EXPECT_THAT(refusal("note,cents\nB\"b2,1\n"), HasSubstr("line 2: a quotation mark"));
    EXPECT_THAT(refusal("note,cents\n\"Bb2\"x,1\n"), HasSubstr("line 2: text follows"));
    EXPECT_THAT(refusal("note,cents\nBb2,7,5\n"), HasSubstr("line 2: the head has 2 columns, this row 3"));
    EXPECT_THAT(refusal("note,cents\nBb2\n"), HasSubstr("line 2: the head has 2 columns, this row 1"));
    EXPECT_THAT(refusal(std::string_view("note,cents\nBb\0,1\n", 17)),
                HasSubstr("line 2: there is a control"));
    EXPECT_THAT(refusal(""), HasSubstr("sheet.csv is empty"));
    EXPECT_THAT(refusal("\n,,\n"), HasSubstr("sheet.csv is empty"));
}

TEST(Csv, ColumnsAreCheckedByName) {
    constexpr std::array<std::string_view, 2> required{"note", "cents"};
    constexpr std::array<std::string_view, 1> optional{"take"};
    const auto refused = [&](std::string_view text) -> std::string {
        try {
            (void)CsvColumns(read_csv(text, "sheet.csv"), required, optional);
        } catch (const units::Refusal& refusal) {
            return refusal.what();
        }
        return "";
    };
    EXPECT_EQ(refused("Cents,NOTE\n"), "");
    EXPECT_EQ(refused("take,cents,note\n"), "");
    EXPECT_THAT(refused("note,take\n"),
                AllOf(HasSubstr("sheet.csv, line 1:"), HasSubstr("cents is missing")));
    EXPECT_THAT(refused("\nnote,cents,mood\n"), AllOf(HasSubstr("line 2:"), HasSubstr("\"mood\"")));
    EXPECT_THAT(refused("note,cents,note\n"), HasSubstr("note is there twice"));
    EXPECT_THAT(refused("note,,cents\n"), HasSubstr("A column has no name"));
}

// RFC 3629 (Yergeau 2003), section 4: the ends of every range of its grammar, just inside and just outside.
TEST(Utf8, TheGrammarOfRfc3629) {
    for (const char* good : {"", "\x7F", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xED\x9F\xBF",
                             "\xEE\x80\x80", "\xEF\xBF\xBF", "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF"})
        EXPECT_EQ(first_bad_byte(good), std::nullopt) << good;
    for (const char* bad : {"\x80", "\xC1\xBF", "\xC2", "\xC2\x7F", "\xE0\x9F\xBF", "\xED\xA0\x80",
                            "\xEF\xBF", "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF"})
        EXPECT_EQ(first_bad_byte(std::string("ab") + bad), 2U) << bad;
}

}  // namespace
}  // namespace lowledger::exchange
