#include "reports/words/tuning_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "model/units/inches.h"
#include "model/units/number_text.h"
#include "reports/words/check_words.h"
#include "reports/words/names.h"

namespace lowledger::words {
namespace {

using tuning::Advice;
using tuning::CardStep;
using tuning::SlideAnswer;
using units::Cents;
using units::Millimetres;
using namespace units::literals;

/// Less than this is no move: it prints as 0 mm.
constexpr auto least_move = 0.5_mm;

std::string slide_name(const Speech& speech, const std::string& id) {
    const auto* const slide = speech.kind.slide(id);
    return slide != nullptr ? slide->name : id;
}

std::string held_sentence(const Speech& speech, const SlideAnswer& slide, bool stuck) {
    const std::string name = slide_name(speech, slide.slide);
    if (stuck) return speech.words.say(Sentence::slide_stuck, {{"slide", name}});
    if (!slide.position_known) return speech.words.say(Sentence::slide_held_here, {{"slide", name}});
    return speech.words.say(Sentence::slide_held,
                            {{"slide", name}, {"position", millimetres_text(slide.now)}});
}

std::string leave_sentence(const Speech& speech, const SlideAnswer& slide) {
    const std::string name = slide_name(speech, slide.slide);
    if (!slide.position_known) return speech.words.say(Sentence::slide_leave_here, {{"slide", name}});
    return speech.words.say(Sentence::slide_leave,
                            {{"slide", name}, {"position", millimetres_text(slide.now)}});
}

std::string move_sentence(const Speech& speech, const SlideAnswer& slide) {
    const Words& words = speech.words;
    const std::string name = slide_name(speech, slide.slide);
    const Millimetres change = slide.recommended - slide.now;
    const bool out = change > 0_mm;
    const std::string by = millimetres_text(abs(change));
    if (!slide.position_known) {
        return words.say(out ? Sentence::slide_pull_from_here : Sentence::slide_push_from_here,
                         {{"slide", name}, {"change", by}});
    }
    if (slide.recommended < least_move) {
        return words.say(Sentence::slide_push_home, {{"slide", name}, {"change", by}});
    }
    return words.say(out ? Sentence::slide_pull : Sentence::slide_push,
                     {{"slide", name}, {"change", by}, {"position", millimetres_text(slide.recommended)}});
}

/// A sentence in its five forms, by the rounded cents.
struct LeanForms {
    Sentence zero, sharp_one, sharp_many, flat_one, flat_many;
};

std::string lean_sentence(const Speech& speech, const LeanForms& forms, const std::string& played,
                          Cents lean) {
    const int count = whole_cents(lean);
    if (count == 0) return speech.words.say(forms.zero, {{"played", played}});
    const bool sharp = lean > 0_cents;
    return speech.words.say_counted(sharp ? forms.sharp_one : forms.flat_one,
                                    sharp ? forms.sharp_many : forms.flat_many, count, {{"played", played}});
}

const CardStep* step_of(const tuning::TuningCard& card, const std::string& slide) {
    const auto found = std::find_if(card.steps.begin(), card.steps.end(),
                                    [&](const CardStep& step) { return step.slide == slide; });
    return found == card.steps.end() ? nullptr : &*found;
}

const horns::TuningStep* missing_of(const tuning::TuningAnswer& answer, const std::string& slide) {
    const auto& missing = answer.enough.missing;
    const auto found = std::find_if(missing.begin(), missing.end(),
                                    [&](const horns::TuningStep& step) { return step.slide == slide; });
    return found == missing.end() ? nullptr : &*found;
}

std::string outlying_sentence(const Speech& speech, const tuning::OutlyingTake& take) {
    const bool sharp = take.from_fellows > 0_cents;
    const std::string name = played(speech, take.note, take.fingering);
    const std::string date = date_text(speech.words, take.on);
    const std::string count = std::to_string(whole_cents(take.from_fellows));
    const std::string weight = std::to_string(std::lround(100.0 * take.counted));
    if (take.only_take) {
        return speech.words.say(sharp ? Sentence::warn_only_take_sharp : Sentence::warn_only_take_flat,
                                {{"date", date},
                                 {"played", name},
                                 {"cents", cents_text(take.reading)},
                                 {"count", count},
                                 {"weight", weight}});
    }
    return speech.words.say(
        sharp ? Sentence::warn_take_from_others_sharp : Sentence::warn_take_from_others_flat,
        {{"date", date},
         {"played", name},
         {"take", std::to_string(take.take)},
         {"cents", cents_text(take.reading)},
         {"count", count},
         {"weight", weight}});
}

Sentence sentence_of(tuning::WhyNotUsed why) {
    switch (why) {
        case tuning::WhyNotUsed::cold:
            return Sentence::warn_cold_sheet;
        case tuning::WhyNotUsed::mute:
            return Sentence::warn_mute_sheet;
        case tuning::WhyNotUsed::no_readings:
            break;
    }
    return Sentence::warn_empty_sheet;
}

}  // namespace

std::string played(const Speech& speech, units::Pitch note, const horns::Fingering& fingering) {
    return played_note(speech.words, speech.kind, note_name(note, speech.style), fingering);
}

std::string played_and_tuner(const Speech& speech, units::Pitch note, const horns::Fingering& fingering) {
    std::string text = played(speech, note, fingering);
    if (!horns::calls_notes_otherwise(speech.style.reader)) return text;
    return speech.words.say(Sentence::played_and_tuner,
                            {{"played", text}, {"tuner", tuner_name(note, speech.style)}});
}

std::string slide_sentence(const Speech& speech, const SlideAnswer& slide, bool stuck) {
    if (slide.advice == Advice::fixed) return held_sentence(speech, slide, stuck);
    if (slide.advice == Advice::leave || abs(slide.recommended - slide.now) < least_move) {
        return leave_sentence(speech, slide);
    }
    return move_sentence(speech, slide);
}

std::string aim_sentence(const Speech& speech, const CardStep& step) {
    constexpr LeanForms forms = {Sentence::aim_zero, Sentence::aim_sharp_one, Sentence::aim_sharp_many,
                                 Sentence::aim_flat_one, Sentence::aim_flat_many};
    return lean_sentence(speech, forms, played_and_tuner(speech, step.note, step.fingering), step.aim);
}

std::string slide_rule_text(const Speech& speech, const tuning::TuningAnswer& answer,
                            const SlideAnswer& slide, bool stuck) {
    std::string text = slide_sentence(speech, slide, stuck);
    if (slide.advice == Advice::fixed) return text;
    if (const auto* const missing = missing_of(answer, slide.slide)) {
        return text + " " +
               speech.words.say(Sentence::slide_wait,
                                {{"played", played_and_tuner(speech, missing->note, missing->fingering)},
                                 {"slide", slide_name(speech, slide.slide)}});
    }
    if (slide.advice == Advice::move && slide.limit == tuning::Limit::travel) {
        text += " " + speech.words.say(Sentence::slide_at_travel);
    }
    if (slide.advice == Advice::move && slide.limit == tuning::Limit::least) {
        text += " " + speech.words.say(Sentence::slide_at_least);
    }
    const auto* const step = step_of(answer.card, slide.slide);
    if (step != nullptr && answer.profile.takes_used > 0) text += " " + aim_sentence(speech, *step);
    return text;
}

std::string differs_sentence(const Speech& speech, const CardStep& step, const SlideAnswer& slide) {
    const std::string low = cents_text(step.aim - step.tolerance);
    const std::string high = cents_text(step.aim + step.tolerance);
    if (step.advice == Advice::fixed) return speech.words.say(Sentence::differs_stuck);
    // A reading half as far out again as the tolerance stands for all that are outside; the note is played
    // again.
    const double per_mm = std::abs(step.cents_per_mm.value());
    const Millimetres further(per_mm > 0.0 ? step.part_of_miss * 1.5 * step.tolerance.value() / per_mm : 0.0);
    const Millimetres pull = std::min(further, slide.travel - step.to);
    const Millimetres push = std::min(further, step.to - slide.least);
    const bool may_pull = pull >= 1_mm;
    const bool may_push = push >= 1_mm;
    const std::string out = millimetres_text(pull);
    const std::string in = millimetres_text(push);
    if (may_pull && may_push) {
        return speech.words.say(Sentence::differs_both,
                                {{"low", low}, {"high", high}, {"pull", out}, {"push", in}});
    }
    if (may_pull)
        return speech.words.say(Sentence::differs_pull_only, {{"low", low}, {"high", high}, {"pull", out}});
    if (may_push)
        return speech.words.say(Sentence::differs_push_only, {{"low", low}, {"high", high}, {"push", in}});
    return speech.words.say(Sentence::differs_ask, {{"low", low}, {"high", high}});
}

std::string band_note_sentence(const Speech& speech, const tuning::BandNote& band) {
    constexpr LeanForms forms = {Sentence::band_note_zero, Sentence::band_note_sharp_one,
                                 Sentence::band_note_sharp_many, Sentence::band_note_flat_one,
                                 Sentence::band_note_flat_many};
    return lean_sentence(speech, forms, played_and_tuner(speech, band.note, band.fingering), band.reading);
}

std::string band_note_text(const Speech& speech, const tuning::BandNote& band) {
    return band_note_sentence(speech, band) + " " + speech.words.say(Sentence::band_note_keep);
}

std::string slide_offset_text(const Words& words, Millimetres offset) {
    struct Size {
        Millimetres below;
        Sentence out, in;
    };
    const std::array<Size, 4> sizes = {
        {{5_mm, Sentence::offset_touch_out, Sentence::offset_touch_in},
         {12_mm, Sentence::offset_little_out, Sentence::offset_little_in},
         {22_mm, Sentence::offset_finger_out, Sentence::offset_finger_in},
         {Millimetres(HUGE_VAL), Sentence::offset_well_out, Sentence::offset_well_in}}};
    constexpr auto seen = 1.5_mm;
    const Millimetres size = abs(offset);
    if (size < seen) return words.say(Sentence::offset_here);
    const auto* const fits =
        std::find_if(sizes.begin(), sizes.end() - 1, [&](const Size& each) { return size < each.below; });
    return words.say(offset > 0_mm ? fits->out : fits->in,
                     {{"length", millimetres_text(size)}, {"inches", units::inch_text(size)}});
}

std::string place_on_slide_text(const Words& words, const tuning::PlaceOnSlide& place) {
    constexpr auto heard = 2_cents;
    if (abs(place.left) < heard) return slide_offset_text(words, place.offset());
    return words.say(place.reach == tuning::Reach::closed ? Sentence::slide_all_in : Sentence::slide_at_end);
}

std::string hand_slide_home_sentence(const Speech& speech, const tuning::TuningCard& card) {
    if (!speech.kind.hand_slide) return {};
    return speech.words.say(Sentence::hand_slide_home, {{"length", millimetres_text(card.hand_slide_home)},
                                                        {"inches", units::inch_text(card.hand_slide_home)}});
}

std::string caution_of_kind(const Words& words, std::string_view caution) {
    const auto* const found = std::find(sentence_ids.begin(), sentence_ids.end(), caution);
    if (found == sentence_ids.end()) return std::string(caution);
    return words.say(static_cast<Sentence>(found - sentence_ids.begin()));
}

std::string told_apart(const Speech& speech, const tuning::Remains& remains, units::Pitch note) {
    std::string name = note_name(note, speech.style);
    std::set<units::Pitch> lower;
    std::set<units::Pitch> higher;
    for (const auto& other : remains.notes) {
        if (note_name(other.note, speech.style) != name) continue;
        if (other.note < note) lower.insert(other.note);
        if (other.note > note) higher.insert(other.note);
    }
    if (lower.empty() && higher.empty()) return name;
    if (lower.size() + higher.size() > 2) return note_name_with_octave(note, speech.style);
    const Sentence place = lower.empty()    ? Sentence::note_low
                           : higher.empty() ? Sentence::note_high
                                            : Sentence::note_middle;
    return speech.words.say(place, {{"note", name}});
}

std::string remaining_sentence(const Speech& speech, const tuning::Remains& remains,
                               const tuning::RemainingNote& note) {
    const std::string name = capitalised(
        played_note(speech.words, speech.kind, told_apart(speech, remains, note.note), note.fingering));
    const std::string cents = cents_text(note.lean);
    const bool sharp = note.lean > 0_cents;
    switch (note.next) {
        case tuning::Remedy::hand_slide:
            return speech.words.say(
                Sentence::remains_slide,
                {{"played", name},
                 {"cents", cents},
                 {"where", slide_offset_text(speech.words, note.slide_by.value_or(0_mm))}});
        case tuning::Remedy::slide_while_playing:
            return speech.words.say(Sentence::remains_slide_while_playing,
                                    {{"played", name},
                                     {"cents", cents},
                                     {"slide", slide_name(speech, note.slide.value_or(""))},
                                     {"length", millimetres_text(note.slide_by.value_or(0_mm))}});
        case tuning::Remedy::other_fingering:
            return speech.words.say(
                Sentence::remains_fingering,
                {{"played", name},
                 {"cents", cents},
                 {"fingering", fingering_label(speech.kind, note.instead.value_or(note.fingering))},
                 {"left", cents_text(note.lean_instead.value_or(note.lean))}});
        case tuning::Remedy::air:
            return speech.words.say(sharp ? Sentence::remains_air_sharp : Sentence::remains_air_flat,
                                    {{"played", name}, {"cents", cents}});
        case tuning::Remedy::embouchure:
            return speech.words.say(
                sharp ? Sentence::remains_embouchure_sharp : Sentence::remains_embouchure_flat,
                {{"played", name}, {"cents", cents}, {"bend", std::to_string(whole_cents(note.bend))}});
        case tuning::Remedy::beyond_player:
            break;
    }
    return speech.words.say(Sentence::remains_beyond, {{"played", name}, {"cents", cents}});
}

std::string missing_notes(const Speech& speech, const tuning::TuningAnswer& answer) {
    std::string notes;
    for (const auto& step : answer.enough.missing) {
        if (!notes.empty()) notes += ", ";
        notes += played(speech, step.note, step.fingering);
    }
    return notes;
}

std::vector<std::string> warnings(const Speech& speech, const tuning::TuningAnswer& answer) {
    std::vector<std::string> all;
    const Words& words = speech.words;
    if (answer.profile.takes_used == 0) all.push_back(words.say(Sentence::warn_no_readings));
    if (answer.profile.takes_used > 0 && !answer.enough.tuning_notes_in()) {
        all.push_back(words.say(Sentence::warn_notes_missing, {{"notes", missing_notes(speech, answer)}}));
    }
    for (const auto& sheet : answer.profile.not_used)
        all.push_back(words.say(sentence_of(sheet.why), {{"date", date_text(words, sheet.on)}}));
    for (const auto& take : answer.profile.outlying)
        all.push_back(outlying_sentence(speech, take));
    for (const auto& check : answer.profile.moves) {
        if (check.told) all.push_back(move_sentence(speech, check));
    }
    for (const auto& sheet : answer.profile.other_horn)
        all.push_back(other_horn_sentence(speech, sheet));
    for (const auto& slide : answer.settings.slides) {
        if (slide.position_known) continue;
        all.push_back(
            words.say(Sentence::warn_position_unknown, {{"slide", slide_name(speech, slide.slide)}}));
    }
    return all;
}

std::string next_note_sentence(const Speech& speech, const tuning::TuningAnswer& answer) {
    if (!answer.next_note) return {};
    return speech.words.say(
        Sentence::next_note,
        {{"played", played_and_tuner(speech, answer.next_note->note, answer.next_note->fingering)}});
}

}  // namespace lowledger::words
