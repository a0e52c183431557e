#include "reports/words/certificate_words.h"

#include "model/units/number_text.h"
#include "reports/words/names.h"

namespace lowledger::words {
namespace {

/// What a closed certificate leaves open, and what is told of a smaller gap.
constexpr double smallest_percent = 1e-4;

std::string share_text(const tuning::TuningAnswer& answer) {
    const double whole = answer.settings.objective_after.value();
    const double percent = whole > 0.0 ? 100.0 * answer.certificate->gap.value() / whole : 0.0;
    const auto* const space = "\u00A0%";
    if (percent <= smallest_percent) return units::decimal_text(smallest_percent, 4) + space;
    return units::decimal_text(percent, percent < 1.0 ? 4 : 1) + space;
}

std::string positions_text(const Speech& speech, const tuning::TuningAnswer& answer) {
    std::string all;
    for (std::size_t i = 0; i < answer.certificate->better.size(); ++i) {
        const std::string& id = answer.settings.slides.at(i).slide;
        const auto* slide = speech.kind.slide(id);
        all += (all.empty() ? "" : ", ") + (slide == nullptr ? id : slide->name) + " " +
               millimetres_text(answer.certificate->better[i], 1);
    }
    return all;
}

}  // namespace

std::string certificate_sentence(const Speech& speech, const tuning::TuningAnswer& answer) {
    if (!answer.settings.anything_moves()) return {};
    if (!answer.certificate) return speech.words.say(Sentence::certificate_awaited);
    if (answer.certificate->better.empty())
        return speech.words.say(Sentence::certificate_bound, {{"share", share_text(answer)}});
    return speech.words.say(Sentence::certificate_beaten,
                            {{"share", share_text(answer)}, {"positions", positions_text(speech, answer)}});
}

}  // namespace lowledger::words
