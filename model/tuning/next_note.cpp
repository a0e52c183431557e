#include "model/tuning/next_note.h"

#include "model/tuning/follow_reading.h"
#include "model/tuning/question.h"

namespace lowledger::tuning {
namespace {

/// Less than this, in cents squared, is not worth a note.
constexpr double least_worth = 0.01;

}  // namespace

std::optional<NextNote> next_note(const TuningInputs& inputs, const Belief& belief,
                                  const SettingsQuestion& question, const SlideSettings& settings,
                                  const EnoughReadings& enough) {
    if (!enough.missing.empty())
        return NextNote{enough.missing.front().note, enough.missing.front().fingering};
    const PlaceModel model = place_model_of(question, settings);
    const auto& notes = belief.profile.notes;
    const std::vector<std::size_t> ways = ways_of_question(inputs, belief.profile);
    std::optional<NextNote> best;
    double most = least_worth;
    for (std::size_t j = 0; j < notes.size(); ++j) {
        if (!notes[j].usual || !inputs.kind.core_range.contains(notes[j].note)) continue;
        std::vector<double> with_ways;
        with_ways.reserve(ways.size());
        for (const std::size_t i : ways)
            with_ways.push_back(belief.slides_by_reading[i * notes.size() + j]);
        const double saved = regret_saved(model, with_ways, belief.reading_variance[j]);
        if (saved > most) {
            most = saved;
            best = NextNote{notes[j].note, notes[j].fingering};
        }
    }
    return best;
}

}  // namespace lowledger::tuning
