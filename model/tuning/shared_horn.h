#pragma once

#include <string>
#include <vector>

#include "model/tuning/settings.h"

namespace lowledger::tuning {

/// Where a slide of a horn belongs that several players share.
struct SharedSlide {
    std::string slide;
    units::Millimetres now;
    /// One for all where a valve works the tube; the main slide's marks, one for each player.
    std::vector<units::Millimetres> recommended;
    bool fixed = false;
    bool position_known = true;
    bool operator==(const SharedSlide&) const = default;
};

struct SharedPlayer {
    /// Weighted mean |lean| expected with the slides where they stand, and at the player's own mark.
    units::Cents mean_before;
    units::Cents mean_after;
    /// The same at the settings for this player alone, within the shared limits: what sharing costs.
    units::Cents mean_alone;
    bool operator==(const SharedPlayer&) const = default;
};

struct SharedSettings {
    std::vector<SharedSlide> slides;
    /// In the order of the questions.
    std::vector<SharedPlayer> players;
    /// Mean over the players of each one's objective.
    units::SquareCents objective_before;
    units::SquareCents objective_after;
    bool operator==(const SharedSettings&) const = default;
};

/// The joint optimum of several players' questions about one horn: every slide on a valve in one place for
/// all of them, the others (main slide, bits) marked for each, every player counting the same. Minimises the
/// mean of the players' objectives, the cap on the mean lean held for all of them together; whether it is
/// worth moving is for the reader of before and after. Limits are the narrowest that anyone gave, a slide
/// that one holds is held for all. The first question's constants hold. Throws Refusal for no questions, for
/// questions about different horns or with the slides in different places, for a note held at a lean (it has
/// no meaning for several players at once), and for what `recommend` refuses.
SharedSettings share(const std::vector<SettingsQuestion>& players);

}  // namespace lowledger::tuning
