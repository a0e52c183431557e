#include "app/batch/settings_table.h"

#include <algorithm>
#include <fmt/format.h>

#include "model/units/number_text.h"
#include "reports/words/check_words.h"
#include "reports/words/settings_words.h"
#include "reports/words/tuning_words.h"

namespace lowledger::batch {

namespace {

std::string cents(units::Cents value) {
    return units::signed_text(value.value(), 0, true);
}

std::string mm(units::Millimetres value) {
    const double whole = value.value();
    return units::decimal_text(whole, whole == static_cast<double>(static_cast<int>(whole)) ? 0 : 1);
}

std::string change(const tuning::SlideAnswer& slide) {
    const units::Millimetres by = slide.recommended - slide.now;
    if (slide.advice == tuning::Advice::fixed) return "keep";
    if (slide.advice == tuning::Advice::leave || by == units::Millimetres(0.0)) return "leave it";
    return fmt::format("{} {}", by > units::Millimetres(0.0) ? "pull" : "push in", mm(units::abs(by)));
}

bool stuck(const tuning::TuningInputs& inputs, const std::string& slide) {
    return std::any_of(inputs.slides.begin(), inputs.slides.end(),
                       [&](const studio::HornSlide& known) { return known.slide == slide && known.stuck; });
}

void add_slides(std::string& out, const tuning::SlideSettings& settings) {
    out += fmt::format("{:<8} {:>8} {:>8}  {:<12} {:>8} {:>6} {:>7}{}\n", "Slide", "now mm", "to mm",
                       "change", "sure to", "least", "travel", "  at limit");
    for (const tuning::SlideAnswer& slide : settings.slides) {
        const char* limit = slide.limit == tuning::Limit::least    ? "  least"
                            : slide.limit == tuning::Limit::travel ? "  travel"
                                                                   : "";
        out += fmt::format(
            "{:<8} {:>8} {:>8}  {:<12} {:>8} {:>6} {:>7}{}\n", slide.slide,
            slide.position_known ? mm(slide.now) : "unknown",
            slide.position_known ? mm(slide.recommended) : "?", change(slide),
            slide.half_width ? "\u00B1 " + units::decimal_text(slide.half_width->value(), 0) : "?",
            mm(slide.least), mm(slide.travel), limit);
    }
}

void add_notes(std::string& out, const tuning::TuningInputs& inputs, const tuning::SlideSettings& settings) {
    const auto labels = inputs.kind.valve_labels();
    out += fmt::format("{:<6} {:<9} {:>7} {:>5} {:>6}  {:>9} {:>7} {:>6}\n", "Note", "fingering", "partial",
                       "takes", "weight", "believed", "before", "after");
    for (const tuning::NoteAnswer& note : settings.notes)
        out +=
            fmt::format("{:<6} {:<9} {:>7} {:>5} {:>6}  {:>4} \u00B1 {:>2} {:>7} {:>6}{}\n",
                        units::file_name(note.note), horns::file_text(note.way.fingering, labels),
                        note.way.partial, note.way.takes, units::decimal_text(note.weight, 2),
                        cents(note.way.mean), units::decimal_text(note.way.spread.value(), 0),
                        cents(note.lean_before), cents(note.lean_after), note.is_usual ? "" : "  alternate");
}

}  // namespace

namespace {

void add_places(std::string& out, const words::Speech& speech, const tuning::TuningAnswer& answer) {
    if (answer.places_on_slide.empty()) return;
    const auto labels = speech.kind.valve_labels();
    out += fmt::format("\nPlaces on the hand slide, mm from all the way in (it ends at {:.0f}):\n",
                       speech.kind.hand_slide->value());
    for (const tuning::PlaceOnSlide& place : answer.places_on_slide)
        out += fmt::format("{:<6} {:<9} {:>5.0f}  {}\n", units::file_name(place.note),
                           horns::file_text(place.fingering, labels), place.out.value(),
                           words::place_on_slide_text(speech.words, place));
}

}  // namespace

std::string settings_table(const tuning::TuningInputs& inputs, const tuning::TuningAnswer& answer,
                           const horns::NoteStyle& style) {
    const words::Words words;
    const words::Speech speech{words, inputs.kind, style};
    const tuning::SlideSettings& settings = answer.settings;
    std::string out = fmt::format("{}. Sheets used: {}; readings used: {}.\n", inputs.kind.name,
                                  answer.profile.sheets_used, answer.profile.takes_used);
    for (const std::string& sentence : words::rests_on_others(words, answer.profile))
        out += sentence + "\n";
    for (const std::string& warning : words::warnings(speech, answer))
        out += warning + "\n";
    out += "\n";
    add_slides(out, settings);
    out += "\n";
    for (const tuning::SlideAnswer& slide : settings.slides)
        out += words::slide_rule_text(speech, answer, slide, stuck(inputs, slide.slide)) + "\n";
    for (const std::string& sentence : words::beside_settings(speech, answer))
        out += sentence + "\n";
    if (const auto home = words::hand_slide_home_sentence(speech, answer.card); !home.empty())
        out += home + "\n";
    if (answer.card.band_note) out += words::band_note_sentence(speech, *answer.card.band_note) + "\n";
    out += "\nNotes: lean in cents, sharp +, flat \u2212, as the slides should answer it.\n";
    add_notes(out, inputs, settings);
    out += fmt::format("Weighted mean lean: {} cents before, {} after. Objective: {} before, {} after.\n",
                       units::decimal_text(settings.mean_before.value(), 1),
                       units::decimal_text(settings.mean_after.value(), 1),
                       units::decimal_text(settings.objective_before.value(), 2),
                       units::decimal_text(settings.objective_after.value(), 2));
    add_places(out, speech, answer);
    if (!answer.remains.notes.empty()) out += "\nWhat remains:\n";
    for (const tuning::RemainingNote& note : answer.remains.notes)
        out += words::remaining_sentence(speech, answer.remains, note) + "\n";
    if (const std::string next = words::next_note_sentence(speech, answer); !next.empty())
        out += "\n" + next + "\n";
    return out;
}

}  // namespace lowledger::batch
