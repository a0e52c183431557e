#include "model/exchange/sheet_csv.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "model/exchange/slides_csv.h"
#include "model/units/refusal.h"

namespace lowledger::exchange {
namespace {

using testing::AllOf;
using testing::HasSubstr;

const horns::HornKind& three_valves() {
    return *horns::find_kind(horns::built_in_kinds(), "bbb-tuba-3");
}

std::string sheet_refusal(std::string_view rows, std::string_view head = "note,fingering,cents\n") {
    try {
        (void)read_sheet_csv(std::string(head) + std::string(rows), "sheet.csv", three_valves());
    } catch (const units::Refusal& refusal) {
        return refusal.what();
    }
    return "read without complaint";
}

std::string slides_refusal(std::string_view rows) {
    try {
        (void)read_slides_csv("slide,position,least,travel\n" + std::string(rows), "slides.csv",
                              three_valves());
    } catch (const units::Refusal& refusal) {
        return refusal.what();
    }
    return "read without complaint";
}

TEST(SheetCsv, ReadsEveryFormOfATunersNumber) {
    const auto readings = read_sheet_csv(
        "\xEF\xBB\xBFtake,note,fingering,cents\r\n1,Bb2,0,-7\r\n2,bb2,0,\"+12,5\"\r\n,F2,0,\xE2\x88\x92"
        "3\r\n1,Gb2,23,G-45\r\n",
        "sheet.csv", three_valves());
    ASSERT_EQ(readings.size(), 4U);
    EXPECT_EQ(readings[0], (studio::Reading{units::Pitch(46), {}, 4, 1, units::Cents(-7.0)}));
    EXPECT_EQ(readings[1].take, 2);
    EXPECT_EQ(readings[1].cents, units::Cents(12.5));
    EXPECT_EQ(readings[2], (studio::Reading{units::Pitch(41), {}, 3, 1, units::Cents(-3.0)}));
    EXPECT_EQ(readings[3].cents, units::Cents(55.0));
    EXPECT_EQ(readings[3].fingering.valves, (acoustics::ValveSet{2, 3}));
}

TEST(SheetCsv, OneNoteWithTwoFingeringsIsTwoReadings) {
    EXPECT_EQ(read_sheet_csv("note,fingering,cents\nD2,12,4\nD2,3,1\n", "s", three_valves()).size(), 2U);
}

TEST(SheetCsv, RefusalsNameFileLineAndColumnAndSayWhatToDo) {
    EXPECT_THAT(sheet_refusal("Bb2,0,1\nH2,0,1\n"),
                AllOf(HasSubstr("sheet.csv, line 3, column note:"), HasSubstr("\"H2\""), HasSubstr("Bb2")));
    EXPECT_THAT(sheet_refusal("Bb2,open,1\n"), HasSubstr("line 2, column fingering:"));
    EXPECT_THAT(sheet_refusal("Bb2,,1\n"), HasSubstr("line 2, column fingering:"));
    EXPECT_THAT(sheet_refusal("Bb2,4,1\n"),
                AllOf(HasSubstr("line 2, column fingering:"), HasSubstr("has no fingering 4")));
    EXPECT_THAT(sheet_refusal("Bb1,2,1\n"),
                AllOf(HasSubstr("line 2, column fingering:"), HasSubstr("Bb1 cannot be played with 2")));
    EXPECT_THAT(sheet_refusal("Bb2,0,sharp\n"), HasSubstr("line 2, column cents:"));
    EXPECT_THAT(sheet_refusal("Bb2,0,700\n"), HasSubstr("line 2, column cents:"));
    EXPECT_THAT(sheet_refusal("Bb2,0,nan\n"), HasSubstr("line 2, column cents:"));
    EXPECT_THAT(sheet_refusal("Bb2,0,\n"), HasSubstr("line 2, column cents: there is no number"));
    EXPECT_THAT(sheet_refusal("Bb2,0,1\nF2,0,2\nBb2,0,3\n"),
                AllOf(HasSubstr("line 4, column note:"), HasSubstr("line 2"), HasSubstr("take")));
    EXPECT_THAT(sheet_refusal("Bb2,0,1,2\nA#2,0,3,2\n", "note,fingering,cents,take\n"),
                HasSubstr("line 3, column take:"));
    EXPECT_THAT(sheet_refusal("Bb2,0,1,first\n", "note,fingering,cents,take\n"),
                HasSubstr("line 2, column take:"));
    EXPECT_THAT(sheet_refusal(""), HasSubstr("sheet.csv has no reading"));
}

TEST(SlidesCsv, ReadsPositionsAndKeepsTheKindsOwnWhereNothingIsTold) {
    const auto slides = read_slides_csv("slide,position,least,travel\nthird,half,,30\nmain,\"12,5\",0,\n",
                                        "slides.csv", three_valves());
    ASSERT_EQ(slides.size(), three_valves().slides.size());
    EXPECT_EQ(slides[0].slide.slide, "main");
    EXPECT_EQ(slides[0].position, units::Millimetres(12.5));
    EXPECT_EQ(slides[0].slide.least, units::Millimetres(0.0));
    EXPECT_EQ(slides[0].slide.travel, three_valves().slides[0].travel);
    const auto third = *three_valves().slide_index("third");
    EXPECT_EQ(slides[third].position, units::Millimetres(15.0));
    EXPECT_EQ(slides[third].slide.travel, units::Millimetres(30.0));
    EXPECT_EQ(slides[1], slides_of_kind(three_valves())[1]);
}

TEST(SlidesCsv, RefusalsNameFileLineAndColumnAndSayWhatToDo) {
    EXPECT_THAT(slides_refusal("main,10,5,70\nfourth,1,1,9\n"),
                AllOf(HasSubstr("slides.csv, line 3, column slide:"), HasSubstr("main, ")));
    EXPECT_THAT(slides_refusal("main,10,5,70\nmain,10,5,70\n"),
                AllOf(HasSubstr("line 3, column slide:"), HasSubstr("line 2")));
    EXPECT_THAT(slides_refusal("main,far,5,70\n"), HasSubstr("line 2, column position:"));
    EXPECT_THAT(slides_refusal("main,71,5,70\n"), HasSubstr("line 2, column position:"));
    EXPECT_THAT(slides_refusal("main,-1,5,70\n"), HasSubstr("line 2, column position:"));
    EXPECT_THAT(slides_refusal("main,10,75,70\n"), HasSubstr("line 2, column least:"));
    EXPECT_THAT(slides_refusal("main,10,5,long\n"), HasSubstr("line 2, column travel:"));
    EXPECT_THAT(slides_refusal("main,10,5,7000\n"), HasSubstr("line 2, column travel:"));
}

}  // namespace
}  // namespace lowledger::exchange
