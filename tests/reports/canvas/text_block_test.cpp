#include "reports/canvas/text_block.h"

#include <gmock/gmock.h>
#include <random>

#include "reports/canvas/unicode.h"

namespace lowledger::canvas {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using units::Millimetres;

/// Of sums of widths.
constexpr Millimetres rounding{1e-6};

class TextBlock : public testing::Test {
  protected:
    [[nodiscard]] Millimetres width(std::string_view text) const { return faces.width(text, style); }
    [[nodiscard]] std::vector<std::string> lines(std::string_view text, Millimetres wide) const {
        return wrapped(faces, text, style, wide);
    }

    Faces faces;
    TextStyle style;
};

std::string without_spaces(std::string text) {
    std::erase(text, ' ');
    std::erase(text, '\n');
    return text;
}

TEST_F(TextBlock, BreaksAtSpacesAndKeepsLineEnds) {
    EXPECT_THAT(lines("slide out\nvalve in", width("slide out")), ElementsAre("slide out", "valve in"));
    EXPECT_THAT(lines("slide out\r\n\r\nvalve in\n", width("slide out")),
                ElementsAre("slide out", "", "valve in"));
    EXPECT_THAT(lines("slide   out", width("slide")), ElementsAre("slide", "out"));
}

TEST_F(TextBlock, NothingIsNoLine) {
    EXPECT_THAT(lines("", Millimetres(50)), IsEmpty());
    EXPECT_EQ(block_height(faces, "", style, Millimetres(50)), Millimetres(0));
}

TEST_F(TextBlock, ALineExactlyAsWideAsItsBoxStaysWhole) {
    const std::string text = "Pull the main slide";
    EXPECT_THAT(lines(text, width(text)), ElementsAre(text));
}

TEST_F(TextBlock, BreaksAfterAHyphenBetweenWordsOnly) {
    EXPECT_THAT(lines("third-valve", width("third-")), ElementsAre("third-", "valve"));
    EXPECT_THAT(lines("mouth/breath", width("mouth/")), ElementsAre("mouth/", "breath"));
    EXPECT_THAT(lines("on B-flat", width("B-flat")), ElementsAre("on", "B-flat"));
    EXPECT_THAT(lines("about -7 cents", width("about -")), ElementsAre("about", "-7", "cents"));
    EXPECT_THAT(lines("by 1/2 turn", width("by 1/")), ElementsAre("by", "1/2", "turn"));
}

TEST_F(TextBlock, ANoBreakSpaceHolds) {
    EXPECT_THAT(lines("to 35\u00A0mm", width("35\u00A0mm")), ElementsAre("to", "35\u00A0mm"));
}

TEST_F(TextBlock, AWordWiderThanTheBoxIsCutInside) {
    const std::string name(60, 'W');
    const auto cut = lines(name, Millimetres(30));
    EXPECT_GT(cut.size(), 3U);
    std::string joined;
    for (const auto& line : cut) {
        EXPECT_LE(width(line), Millimetres(30) + rounding);
        joined += line;
    }
    EXPECT_EQ(joined, name);
}

TEST_F(TextBlock, AMarkIsNeverCutFromItsLetter) {
    std::string word;
    for (int i = 0; i < 40; ++i)
        word += "\u1EB9\u0301";
    for (const auto& line : lines(word, Millimetres(11)))
        EXPECT_FALSE(is_combining(characters(line).front().code_point)) << line;
}

TEST_F(TextBlock, ABoxNarrowerThanALetterGetsOneALine) {
    EXPECT_THAT(lines("WWW", Millimetres(0.1)), ElementsAre("W", "W", "W"));
}

TEST_F(TextBlock, RandomTextIsNeverWiderThanItsBoxAndLosesNothing) {
    const std::vector<std::string> bits{"a",      "W",  "i",      "\u017C", "\u039E", "\u0416",
                                        "\u266D", "-",  "/",      " ",      "  ",     "\n",
                                        "mm",     "12", "\u4F60", "\u2026", "e\u0301"};
    std::mt19937 random(20261125);
    std::uniform_int_distribution<std::size_t> pick(0, bits.size() - 1);
    std::uniform_int_distribution<int> length(0, 200);
    std::uniform_real_distribution<double> box(6.0, 80.0);
    for (int trial = 0; trial < 300; ++trial) {
        std::string text;
        for (int n = length(random); n > 0; --n)
            text += bits[pick(random)];
        style.weight = trial % 2 == 0 ? Weight::regular : Weight::bold;
        const Millimetres wide(box(random));
        std::string joined;
        for (const auto& line : lines(text, wide)) {
            EXPECT_LE(width(line), wide + rounding) << line;
            joined += line;
        }
        EXPECT_EQ(without_spaces(joined), printable(without_spaces(text)));
    }
}

TEST_F(TextBlock, ShortenedFitsAndEndsInAnEllipsis) {
    const std::string name = "Wilhelmina Konstantynopolita\u0144czykowianeczka of the Long Meadow";
    EXPECT_EQ(shortened(faces, name, style, Millimetres(300)), name);
    for (int tenths = 5; tenths < 1000; tenths += 17) {
        const Millimetres wide(tenths / 10.0);
        const std::string part = shortened(faces, name, style, wide);
        EXPECT_LE(width(part), wide + rounding);
        EXPECT_TRUE(part.empty() || part.ends_with("\u2026")) << part;
    }
    EXPECT_THAT(shortened(faces, name, style, Millimetres(0.5)), IsEmpty());
}

TEST_F(TextBlock, AlignsByTheMeasuredWidth) {
    Page page{{Millimetres(100), Millimetres(100)}, {}};
    for (const Align align : {Align::left, Align::centre, Align::right})
        draw_text(page, faces, "B\u266D tuba", style, {Millimetres(50), Millimetres(10)}, align);
    const auto left = [&](std::size_t i) { return std::get<Text>(page.items.at(i)).baseline.x.value(); };
    const double wide = width("B\u266D tuba").value();
    EXPECT_DOUBLE_EQ(left(0), 50.0);
    EXPECT_DOUBLE_EQ(left(1), 50.0 - wide / 2.0);
    EXPECT_DOUBLE_EQ(left(2), 50.0 - wide);
}

TEST_F(TextBlock, ABlockIsAsHighAsItSays) {
    Page page{{Millimetres(100), Millimetres(100)}, {}};
    const std::string note = "Long slow breaths, then the open notes from low to high.";
    const Millimetres below =
        draw_block(page, faces, note, style, {Millimetres(10), Millimetres(20)}, Millimetres(35));
    EXPECT_DOUBLE_EQ((below - Millimetres(20)).value(),
                     block_height(faces, note, style, Millimetres(35)).value());
    EXPECT_EQ(page.items.size(), lines(note, Millimetres(35)).size());
}

}  // namespace
}  // namespace lowledger::canvas
