#include "reports/words/tuning_words.h"

#include <gmock/gmock.h>

namespace lowledger::words {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::StartsWith;
using tuning::Advice;
using units::Cents;
using units::Millimetres;
using namespace units::literals;

const horns::HornKind& tuba() {
    return *horns::find_kind(horns::built_in_kinds(), "bbb-tuba-4");
}

/// Lengths are said with an unbreakable space; these tests are easier to read without.
std::string plain(std::string text) {
    for (auto at = text.find("\u00A0"); at != std::string::npos; at = text.find("\u00A0"))
        text.replace(at, 2, " ");
    return text;
}

tuning::SlideAnswer slide(Millimetres now, Millimetres to) {
    tuning::SlideAnswer answer;
    answer.slide = "main";
    answer.now = now;
    answer.recommended = to;
    answer.least = 5_mm;
    answer.travel = 70_mm;
    answer.advice = now == to ? Advice::leave : Advice::move;
    return answer;
}

tuning::CardStep step(Cents aim) {
    return {"main",
            units::Pitch(34),
            {},
            2,
            Advice::move,
            tuning::Limit::none,
            true,
            20_mm,
            35_mm,
            15_mm,
            aim,
            true,
            10_cents,
            0.48,
            units::CentsPerMillimetre(0.6),
            std::nullopt};
}

std::string said(const tuning::SlideAnswer& answer, bool stuck = false) {
    const Words words;
    return plain(slide_sentence({words, tuba()}, answer, stuck));
}

std::string aim_of(Cents aim) {
    const Words words;
    return plain(aim_sentence({words, tuba()}, step(aim)));
}

std::string differs(const tuning::SlideAnswer& answer, const tuning::CardStep& card) {
    const Words words;
    return plain(differs_sentence({words, tuba()}, card, answer));
}

TEST(SlideSentence, SaysHowFarAndWhichWay) {
    EXPECT_EQ(said(slide(20_mm, 35_mm)), "Pull the main slide 15 mm, to 35 mm.");
    EXPECT_EQ(said(slide(35_mm, 20_mm)), "Push the main slide in 15 mm, to 20 mm.");
    EXPECT_EQ(said(slide(12_mm, 0_mm)), "Push the main slide all the way in: that is 12 mm.");
    EXPECT_EQ(said(slide(20_mm, 20_mm)), "Leave the main slide at 20 mm.");
    EXPECT_EQ(said(slide(20_mm, 20.3_mm)), "Leave the main slide at 20 mm.");
}

TEST(SlideSentence, NamesNoPositionThatNobodyMeasured) {
    auto unknown = slide(20_mm, 35_mm);
    unknown.position_known = false;
    EXPECT_EQ(said(unknown), "Pull the main slide 15 mm from where it is now.");
    unknown.recommended = unknown.now;
    EXPECT_EQ(said(unknown), "Leave the main slide where it is.");
}

TEST(SlideSentence, AStuckSlideIsForATechnician) {
    auto held = slide(20_mm, 20_mm);
    held.advice = Advice::fixed;
    EXPECT_THAT(said(held), HasSubstr("your teacher keeps it there"));
    EXPECT_THAT(said(held, true), HasSubstr("repair technician"));
}

TEST(AimSentence, SaysSharpFlatAndInTune) {
    EXPECT_EQ(aim_of(2.3_cents), "Then open B\u266D should read about 2 cents sharp.");
    EXPECT_EQ(aim_of(1_cents), "Then open B\u266D should read about 1 cent sharp.");
    EXPECT_EQ(aim_of(Cents(-1)), "Then open B\u266D should read about 1 cent flat.");
    EXPECT_EQ(aim_of(Cents(-7)), "Then open B\u266D should read about 7 cents flat.");
    EXPECT_EQ(aim_of(Cents(-0.3)), "Then open B\u266D should read in tune.");
}

TEST(AimSentence, SaysWhatTheTunerShowsWhereThePartHasAnotherName) {
    const Words words;
    const horns::NoteStyle treble{
        .reader = {.id = "t", .name = "treble", .clef = horns::Clef::treble, .written_above = {26}}};
    EXPECT_EQ(plain(aim_sentence({words, tuba(), treble}, step(2_cents))),
              "Then open C (the tuner shows B\u266D) should read about 2 cents sharp.");
    EXPECT_EQ(plain(aim_sentence({words, tuba(), {.naming = units::Naming::german}}, step(0_cents))),
              "Then open B should read in tune.");
}

TEST(DiffersSentence, MovesAPartOfTheMissWithinTheSlidesLimits) {
    // 0.48 of 15 cents at 0.6 cents a millimetre.
    EXPECT_EQ(differs(slide(20_mm, 35_mm), step(2_cents)),
              "From \u22128 to +12: go on. Sharper: pull 12 mm. Flatter: push in 12 mm.");
    auto far_out = slide(20_mm, 35_mm);
    far_out.travel = 35_mm;
    EXPECT_THAT(differs(far_out, step(2_cents)), HasSubstr("Sharper: tell your teacher"));
    auto far_in = slide(20_mm, 35_mm);
    far_in.least = 35_mm;
    EXPECT_THAT(differs(far_in, step(2_cents)), HasSubstr("Flatter: tell your teacher"));
    far_in.travel = 35_mm;
    EXPECT_THAT(differs(far_in, step(2_cents)), HasSubstr("If not, tell"));
}

TEST(DiffersSentence, MovesNothingThatIsHeld) {
    auto held = step(2_cents);
    held.advice = Advice::fixed;
    EXPECT_THAT(differs(slide(20_mm, 20_mm), held), HasSubstr("Write down what it reads"));
}

TEST(RemainingSentence, GoesFromHornToAirToLips) {
    const Words words;
    tuning::RemainingNote note{units::Pitch(42),
                               {{1, 2, 3}, 0},
                               3,
                               18_cents,
                               4_cents,
                               tuning::Remedy::other_fingering,
                               horns::Fingering{{2, 4}, 0},
                               4_cents,
                               Cents(-12),
                               0.9,
                               2};
    EXPECT_EQ(plain(remaining_sentence({words, tuba()}, {}, note)),
              "G\u266D with valves 1-2-3 leans +18: play it with 2-4 instead, which should leave +4.");
    note.next = tuning::Remedy::air;
    EXPECT_THAT(remaining_sentence({words, tuba()}, {}, note), HasSubstr("brings it down"));
    note.next = tuning::Remedy::embouchure;
    EXPECT_THAT(remaining_sentence({words, tuba()}, {}, note), HasSubstr("down by 12 in all"));
    note.next = tuning::Remedy::beyond_player;
    EXPECT_THAT(remaining_sentence({words, tuba()}, {}, note), HasSubstr("look at the horn"));
}

const horns::HornKind& trombone() {
    return *horns::find_kind(horns::built_in_kinds(), "tenor-trombone-f");
}

TEST(RemainingSentence, ATromboneNotesGoByTheSlide) {
    const Words words;
    tuning::RemainingNote note{.note = units::Pitch(62),
                               .fingering = {{}, 4},
                               .lean = Cents(-18),
                               .next = tuning::Remedy::hand_slide,
                               .slide_by = Millimetres(-18)};
    EXPECT_EQ(plain(remaining_sentence({words, trombone()}, {}, note)),
              "D in position 4 leans \u221218: play it a finger's breadth further in (18 mm, 11/16 in).");
}

TEST(SlidePlaces, AreSaidInWordsMillimetresAndSixteenths) {
    const Words words;
    EXPECT_EQ(slide_offset_text(words, 1_mm), "where it lies");
    EXPECT_EQ(plain(slide_offset_text(words, 3_mm)), "a touch further out (3 mm, 1/8 in)");
    EXPECT_EQ(plain(slide_offset_text(words, Millimetres(-8))), "a little further in (8 mm, 5/16 in)");
    EXPECT_EQ(plain(slide_offset_text(words, 30_mm)), "well further out (30 mm, 1 3/16 in)");
    tuning::PlaceOnSlide place{.note = units::Pitch(62),
                               .fingering = {{}, 1},
                               .plain = 3_mm,
                               .out = 0_mm,
                               .reach = tuning::Reach::closed,
                               .left = Cents(-9)};
    EXPECT_THAT(place_on_slide_text(words, place), HasSubstr("all the way in, where it stays flat"));
    place.reach = tuning::Reach::end;
    place.left = 9_cents;
    EXPECT_THAT(place_on_slide_text(words, place), HasSubstr("at the end of the slide"));
    place.left = 0_cents;
    EXPECT_THAT(place_on_slide_text(words, place), HasSubstr("a touch further in"));
}

TEST(SlidePlaces, FirstIsPlayedALittleOutOnATromboneOnly) {
    const Words words;
    tuning::TuningCard card;
    card.hand_slide_home = 10_mm;
    EXPECT_THAT(plain(hand_slide_home_sentence({words, trombone()}, card)),
                HasSubstr("play first 10 mm (3/8 in) out"));
    EXPECT_EQ(hand_slide_home_sentence({words, tuba()}, card), "");
}

TEST(Cautions, OfEveryKindAreSentences) {
    const Words words;
    for (const horns::HornKind& kind : horns::built_in_kinds())
        for (const std::string& caution : kind.cautions)
            EXPECT_NE(caution_of_kind(words, caution), caution) << kind.id;
}

TEST(RemainingSentence, TellsNotesOfOneNameApart) {
    const Words words;
    const auto open = [](int midi) {
        return tuning::RemainingNote{.note = units::Pitch(midi), .lean = 18_cents};
    };
    const auto of = [&](const tuning::Remains& remains, std::size_t at) {
        return plain(remaining_sentence({words, tuba()}, remains, remains.notes.at(at)));
    };
    tuning::Remains remains;
    remains.notes = {open(34), open(58), open(53)};
    EXPECT_THAT(of(remains, 0), StartsWith("Open low B\u266D leans"));
    EXPECT_THAT(of(remains, 1), StartsWith("Open high B\u266D leans"));
    EXPECT_THAT(of(remains, 2), StartsWith("Open F leans"));
    remains.notes.push_back(open(46));
    EXPECT_THAT(of(remains, 3), StartsWith("Open middle B\u266D leans"));
    // A second fingering of one pitch is no other pitch.
    remains.notes.push_back(remains.notes[0]);
    EXPECT_THAT(of(remains, 3), StartsWith("Open middle B\u266D leans"));
    remains.notes.push_back(open(70));
    EXPECT_THAT(of(remains, 0), StartsWith("Open B\u266D1 leans"));
}

TEST(Warnings, ComeInOrderAndNameTheirSheet) {
    const Words words;
    tuning::TuningAnswer answer;
    answer.profile.takes_used = 3;
    answer.enough.missing = {{"second", units::Pitch(33), {{2}, 0}}};
    answer.profile.not_used = {{{}, {2026, 11, 2}, tuning::WhyNotUsed::cold}};
    answer.profile.outlying = {{{}, {2026, 11, 3}, units::Pitch(34), {}, 2, 31_cents, 24_cents, false}};
    tuning::MoveCheck moved{.sheet = {}, .on = {2026, 11, 4}, .since = {2026, 11, 3}};
    moved.likeliest = {.what = tuning::MoveKind::another_slide, .slide = "main", .instead = "second"};
    answer.profile.moves = {moved, moved, moved};
    answer.profile.moves[1].told = true;
    answer.profile.moves[2].told = true;
    answer.profile.moves[2].likeliest = {.what = tuning::MoveKind::elsewhere, .slide = "main", .off = -12_mm};
    answer.profile.other_horn = {{.sheet = {}, .on = {2026, 11, 5}, .log_ratio = 9.0}};
    auto unknown = slide(20_mm, 20_mm);
    unknown.position_known = false;
    answer.settings.slides = {unknown};
    std::vector<std::string> all;
    for (const auto& warning : warnings({words, tuba()}, answer))
        all.push_back(plain(warning));
    EXPECT_THAT(all, ElementsAre(HasSubstr("no slide is to be moved: A with valve 2."),
                                 HasSubstr("sheet of 2 November 2026"),
                                 HasSubstr("take 2, read +31, about 24 cents sharper"),
                                 HasSubstr("if the second valve slide was moved instead of the main slide"),
                                 HasSubstr("if the main slide stood about 12 mm further in"),
                                 HasSubstr("sheet of 5 November 2026 reads like another horn's"),
                                 HasSubstr("Where the main slide")));
}

TEST(SlideRuleText, SaysToMoveNothingBeforeItsNoteIsIn) {
    const Words words;
    tuning::TuningAnswer answer;
    answer.profile.takes_used = 1;
    answer.enough.missing = {{"main", units::Pitch(34), {}}};
    EXPECT_EQ(plain(slide_rule_text({words, tuba()}, answer, slide(20_mm, 20_mm), false)),
              "Leave the main slide at 20 mm. Two readings of open B\u266D will show where the main slide "
              "belongs.");
    answer.enough.missing.clear();
    answer.card.steps = {step(2_cents)};
    auto out = slide(20_mm, 70_mm);
    out.limit = tuning::Limit::travel;
    EXPECT_EQ(
        plain(slide_rule_text({words, tuba()}, answer, out, false)),
        "Pull the main slide 50 mm, to 70 mm. That is as far out as it may go. Then open B\u266D should read "
        "about 2 cents sharp.");
}

}  // namespace
}  // namespace lowledger::words
