#include "reports/words/settings_words.h"

#include <gmock/gmock.h>

#include "reports/words/tuning_words.h"

namespace lowledger::words {
namespace {

using testing::HasSubstr;
using units::Millimetres;
using namespace units::literals;

const horns::HornKind& tuba() {
    return *horns::find_kind(horns::built_in_kinds(), "bbb-tuba-3");
}

std::string plain(std::string text) {
    for (auto at = text.find("\u00A0"); at != std::string::npos; at = text.find("\u00A0"))
        text.replace(at, 2, " ");
    return text;
}

tuning::TuningAnswer with_mains(Millimetres alone, Millimetres with_player, bool known) {
    tuning::TuningAnswer answer;
    answer.profile.takes_used = 5;
    answer.both_mains = tuning::BothMains{"main", alone, with_player};
    tuning::SlideAnswer slide;
    slide.slide = "main";
    slide.position_known = known;
    answer.settings.slides.push_back(slide);
    return answer;
}

std::string said(const tuning::TuningAnswer& answer) {
    const Words words;
    return plain(both_mains_sentence({words, tuba()}, answer));
}

TEST(BothMainsWords, SayWhatThePlayerAddsAndTakes) {
    EXPECT_EQ(
        said(with_mains(32_mm, 38_mm, true)),
        "For the horn alone the main slide would belong at 32 mm; this player's settled pitch adds 6 mm.");
    EXPECT_THAT(said(with_mains(38_mm, 32_mm, true)), HasSubstr("takes 6 mm off"));
    EXPECT_THAT(said(with_mains(38_mm, 38_mm, true)), HasSubstr("changes nothing"));
    EXPECT_THAT(said(with_mains(32_mm, 38_mm, false)), HasSubstr("6 mm further out"));
    EXPECT_THAT(said(with_mains(38_mm, 32_mm, false)), HasSubstr("6 mm further in"));
    EXPECT_THAT(said(with_mains(38_mm, 38_mm, false)), HasSubstr("does not change"));
    EXPECT_EQ(said(tuning::TuningAnswer{}), "");
}

TEST(SetByWords, SayWhichNoteAndWhy) {
    const Words words;
    const horns::Fingering two_three{{2, 3}, 0};
    const tuning::NoteForSlide g_flat{units::Pitch(30), two_three, 2, 28_mm, 0.1};
    const tuning::NoteForSlide d_flat{units::Pitch(37), two_three, 3, 31_mm, 0.2};
    EXPECT_EQ(
        plain(set_by_sentence({words, tuba()}, {"third", {g_flat, d_flat}})),
        "Set the third valve slide by G♭ with valves 2-3 rather than D♭ with valves 2-3: one reading places "
        "it to ± 28 mm, against ± 31 mm.");
    EXPECT_THAT(plain(set_by_sentence({words, tuba()}, {"third", {d_flat, g_flat}})),
                HasSubstr("stands for more of the music"));
}

TEST(FamilyWords, AreOneRule) {
    const Words words;
    const tuning::FamilyRule rule{{{1, 2}, 0}, {{3}, 0}, {units::Pitch(31), units::Pitch(38)}, {}, {}, {}};
    EXPECT_THAT(plain(family_sentence({words, tuba()}, rule)), HasSubstr("play 3 for every 1-2 ("));
}

TEST(TubeWords, SendToTheTechnician) {
    const Words words;
    EXPECT_THAT(plain(tube_sentence({words, tuba()}, {"second", tuning::Limit::travel, 14_cents})),
                HasSubstr("about 14 cents sharp: the tube is too short. That is for a repair technician."));
    EXPECT_THAT(plain(tube_sentence({words, tuba()}, {"second", tuning::Limit::least, units::Cents(-1.2)})),
                HasSubstr("about 1 cent flat: the tube is too long."));
}

TEST(PulledWords, NameSlideAndLength) {
    const Words words;
    tuning::Remains remains{5_cents, {}};
    tuning::RemainingNote note{units::Pitch(36)};
    note.fingering = {{1, 3}, 0};
    note.lean = 14_cents;
    note.next = tuning::Remedy::slide_while_playing;
    note.slide = "first";
    note.slide_by = 17_mm;
    remains.notes.push_back(note);
    EXPECT_THAT(plain(remaining_sentence({words, tuba()}, remains, note)),
                HasSubstr("pull the first valve slide 17 mm further out while you play it"));
}

}  // namespace
}  // namespace lowledger::words
