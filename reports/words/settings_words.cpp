#include "reports/words/settings_words.h"

#include <algorithm>

#include "reports/words/names.h"
#include "reports/words/tuning_words.h"

namespace lowledger::words {
namespace {

using namespace units::literals;

std::string slide_name(const Speech& speech, const std::string& id) {
    const auto* const slide = speech.kind.slide(id);
    return slide != nullptr ? slide->name : id;
}

bool position_known(const tuning::TuningAnswer& answer, const std::string& id) {
    const auto& slides = answer.settings.slides;
    return std::ranges::any_of(slides, [&](const auto& s) { return s.slide == id && s.position_known; });
}

}  // namespace

std::string both_mains_sentence(const Speech& speech, const tuning::TuningAnswer& answer) {
    if (!answer.both_mains || answer.profile.takes_used == 0) return {};
    const tuning::BothMains& both = *answer.both_mains;
    constexpr auto seen = 0.5_mm;
    const units::Millimetres by = both.by_player();
    const std::string slide = slide_name(speech, both.slide);
    const std::string alone = millimetres_text(both.horn_alone);
    const std::string size = millimetres_text(abs(by));
    const Words& words = speech.words;
    if (!position_known(answer, both.slide)) {
        if (abs(by) < seen) return words.say(Sentence::main_player_none_from_here, {{"slide", slide}});
        return words.say(by > 0_mm ? Sentence::main_player_out_from_here : Sentence::main_player_in_from_here,
                         {{"slide", slide}, {"by", size}});
    }
    if (abs(by) < seen) return words.say(Sentence::main_player_none, {{"slide", slide}, {"alone", alone}});
    return words.say(by > 0_mm ? Sentence::main_player_out : Sentence::main_player_in,
                     {{"slide", slide}, {"alone", alone}, {"by", size}});
}

std::string set_by_sentence(const Speech& speech, const tuning::NotesForSlide& notes) {
    const tuning::NoteForSlide& best = notes.notes.at(0);
    const tuning::NoteForSlide& next = notes.notes.at(1);
    return speech.words.say(best.spread <= next.spread ? Sentence::set_by_surer : Sentence::set_by_weightier,
                            {{"slide", slide_name(speech, notes.slide)},
                             {"played", played_and_tuner(speech, best.note, best.fingering)},
                             {"other", played_and_tuner(speech, next.note, next.fingering)},
                             {"own", millimetres_text(best.spread)},
                             {"against", millimetres_text(next.spread)}});
}

std::string family_sentence(const Speech& speech, const tuning::FamilyRule& rule) {
    std::string notes;
    for (const units::Pitch note : rule.notes)
        notes += (notes.empty() ? "" : ", ") + note_name_with_octave(note, speech.style);
    return speech.words.say(Sentence::family_rule, {{"instead", fingering_label(speech.kind, rule.instead)},
                                                    {"usual", fingering_label(speech.kind, rule.usual)},
                                                    {"notes", notes}});
}

std::string tube_sentence(const Speech& speech, const tuning::TubeOff& tube) {
    const bool out = tube.limit == tuning::Limit::travel;
    return speech.words.say_counted(out ? Sentence::tube_too_short_one : Sentence::tube_too_long_one,
                                    out ? Sentence::tube_too_short_many : Sentence::tube_too_long_many,
                                    whole_cents(tube.left), {{"slide", slide_name(speech, tube.slide)}});
}

std::vector<std::string> beside_settings(const Speech& speech, const tuning::TuningAnswer& answer) {
    std::vector<std::string> all;
    for (const tuning::TubeOff& tube : answer.tubes_off)
        all.push_back(tube_sentence(speech, tube));
    if (const std::string both = both_mains_sentence(speech, answer); !both.empty()) all.push_back(both);
    for (const tuning::NotesForSlide& notes : answer.notes_for_slides)
        all.push_back(set_by_sentence(speech, notes));
    std::vector<horns::Fingering> told;
    for (const tuning::FamilyRule& rule : answer.families) {
        if (std::ranges::find(told, rule.usual) != told.end()) continue;
        told.push_back(rule.usual);
        all.push_back(family_sentence(speech, rule));
    }
    return all;
}

}  // namespace lowledger::words
