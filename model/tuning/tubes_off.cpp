#include "model/tuning/tubes_off.h"

namespace lowledger::tuning {

std::vector<TubeOff> tubes_off(const SettingsQuestion& question, const SlideSettings& settings) {
    std::vector<TubeOff> all;
    for (std::size_t i = 0; i < settings.slides.size(); ++i) {
        const SlideAnswer& slide = settings.slides[i];
        if (slide.limit == Limit::none || slide.advice == Advice::fixed || !slide.position_known) continue;
        units::Cents sum(0.0);
        double weight = 0.0;
        for (const NoteAnswer& note : settings.notes) {
            if (!acoustics::acts(question.tube.slides[i], note.way.fingering.valves)) continue;
            sum += note.weight * note.lean_after;
            weight += note.weight;
        }
        if (weight <= 0.0) continue;
        const units::Cents left = sum / weight;
        const units::Cents towards_limit = slide.limit == Limit::travel ? left : -left;
        if (towards_limit >= question.constants.worth_moving) all.push_back({slide.slide, slide.limit, left});
    }
    return all;
}

}  // namespace lowledger::tuning
