#include "reports/words/words.h"

#include <gmock/gmock.h>

#include "model/units/refusal.h"

namespace lowledger::words {
namespace {

using testing::HasSubstr;

std::string refusal_of(const OwnTexts& own) {
    try {
        const Words words(own);
    } catch (const units::Refusal& refusal) {
        return refusal.what();
    }
    return "not refused";
}

TEST(Words, FillsEveryPlace) {
    const Words words;
    EXPECT_EQ(words.say(Sentence::slide_pull,
                        {{"slide", "main slide"}, {"position", "35 mm"}, {"change", "15 mm"}}),
              "Pull the main slide 15 mm, to 35 mm.");
}

TEST(Words, CountsOneAndMany) {
    const Words words;
    EXPECT_EQ(words.say_counted(Sentence::sheets_one, Sentence::sheets_many, 1), "1 tuning sheet");
    EXPECT_EQ(words.say_counted(Sentence::sheets_one, Sentence::sheets_many, 0), "0 tuning sheets");
    EXPECT_EQ(words.say_counted(Sentence::sheets_one, Sentence::sheets_many, 3), "3 tuning sheets");
}

TEST(Words, APlaceLeftEmptyOrTooManyIsTheCallersMistake) {
    const Words words;
    EXPECT_THROW(static_cast<void>(words.say(Sentence::slide_pull, {{"slide", "main slide"}})),
                 std::logic_error);
    EXPECT_THROW(static_cast<void>(words.say(Sentence::month_may, {{"slide", "main slide"}})),
                 std::logic_error);
    EXPECT_THROW(static_cast<void>(words.say(Sentence::handout_title, {{"pupil", "Ida"}})), std::logic_error);
}

TEST(Words, AFillingIsNotReadForPlaces) {
    const Words words;
    EXPECT_EQ(words.say(Sentence::handout_title, {{"student", "{student} }{"}}),
              "Tuning card for {student} }{");
}

TEST(Words, OwnTextReplacesById) {
    const Words words(OwnTexts{{"slide_pull", "{slide}: out to {position}!"}});
    EXPECT_EQ(
        words.say(Sentence::slide_pull, {{"slide", "Main"}, {"position", "35 mm"}, {"change", "15 mm"}}),
        "Main: out to 35 mm!");
    EXPECT_EQ(words.say(Sentence::month_may), "May");
}

TEST(Words, OwnTextsThatCannotBeUsedAreRefusedByName) {
    EXPECT_THAT(refusal_of({{"slide_pul", "x"}}), HasSubstr("\"slide_pul\""));
    EXPECT_THAT(refusal_of({{"slide_pull", ""}}), HasSubstr("\"slide_pull\" is empty"));
    EXPECT_THAT(refusal_of({{"slide_pull", "Pull {where}"}}), HasSubstr("{where}"));
    EXPECT_THAT(refusal_of({{"slide_pull", "Pull {slide"}}), HasSubstr("brace"));
    EXPECT_THAT(refusal_of({{"slide_pull", "Pull } it"}}), HasSubstr("brace"));
    EXPECT_THAT(refusal_of({{"slide_pull", "Pull {} it"}}), HasSubstr("brace"));
}

}  // namespace
}  // namespace lowledger::words
