#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>
#include <vector>

#include "model/horns/kind.h"
#include "model/units/refusal.h"

namespace lowledger::horns {
namespace {

using ::testing::HasSubstr;

/// The smallest file of a kind, one line a key.
const std::string whole = R"(id = "small"
name = "small horn"
fundamental = "Bb1"
clef = "bass"
usual_range = ["E2", "Bb4"]
core_range = ["Bb2", "Bb3"]
band_note = "Bb2"
[[valve]]
label = "1"
built_for_cents = 200
[[valve]]
label = "2"
built_for_cents = 100
[[slide]]
id = "main"
name = "main slide"
designed_mm = 12
travel_mm = 35
least_mm = 3
[[slide]]
id = "first"
name = "first valve slide"
valve = "1"
designed_mm = 6
travel_mm = 25
least_mm = 2
[[tuning]]
slide = "main"
note = "Bb2"
fingering = "0"
)";

std::string with(const std::string& old_text, const std::string& new_text) {
    std::string text = whole;
    const auto at = text.find(old_text);
    EXPECT_NE(at, std::string::npos) << old_text;
    text.replace(at, old_text.size(), new_text);
    return text;
}

/// The sentence that a file is refused with; empty if it is not.
std::string refusal(const std::string& text) {
    try {
        read_kind(text, "kinds/small.toml");
    } catch (const units::Refusal& refused) {
        return refused.what();
    }
    return {};
}

TEST(ReadKind, ReadsTheSmallestWholeFile) {
    const HornKind kind = read_kind(whole, "kinds/small.toml");
    EXPECT_EQ(kind.id, "small");
    EXPECT_EQ(kind.valves.size(), 2U);
    EXPECT_EQ(kind.slide("first")->valve, 1);
    EXPECT_EQ(kind.slide("main")->legs, 2.0);
    EXPECT_EQ(kind.source_text, whole);
}

struct Wrong {
    const char* old_text;
    const char* new_text;
    /// All of these are in the sentence.
    std::vector<const char*> told;
};

const Wrong wrongs[] = {
    Wrong{"id = \"small\"\n", "", {"'id'", "missing"}},
    Wrong{"clef = \"bass\"", "clef = \"C\"", {"line 4", "'clef'", "\"bass\", \"treble\""}},
    Wrong{"clef = \"bass\"", "cleff = \"bass\"", {"line 4", "'cleff'", "the keys are", "clef"}},
    Wrong{"fundamental = \"Bb1\"", "fundamental = \"H1\"", {"line 3", "'fundamental'", "sounding note"}},
    Wrong{"fundamental = \"Bb1\"", "fundamental = 34", {"line 3", "'fundamental'", "text in quotes"}},
    Wrong{"fundamental = \"Bb1\"", "fundamental = Bb1", {"line 3", "TOML"}},
    Wrong{"[\"E2\", \"Bb4\"]", "[\"Bb4\", \"E2\"]", {"line 5", "'usual_range'", "the lower first"}},
    Wrong{"[\"Bb2\", \"Bb3\"]", "[\"Bb2\", \"Bb5\"]", {"line 6", "'core_range'", "inside usual_range"}},
    Wrong{"built_for_cents = 200", "built_for_cents = -200", {"line 10", "'built_for_cents'", "10 to 1200"}},
    Wrong{"built_for_cents = 200", "built_for_cents = nan", {"line 10", "'built_for_cents'", "10 to 1200"}},
    Wrong{"built_for_cents = 200", "built_for_cents = 50\nbuilt_with = [\"2\"]", {"line 10", "no tube"}},
    Wrong{"built_for_cents = 200",
          "built_for_cents = 200\nbuilt_with = [\"3\"]",
          {"line 11", "'built_with'", "\"3\"", "it has 1, 2"}},
    Wrong{"built_for_cents = 200", "built_for_cents = 200\nbuilt_with = [\"1\"]", {"line 11", "circle"}},
    Wrong{
        "built_for_cents = 200", "built_for_cents = 200\nneeds = [\"1\"]", {"line 11", "'needs'", "itself"}},
    Wrong{"label = \"2\"", "label = \"1\"", {"line 12", "'label'", "second time"}},
    Wrong{"label = \"2\"", "label = \"+\"", {"line 12", "'label'", "'+'"}},
    Wrong{"id = \"first\"", "id = \"main\"", {"line 21", "'id'", "second time"}},
    Wrong{"valve = \"1\"", "valve = \"4\"", {"line 23", "'valve'", "\"4\"", "it has 1, 2"}},
    Wrong{"designed_mm = 12", "designed_mm = -1", {"line 17", "'designed_mm'", "0 to 2000"}},
    Wrong{"designed_mm = 12", "designed_mm = 36", {"line 17", "'designed_mm'", "least_mm to travel_mm"}},
    Wrong{"designed_mm = 12", "designed_mm = \"12\"", {"line 17", "'designed_mm'", "a number"}},
    Wrong{"slide = \"main\"\n", "slide = \"mian\"\n", {"line 28", "'slide'", "main, first"}},
    Wrong{"fingering = \"0\"", "fingering = \"3\"", {"line 30", "'fingering'", "1, 2"}},
    Wrong{"fingering = \"0\"", "fingering = \"1\"", {"line 30", "'fingering'", "does not sound Bb2"}},
    Wrong{"slide = \"main\"\n", "slide = \"first\"\n", {"line 30", "'fingering'", "valve of the slide"}},
    Wrong{"[[tuning]]", "[[loop]]\nvalve = \"1\"\nwith = \"1\"\n[[tuning]]", {"line 29", "'with'", "itself"}},
    Wrong{"[[tuning]]",
          "[[loop]]\nvalve = \"1\"\nwith = \"2\"\n[[loop]]\nvalve = \"2\"\nwith = \"1\"\n[[tuning]]",
          {"line 31", "'valve'", "once"}},
    Wrong{"[[tuning]]",
          "[[check]]\nnote = \"C3\"\nfingering = \"0\"\n[[tuning]]",
          {"line 29", "'fingering'", "does not sound C3"}},
    Wrong{"[[tuning]]",
          "[[reader]]\nid = \"bass\"\nname = \"again\"\nclef = \"bass\"\nwritten_above_semitones = "
          "2\n[[tuning]]",
          {"line 28", "'id'", "second time"}},
    Wrong{"[[tuning]]",
          "[[reader]]\nid = \"x\"\nname = \"x\"\nclef = \"bass\"\nwritten_above_semitones = 2.5\n[[tuning]]",
          {"line 31", "'written_above_semitones'", "whole number from 0 to 36"}},
    Wrong{"name = \"first valve slide\"", "name = \"main slide\"", {"line 22", "'name'", "second time"}},
    Wrong{"[[tuning]]", "[tuning]", {"line 27", "'tuning'", "[[tuning]]"}},
    Wrong{"fingering = \"0\"\n",
          "fingering = \"0\"\n[[taught]]\nnote = \"A2\"\nfingering = \"2\"\n[[taught]]\nnote = "
          "\"A2\"\nfingering = "
          "\"2\"\n",
          {"line 35", "'note'", "once"}},
};

TEST(ReadKind, RefusesWithFileLineKeyAndWhatIsAllowed) {
    for (const Wrong& wrong : wrongs) {
        const std::string sentence = refusal(with(wrong.old_text, wrong.new_text));
        EXPECT_THAT(sentence, HasSubstr("kinds/small.toml, line ")) << wrong.new_text;
        for (const char* part : wrong.told)
            EXPECT_THAT(sentence, HasSubstr(part)) << wrong.new_text;
    }
}

TEST(ReadKind, ACircleOfBuiltWithIsNamed) {
    std::string text = with("built_for_cents = 200", "built_for_cents = 300\nbuilt_with = [\"2\"]");
    const auto at = text.find("built_for_cents = 100");
    text.replace(at, 21, "built_for_cents = 300\nbuilt_with = [\"1\"]");
    EXPECT_THAT(refusal(text), HasSubstr("circle"));
}

/// A valve more than the small kind has, so that there is room for a circle of three.
std::string with_third_valve(std::string_view more) {
    return with("[[slide]]",
                "[[valve]]\nlabel = \"3\"\nbuilt_for_cents = 300\n" + std::string(more) + "\n[[slide]]");
}

TEST(ReadKind, ACircleOfLoopsIsNamed) {
    const auto loop = [](const char* valve, const char* switched_by) {
        return std::string("[[loop]]\nvalve = \"") + valve + "\"\nwith = \"" + switched_by + "\"\n";
    };
    EXPECT_EQ(refusal(with_third_valve(loop("1", "3") + loop("2", "3"))), "");
    EXPECT_EQ(refusal(with_third_valve(loop("1", "2") + loop("2", "3"))), "");
    const std::string circle = refusal(with_third_valve(loop("1", "2") + loop("2", "3") + loop("3", "1")));
    EXPECT_THAT(circle, HasSubstr("'with'"));
    EXPECT_THAT(circle, HasSubstr("circle"));
    EXPECT_THAT(circle, HasSubstr("kinds/small.toml, line "));
}

TEST(ReadKind, ACircleOfNeedsIsNamed) {
    std::string text = with("built_for_cents = 200", "built_for_cents = 200\nneeds = [\"2\"]");
    const auto at = text.find("built_for_cents = 100");
    text.insert(at, "needs = [\"1\"]\n");
    EXPECT_THAT(refusal(text), HasSubstr("circle"));
}

TEST(ReadKind, NothingOrRubbishIsRefusedWithTheLine) {
    EXPECT_THAT(refusal(""), HasSubstr("'id' of the kind is missing"));
    EXPECT_THAT(refusal("id = \"x\"\nid = \"y\"\n"), HasSubstr("line 2"));
    EXPECT_THAT(refusal(std::string("\xff\xfe\x00id", 5)), HasSubstr("TOML"));
}

}  // namespace
}  // namespace lowledger::horns
