#include "model/studio/questions.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "model/studio/file_words.h"
#include "model/studio/kind_of.h"
#include "model/units/refusal.h"

namespace lowledger::studio {
namespace {

using units::Millimetres;

Student named(const char* name, const char* short_name) {
    Student student;
    student.name = name;
    student.called = short_name;
    return student;
}

TEST(Questions, AStudentIsCalledByTheFirstWordUnlessTold) {
    EXPECT_EQ(called(named("Ines Maria Okonkwo", "")), "Ines");
    EXPECT_EQ(called(named("Ines Maria Okonkwo", "Nesh")), "Nesh");
    EXPECT_EQ(called(named("  \u0141ucja", "")), "\u0141ucja");
    EXPECT_EQ(called(named("", "")), "");
}

TEST(Questions, TheLatestPositionOfADayHolds) {
    const HornId horn{1};
    const auto at = [&](int id, const char* slide, Date on, double mm) {
        return SlidePosition{.id = {id}, .horn = horn, .slide = slide, .on = on, .position = Millimetres(mm)};
    };
    const std::vector<SlidePosition> history = {
        at(4, "main", Date(2026, 10, 1), 30.0), at(1, "main", Date(2026, 9, 1), 20.0),
        at(2, "first", Date(2026, 9, 1), 5.0), at(3, "main", Date(2026, 10, 1), 25.0)};
    using Positions = std::map<std::string, Millimetres>;
    EXPECT_EQ(positions_on(history, Date(2026, 8, 31)), Positions{});
    EXPECT_EQ(positions_on(history, Date(2026, 9, 30)),
              (Positions{{"main", Millimetres(20.0)}, {"first", Millimetres(5.0)}}));
    EXPECT_EQ(positions_on(history, Date(2026, 10, 1)),
              (Positions{{"main", Millimetres(30.0)}, {"first", Millimetres(5.0)}}));
}

TEST(Questions, TheLastDayOfAUseIsNoLongerOne) {
    const HornUse closed{
        .id = {1}, .student = {1}, .horn = {2}, .from = Date(2026, 9, 1), .until = Date(2026, 9, 3)};
    const HornUse open{.id = {2}, .student = {1}, .horn = {3}, .from = Date(2026, 9, 2), .until = {}};
    EXPECT_FALSE(holds_on(closed, Date(2026, 8, 31)));
    EXPECT_TRUE(holds_on(closed, Date(2026, 9, 1)));
    EXPECT_TRUE(holds_on(closed, Date(2026, 9, 2)));
    EXPECT_FALSE(holds_on(closed, Date(2026, 9, 3)));
    EXPECT_TRUE(holds_on(open, Date(2030, 1, 1)));
    const std::vector<HornUse> uses = {closed, open};
    EXPECT_THAT(horns_on(uses, {1}, Date(2026, 9, 2)), testing::ElementsAre(HornId{2}, HornId{3}));
    EXPECT_THAT(horns_on(uses, {1}, Date(2026, 9, 3)), testing::ElementsAre(HornId{3}));
    EXPECT_THAT(horns_on(uses, {9}, Date(2026, 9, 2)), testing::IsEmpty());
}

TEST(Questions, AHornIsMadeOfItsKindAndRemembersIt) {
    ASSERT_FALSE(horns::built_in_kinds().empty());
    for (const horns::HornKind& kind : horns::built_in_kinds()) {
        const Horn horn = horn_of(kind);
        EXPECT_EQ(horn.kind_id, kind.id);
        EXPECT_EQ(kind_of(horn), kind);
        const auto positions = designed_positions(kind, {7}, Date(2026, 9, 1));
        ASSERT_EQ(horn.slides.size(), kind.slides.size());
        ASSERT_EQ(positions.size(), kind.slides.size());
        for (std::size_t i = 0; i < kind.slides.size(); ++i) {
            const horns::SlideKind& slide = kind.slides[i];
            EXPECT_EQ(horn.slides[i], (HornSlide{slide.id, slide.least, slide.travel}));
            EXPECT_EQ(positions[i], (SlidePosition{.id = {},
                                                   .horn = {7},
                                                   .slide = slide.id,
                                                   .on = Date(2026, 9, 1),
                                                   .position = slide.designed,
                                                   .origin = SlidePosition::Origin::start}));
        }
    }
}

TEST(Questions, AKindThatCannotBeReadNamesTheHorn) {
    Horn horn;
    horn.mark = "T-4";
    horn.kind_text = "id = ";
    try {
        kind_of(horn);
        FAIL();
    } catch (const units::Refusal& refusal) {
        EXPECT_THAT(refusal.what(), testing::HasSubstr("T-4"));
    }
}

TEST(FileWords, EveryChoiceReadsBack) {
    for (const Level level : {Level::beginner, Level::middle, Level::advanced})
        EXPECT_EQ(parse_level(file_word(level)), level);
    for (const auto paper : {StudioFacts::Paper::a4, StudioFacts::Paper::letter})
        EXPECT_EQ(parse_paper(file_word(paper)), paper);
    for (const auto choice : {units::Accidentals::flats, units::Accidentals::sharps})
        EXPECT_EQ(parse_accidentals(file_word(choice)), choice);
    using Origin = SlidePosition::Origin;
    for (const auto origin : {Origin::start, Origin::measured, Origin::moved, Origin::repair})
        EXPECT_EQ(parse_origin(file_word(origin)), origin);
    EXPECT_EQ(parse_level("Beginner"), std::nullopt);
    EXPECT_EQ(parse_level(""), std::nullopt);
}

}  // namespace
}  // namespace lowledger::studio
