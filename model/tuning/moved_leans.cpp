#include "model/tuning/moved_leans.h"

#include "model/units/hertz.h"

namespace lowledger::tuning {

MovedLeans::MovedLeans(const SettingsQuestion& question, const SlideSettings& settings, double kappa)
    : tube_(question.tube), horn_share_(1.0 - kappa) {
    for (const SlideAnswer& slide : settings.slides) {
        now_.push_back(slide.now);
        after_.push_back(slide.recommended);
    }
}

units::Cents MovedLeans::on_horn(const horns::Fingering& fingering) const {
    const units::Millimetres before = acoustics::sounding_length(tube_, fingering.valves, now_);
    const units::Millimetres after = acoustics::sounding_length(tube_, fingering.valves, after_);
    // A hand slide in its plain position lengthens both by the same.
    const units::Millimetres hand_slide =
        fingering.position > 1 ? acoustics::designed_length(tube_, fingering.valves) *
                                     (units::ratio(units::Cents(100.0 * (fingering.position - 1))) - 1.0)
                               : units::Millimetres(0.0);
    return acoustics::change_by_tube(before + hand_slide, after - before);
}

units::Cents MovedLeans::as_played(const horns::Fingering& fingering) const {
    return horn_share_ * on_horn(fingering);
}

units::CentsPerMillimetre MovedLeans::slope(std::size_t slide, const horns::Fingering& fingering) const {
    return acoustics::pull_slope(tube_.slides[slide], fingering.valves,
                                 acoustics::sounding_length(tube_, fingering.valves, after_));
}

}  // namespace lowledger::tuning
