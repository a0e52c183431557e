#pragma once

#include <map>
#include <random>

#include "model/tuning/measured.h"

namespace lowledger::tuning {

/// Draws unknowns and readings from the model itself, all sheets of one day, with a fixed seed.
class Drawing {
  public:
    explicit Drawing(unsigned seed) : random_(seed) {}

    /// Gives every reading of the answer's own sheets a value.
    void fill(TuningInputs& inputs);
    /// The same where the slides of a sheet stood elsewhere than it says.
    void fill(TuningInputs& inputs, std::size_t sheet,
              const std::map<std::string, units::Millimetres>& stood);

  private:
    double normal() { return normal_(random_); }
    double value(const Term& term);

    std::mt19937 random_;
    std::normal_distribution<double> normal_{0.0, 1.0};
    std::map<TermKey, double> unknowns_;
};

/// Two sheets of one day, two takes each of the tuning notes and some more; in between the main slide and the
/// first valve's went out.
TuningInputs before_and_after(studio::Level level, units::Millimetres main = units::Millimetres(20.0),
                              units::Millimetres first = units::Millimetres(15.0));

}  // namespace lowledger::tuning
