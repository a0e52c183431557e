#include "model/tuning/question.h"

#include <algorithm>
#include <fmt/format.h>

#include "model/horns/hand_slide.h"
#include "model/tuning/measured.h"
#include "model/tuning/ways.h"
#include "model/units/refusal.h"

namespace lowledger::tuning {
namespace {

void check_slide(const horns::HornKind& kind, const std::string& id) {
    if (kind.slide(id) != nullptr) return;
    std::string known;
    for (const horns::SlideKind& slide : kind.slides)
        known += (known.empty() ? "" : ", ") + slide.id;
    throw units::Refusal(fmt::format("The {} has no slide \"{}\"; its slides are {}.", kind.name, id, known));
}

template <typename Map, typename Key, typename Value>
Value at_or(const Map& map, const Key& key, const Value& otherwise) {
    const auto at = map.find(key);
    return at == map.end() ? otherwise : at->second;
}

const studio::HornSlide* horn_slide(const TuningInputs& inputs, const std::string& id) {
    const auto at = std::ranges::find(inputs.slides, id, &studio::HornSlide::slide);
    return at == inputs.slides.end() ? nullptr : &*at;
}

bool is_fixed(const TuningInputs& inputs, const std::string& id) {
    const studio::HornSlide* slide = horn_slide(inputs, id);
    return inputs.hand.fixed.contains(id) || (slide != nullptr && slide->stuck);
}

QuestionSlide slide_of(const TuningInputs& inputs, const horns::SlideKind& kind, units::Millimetres now,
                       bool known) {
    const studio::HornSlide* own = horn_slide(inputs, kind.id);
    QuestionSlide slide;
    slide.slide = kind.id;
    slide.now = now;
    slide.least = at_or(inputs.hand.least, kind.id, own == nullptr ? kind.least : own->least);
    slide.travel = at_or(inputs.hand.travel, kind.id, own == nullptr ? kind.travel : own->travel);
    slide.fixed = is_fixed(inputs, kind.id);
    slide.position_known = known;
    // A guess has to lie between the limits, or nothing could be said.
    if (!known && slide.least <= slide.travel) slide.now = std::clamp(now, slide.least, slide.travel);
    return slide;
}

/// By level's ranges, or as the teacher says.
double weight_of(const TuningInputs& inputs, const Figures& figures, const ProfileNote& note) {
    const auto said = inputs.hand.weights.find(note.note);
    if (said != inputs.hand.weights.end()) return said->second;
    if (note.partial == 1 || note.partial == 7) return figures.weight_pedal_or_seventh;
    if (inputs.kind.core_range.contains(note.note)) return figures.weight_core;
    return inputs.kind.usual_range.contains(note.note) ? figures.weight_edge : 0.0;
}

SettingsConstants constants_of(const TuningInputs& inputs, const Figures& figures) {
    SettingsConstants constants;
    constants.flat_weight = figures.flat_weight;
    constants.cost_per_cent_moved = figures.cost_per_cent_moved;
    constants.worth_moving = figures.worth_moving;
    constants.chance_of_better = figures.chance_of_better;
    constants.chance_of_each = figures.chance_of_each;
    constants.most_mean_sharp = figures.most_mean_sharp;
    const bool is_long = horns::tube_of(inputs.kind).open >= figures.long_horn;
    if (inputs.kind.hand_slide) constants.hand_slide_home = figures.of(inputs.level).hand_slide_home;
    constants.step = inputs.hand.step.value_or(is_long ? figures.step_long : figures.step_short);
    return constants;
}

/// The lean of the band's note (as slides answer it) at which the student reads zero.
HeldNote held_note(const TuningInputs& inputs, const TuningProfile& profile,
                   const SettingsQuestion& question) {
    const ProfileNote* band = profile.usual(inputs.kind.band_note);
    const auto at = std::ranges::find(question.notes, inputs.kind.band_note, &QuestionNote::note);
    if (band == nullptr || at == question.notes.end()) {
        throw units::Refusal(
            fmt::format("{}, the note a band tunes to, is not in the chart of the {}; take the wish "
                        "that it read zero away.",
                        units::file_name(inputs.kind.band_note), inputs.kind.name));
    }
    const double horn_share = 1.0 - profile.correction.part;
    return {static_cast<std::size_t>(at - question.notes.begin()),
            band->slides_mean - band->aim / horn_share};
}

std::vector<double> covariance_of(const TuningProfile& profile, const std::vector<std::size_t>& ways) {
    const std::size_t size = profile.notes.size();
    std::vector<double> covariance;
    covariance.reserve(ways.size() * ways.size());
    for (const std::size_t i : ways) {
        for (const std::size_t j : ways)
            covariance.push_back(profile.slides_covariance[i * size + j]);
    }
    return covariance;
}

}  // namespace

void check_inputs(const TuningInputs& inputs) {
    for (const studio::HornSlide& slide : inputs.slides)
        check_slide(inputs.kind, slide.slide);
    for (const auto& [id, at] : inputs.positions)
        check_slide(inputs.kind, id);
    for (const std::string& id : inputs.hand.fixed)
        check_slide(inputs.kind, id);
    for (const auto* limits : {&inputs.hand.least, &inputs.hand.travel}) {
        for (const auto& [id, limit] : *limits)
            check_slide(inputs.kind, id);
    }
    for (const studio::TuningSheet& sheet : inputs.sheets) {
        for (const auto& [id, at] : sheet.positions)
            check_slide(inputs.kind, id);
    }
}

EnoughReadings enough_readings(const TuningInputs& inputs) {
    const SheetsSorted sheets = sort_sheets(inputs.sheets);
    const auto read = [&](const horns::Fingering& fingering) {
        return std::ranges::any_of(sheets.used, [&](const studio::TuningSheet* sheet) {
            return std::ranges::find(sheet->readings, fingering, &studio::Reading::fingering) !=
                   sheet->readings.end();
        });
    };
    EnoughReadings enough;
    for (const horns::TuningStep& step : inputs.kind.tuning_order) {
        if (!is_fixed(inputs, step.slide) && !read(step.fingering)) enough.missing.push_back(step);
    }
    if (sheets.used.empty()) enough.missing = inputs.kind.tuning_order;
    return enough;
}

std::vector<std::size_t> ways_of_question(const TuningInputs& inputs, const TuningProfile& profile) {
    // A hand slide places a note wherever the tuning slides stand: no other position is chosen to save moving
    // them.
    const bool alternates = may_use_alternates(inputs.kind, inputs.level) && !inputs.kind.hand_slide;
    std::vector<std::size_t> ways;
    for (std::size_t i = 0; i < profile.notes.size(); ++i) {
        if (profile.notes[i].usual || alternates) ways.push_back(i);
    }
    return ways;
}

SettingsQuestion question_of(const TuningInputs& inputs, const TuningProfile& profile,
                             const EnoughReadings& enough, const Figures& figures) {
    SettingsQuestion question;
    question.tube = horns::tube_of(inputs.kind);
    const SlidesToday today = slides_today(inputs);
    for (std::size_t i = 0; i < inputs.kind.slides.size(); ++i)
        question.slides.push_back(slide_of(inputs, inputs.kind.slides[i], today.at[i], today.known[i]));
    for (std::size_t i = 0; i < profile.slides.size(); ++i)
        question.tube.slides[i].bore = profile.slides[i].bore;
    question.constants = constants_of(inputs, figures);
    const auto ways = ways_of_question(inputs, profile);
    for (const std::size_t i : ways) {
        const ProfileNote& note = profile.notes[i];
        if (note.usual) question.notes.push_back({note.note, weight_of(inputs, figures, note), {}});
        question.notes.back().ways.push_back(
            {note.fingering, note.partial,
             note.slides_mean +
                 horns::change_by_hand_slide(inputs.kind, note.fingering, question.constants.hand_slide_home),
             note.slides_spread, note.takes,
             note.usual ? units::SquareCents(0.0) : figures.alternate_penalty});
    }
    question.covariance = covariance_of(profile, ways);
    question.may_move = enough.tuning_notes_in();
    if (inputs.hand.band_note_at_zero) question.held_note = held_note(inputs, profile, question);
    return question;
}

}  // namespace lowledger::tuning
