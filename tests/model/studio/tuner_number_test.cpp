#include "model/studio/tuner_number.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace lowledger::studio {
namespace {

using Verdict = TunerNumber::Verdict;

const units::Pitch b_flat_1 = *units::parse_pitch("Bb1");
const units::Pitch g_flat_2 = *units::parse_pitch("Gb2");

struct Case {
    const char* typed;
    units::Pitch expected;
    Verdict verdict;
    double cents;
};

void PrintTo(const Case& c, std::ostream* out) {
    *out << '"' << c.typed << "\" for " << units::file_name(c.expected);
}

class TunerNumberForms : public testing::TestWithParam<Case> {};

TEST_P(TunerNumberForms, IsUnderstood) {
    const Case& c = GetParam();
    const TunerNumber number = read_tuner_number(c.typed, c.expected);
    EXPECT_EQ(number.verdict, c.verdict) << number.sentence;
    if (c.verdict != Verdict::refused) {
        EXPECT_NEAR(number.cents.value(), c.cents, 1e-12);
    }
    EXPECT_EQ(number.sentence.empty(), c.verdict == Verdict::taken);
}

INSTANTIATE_TEST_SUITE_P(
    Plain, TunerNumberForms,
    testing::Values(Case{"-7", b_flat_1, Verdict::taken, -7}, Case{"+12", b_flat_1, Verdict::taken, 12},
                    Case{"12", b_flat_1, Verdict::taken, 12}, Case{"0", b_flat_1, Verdict::taken, 0},
                    Case{" 7,5 ", b_flat_1, Verdict::taken, 7.5}, Case{"7.5", b_flat_1, Verdict::taken, 7.5},
                    Case{"\u22127", b_flat_1, Verdict::taken, -7},
                    Case{"\u20137", b_flat_1, Verdict::taken, -7}, Case{"- 7", b_flat_1, Verdict::taken, -7},
                    Case{"-7 cents", b_flat_1, Verdict::taken, -7},
                    Case{"-7\u00a2", b_flat_1, Verdict::taken, -7}, Case{"50", b_flat_1, Verdict::taken, 50},
                    Case{"-50", b_flat_1, Verdict::taken, -50}, Case{"50.5", b_flat_1, Verdict::ask, 50.5},
                    Case{"-100", b_flat_1, Verdict::ask, -100}, Case{"100.5", b_flat_1, Verdict::refused, 0},
                    Case{"700", b_flat_1, Verdict::refused, 0}));

// Between a semitone's two names lie 100 cents, so G-45 read while G-flat is meant is 100 - 45 = +55.
INSTANTIATE_TEST_SUITE_P(
    Named, TunerNumberForms,
    testing::Values(Case{"G-45", g_flat_2, Verdict::ask, 55}, Case{"g -45", g_flat_2, Verdict::ask, 55},
                    Case{"G2-45", g_flat_2, Verdict::ask, 55}, Case{"F+48", g_flat_2, Verdict::ask, -52},
                    Case{"Gb-7", g_flat_2, Verdict::taken, -7}, Case{"F#-7", g_flat_2, Verdict::taken, -7},
                    Case{"F#2-7", g_flat_2, Verdict::taken, -7},
                    Case{"G\u266d\u22127", g_flat_2, Verdict::taken, -7},
                    Case{"Gb 7", g_flat_2, Verdict::taken, 7}, Case{"bb-7", b_flat_1, Verdict::taken, -7},
                    Case{"b-55", b_flat_1, Verdict::ask, 45}, Case{"A+60", b_flat_1, Verdict::ask, -40},
                    Case{"Bb2-7", b_flat_1, Verdict::ask, -7}, Case{"B2-90", b_flat_1, Verdict::ask, 10},
                    Case{"A0+3", b_flat_1, Verdict::ask, -97}, Case{"Cb-55", b_flat_1, Verdict::ask, 45},
                    Case{"D-45", g_flat_2, Verdict::refused, 0},
                    Case{"G+10", g_flat_2, Verdict::refused, 0}));

INSTANTIATE_TEST_SUITE_P(
    Neither, TunerNumberForms,
    testing::Values(Case{"", b_flat_1, Verdict::refused, 0}, Case{"   ", b_flat_1, Verdict::refused, 0},
                    Case{"flat", b_flat_1, Verdict::refused, 0}, Case{"seven", b_flat_1, Verdict::refused, 0},
                    Case{"Bb", b_flat_1, Verdict::refused, 0}, Case{"Bb2", b_flat_1, Verdict::refused, 0},
                    Case{"H-7", b_flat_1, Verdict::refused, 0}, Case{"+-7", b_flat_1, Verdict::refused, 0},
                    Case{"7-", b_flat_1, Verdict::refused, 0}, Case{"1,2,3", b_flat_1, Verdict::refused, 0},
                    Case{"nan", b_flat_1, Verdict::refused, 0}, Case{"inf", b_flat_1, Verdict::refused, 0},
                    Case{"1e1", b_flat_1, Verdict::refused, 0}, Case{"Bb#-7", b_flat_1, Verdict::refused, 0},
                    Case{"\xff\xfe", b_flat_1, Verdict::refused, 0}));

TEST(TunerNumber, RefusalsSayWhatToType) {
    EXPECT_THAT(read_tuner_number("seven", b_flat_1).sentence, testing::HasSubstr("\"seven\""));
    EXPECT_THAT(read_tuner_number("700", b_flat_1).sentence, testing::HasSubstr("700 cents from B\u266D1"));
    EXPECT_THAT(read_tuner_number("G", g_flat_2).sentence, testing::HasSubstr("G-7"));
}

TEST(TunerNumber, EveryNeighbourAgreesWithPlainCents) {
    for (int midi = 24; midi < 72; ++midi) {
        const units::Pitch expected(midi);
        for (int tenth = -995; tenth <= 995; tenth += 10) {
            // What a tuner shows for that lean: the nearest note and the rest.
            const int semitones = tenth > 500 ? 1 : tenth < -500 ? -1 : 0;
            const double rest = tenth / 10.0 - 100.0 * semitones;
            const std::string typed = units::file_name(expected + units::Semitones{semitones}) +
                                      (rest < 0 ? "" : "+") + std::to_string(rest);
            const TunerNumber number = read_tuner_number(typed, expected);
            ASSERT_NE(number.verdict, Verdict::refused) << typed << ": " << number.sentence;
            ASSERT_NEAR(number.cents.value(), tenth / 10.0, 1e-9) << typed;
            ASSERT_EQ(number.verdict == Verdict::ask, std::abs(tenth) > 500) << typed;
        }
    }
}

TEST(SlidePosition, IsReadInMillimetresOrWords) {
    const units::Millimetres travel(90.0);
    EXPECT_EQ(read_slide_position("20", travel), units::Millimetres(20.0));
    EXPECT_EQ(read_slide_position("12,5", travel), units::Millimetres(12.5));
    EXPECT_EQ(read_slide_position("12.5 mm", travel), units::Millimetres(12.5));
    EXPECT_EQ(read_slide_position(" In ", travel), units::Millimetres(0.0));
    EXPECT_EQ(read_slide_position("half", travel), units::Millimetres(45.0));
    for (const char* text : {"", "mm", "out", "-3", "a bit", "nan", "1,2,3"})
        EXPECT_EQ(read_slide_position(text, travel), std::nullopt) << text;
}

}  // namespace
}  // namespace lowledger::studio
