#pragma once

#include "tests/truth/world.h"

namespace lowledger::truth {

/// What hands do to slides in one sitting; slides are where they truly stand.
class Hands {
  public:
    Hands(const World& world, Sitting sitting, Places truly_now)
        : world_(world), sitting_(std::move(sitting)), at_(std::move(truly_now)) {}

    /// The trade's procedure (common practice): in the kind's tuning order each slide is moved by what its
    /// note is off zero, and again, until the mean of so many takes is within a cent of it, at most five
    /// times.
    Places tune_to_zero(int takes);

    enum class Follow { mm_alone, reading_alone, card };
    /// The card: sets each slide to its mm, reads its note, and moves by the card's part of a miss beyond the
    /// tolerance (`card`); by all of any miss (`reading_alone`); never (`mm_alone`).
    Places follow(const tuning::TuningCard& card, Follow how);

    /// Sets the slides that are to move by the ruler.
    Places set_by_ruler(const tuning::SlideSettings& settings);

  private:
    units::Cents read(const Played& played, int takes);
    void set(const std::string& slide, units::Millimetres written);
    void pull(const std::string& slide, units::Millimetres by);

    const World& world_;
    Sitting sitting_;
    Places at_;
    int takes_ = 0;
};

}  // namespace lowledger::truth
