#include "tests/truth/hands.h"

#include <algorithm>

namespace lowledger::truth {

units::Cents Hands::read(const Played& played, int takes) {
    sitting_.places = at_;
    units::Cents sum(0.0);
    for (int k = 0; k < takes; ++k)
        sum += world_.shown(sitting_, played, ++takes_);
    return sum / takes;
}

void Hands::set(const std::string& slide, units::Millimetres written) {
    Places all;
    for (const horns::SlideKind& of_kind : world_.kind().slides)
        all[of_kind.id] = written;
    at_[slide] = world_.truly(all).at(slide);
}

void Hands::pull(const std::string& slide, units::Millimetres by) {
    const horns::SlideKind& limits = *world_.kind().slide(slide);
    at_[slide] = std::clamp(at_[slide] + by, limits.least, limits.travel);
}

Places Hands::tune_to_zero(int takes) {
    constexpr int most_moves = 5;
    constexpr units::Cents zero(1.0);
    const acoustics::Tube tube = horns::tube_of(world_.kind());
    for (const horns::TuningStep& step : world_.kind().tuning_order) {
        const auto slide = world_.kind().slide_index(step.slide);
        if (!slide) continue;
        const Played played = way_of(world_.kind(), step.note, step.fingering);
        const auto length = acoustics::designed_length(tube, step.fingering.valves);
        const auto slope =
            units::abs(acoustics::pull_slope(tube.slides[*slide], step.fingering.valves, length));
        for (int k = 0; k < most_moves; ++k) {
            const units::Cents miss = read(played, takes);
            if (units::abs(miss) <= zero) break;
            pull(step.slide, units::Millimetres(miss.value() / slope.value()));
        }
    }
    return at_;
}

Places Hands::follow(const tuning::TuningCard& card, Follow how) {
    units::Cents open_off(0.0);
    for (const tuning::CardStep& step : card.steps) {
        if (step.advice == tuning::Advice::fixed) continue;
        if (step.advice == tuning::Advice::move) set(step.slide, step.to);
        if (how == Follow::mm_alone) continue;
        const Played played{step.note, step.fingering, step.partial};
        const units::Cents aim = step.aim + (step.shifts_with_open_note ? open_off : units::Cents(0.0));
        const units::Cents miss = read(played, card.takes) - aim;
        const bool all = how == Follow::reading_alone;
        if (all || units::abs(miss) > step.tolerance) {
            const double part = all ? 1.0 : step.part_of_miss;
            pull(step.slide, units::Millimetres(part * miss.value() / step.cents_per_mm.value()));
            if (!step.shifts_with_open_note) open_off = read(played, card.takes) - aim;
        } else if (!step.shifts_with_open_note) {
            open_off = miss;
        }
    }
    return at_;
}

Places Hands::set_by_ruler(const tuning::SlideSettings& settings) {
    for (const tuning::SlideAnswer& slide : settings.slides) {
        if (slide.advice == tuning::Advice::move) set(slide.slide, slide.recommended);
    }
    return at_;
}

}  // namespace lowledger::truth
