#include "reports/canvas/unicode.h"

#include <gtest/gtest.h>

namespace lowledger::canvas {
namespace {

TEST(Printable, LeavesPlainTextAlone) {
    EXPECT_EQ(printable("Tuba, 3rd valve: 12 mm"), "Tuba, 3rd valve: 12 mm");
    EXPECT_EQ(printable(""), "");
}

TEST(Printable, ComposesAccents) {
    // Examples of Unicode Standard Annex 15, figures 3 and 4: A + ring, o + circumflex, angstrom sign, two
    // marks in either order.
    EXPECT_EQ(printable("A\u030A"), "\u00C5");
    EXPECT_EQ(printable("o\u0302"), "\u00F4");
    EXPECT_EQ(printable("\u212B"), "\u00C5");
    EXPECT_EQ(printable("s\u0323\u0307"), "\u1E69");
    EXPECT_EQ(printable("s\u0307\u0323"), "\u1E69");
    EXPECT_EQ(printable("q\u0307\u0323"), "q\u0323\u0307");
}

TEST(Printable, ShowsWhatIsNoUtf8) {
    EXPECT_EQ(printable("M\xFCller"), "M\uFFFDller");
    EXPECT_EQ(printable("cut \xE2\x99"), "cut \uFFFD\uFFFD");
    EXPECT_EQ(printable("\xC0\xAF"), "\uFFFD\uFFFD");
    EXPECT_EQ(printable("\xED\xA0\x80"), "\uFFFD\uFFFD\uFFFD");
}

TEST(Printable, TurnsControlsIntoSpacesAndDropsInvisibles) {
    EXPECT_EQ(printable("a\tb\nc\x7F"), "a b c ");
    EXPECT_EQ(printable(std::string_view("a\0b", 3)), "a b");
    EXPECT_EQ(printable("\uFEFFa\u200Bb\u00ADc\u200Dd"), "abcd");
}

TEST(Characters, KnowTheirBytes) {
    const auto all = characters("B\u266D\U0001D122");
    ASSERT_EQ(all.size(), 3U);
    EXPECT_EQ(all[1].code_point, U'\u266D');
    EXPECT_EQ(all[1].offset, 1U);
    EXPECT_EQ(all[2].code_point, U'\U0001D122');
    EXPECT_EQ(all[2].length, 4U);
    EXPECT_EQ(utf8(U'\u266D'), "\u266D");
}

TEST(Shaping, IsNeededByScriptsThatJoinStackOrRunRightToLeft) {
    for (const char32_t c : U"\u0628\u05D0\u0915\u0E01\u1780\u1000\u0710")
        EXPECT_TRUE(needs_shaping(c) || c == 0) << std::hex << static_cast<unsigned>(c);
    for (const char32_t c : U"a\u017B\u03A9\u0416\u0531\u10D0\u4F60\u3042\uAC00\u1200\u13A0\u266D\u0301 7")
        EXPECT_FALSE(needs_shaping(c)) << std::hex << static_cast<unsigned>(c);
}

}  // namespace
}  // namespace lowledger::canvas
