#pragma once

#include "tests/truth/world.h"

namespace lowledger::truth {

/// What a belief allows at most: the positions within the limits and the ways that minimise the expected
/// weighted mean |cents| itself, whatever moving and other fingerings cost (the Bayes rule of that loss,
/// found by NLopt's subplex method from where `near` put the slides, from where they stand and from two
/// places between).
tuning::SlideSettings least_expected(const tuning::SettingsQuestion& question,
                                     const tuning::SlideSettings& near);

/// A sheet of what is heard of these notes in the long run: read without any noise.
studio::TuningSheet long_run_sheet(const World& world, const Places& truly, const Places& written,
                                   const std::vector<Played>& notes);

/// The figures of one who reads so: nothing varies from take to take or from day to day.
const tuning::Figures& long_run_figures();

}  // namespace lowledger::truth
