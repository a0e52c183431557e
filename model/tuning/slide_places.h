#pragma once

#include <vector>

#include "model/tuning/answer.h"
#include "model/tuning/moved_leans.h"

namespace lowledger::tuning {

/// What is expected of a note after the settings, as the student plays it: on a trombone with every position
/// `home` further out than from the slide all the way in, as the readings are.
units::Cents as_played_after(const horns::HornKind& kind, const ProfileNote& note, const MovedLeans& moved,
                             double kappa, units::Millimetres home);

/// Where the hand slide belongs for the usual way of every note of the chart, by pitch, after the settings.
/// Empty on a horn without one.
std::vector<PlaceOnSlide> places_on_slide(const TuningInputs& inputs, const TuningProfile& profile,
                                          const SettingsQuestion& question, const SlideSettings& settings);

}  // namespace lowledger::tuning
