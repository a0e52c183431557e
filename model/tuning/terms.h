#pragma once

#include <compare>
#include <vector>

#include "model/horns/kind.h"
#include "model/studio/records.h"
#include "model/tuning/figures.h"

namespace lowledger::tuning {

/// What a reading is made of beyond acoustics (docs/tuning.md, "What a reading is made of").
enum class TermKind {
    horn_overall,
    valve_tube,
    horn_by_partial,
    kind_by_partial,
    horn_by_set_and_partial,
    mouthpiece,
    player_overall,
    player_slope,
    player_by_partial,
    player_by_pitch,
    /// Where the player's arm puts a position of the hand slide, in mm out from the plain one.
    arm,
    /// What the player corrects, as a part, beyond what the level says.
    correction,
    /// How much more or less than its length a slide's pull acts: bore and taper.
    bore,
    room_beta,
    /// A slide's true place against the place that was written down, or guessed.
    place_written,
    place_guessed,
    place_at_sitting,
    room_of_sitting,
    sitting,
    tuner_of_sitting,
    /// By how much the pitch goes on rising each time round, still warming.
    warming,
};

/// Whose an unknown number is.
enum class TermOwner { horn, kind, player, sitting };
TermOwner owner_of(TermKind kind);

/// One unknown number. What `a` and `b` count depends on the kind: a valve, a partial, a pitch, a slide, a
/// sheet. `whose` is the number of the horn, the kind of horn or the player.
struct TermKey {
    TermKind kind = TermKind::horn_overall;
    int a = 0;
    int b = 0;
    int whose = 0;
    auto operator<=>(const TermKey&) const = default;
};

/// How an unknown is distributed before anything is read: sd in the unit that its coefficient takes to cents,
/// and the days after which half of what was known of it is left (0: it does not age).
struct TermLaw {
    double spread = 0.0;
    double half_life = 0.0;
    bool operator==(const TermLaw&) const = default;
};

struct Term {
    TermKey key;
    double coefficient = 0.0;
    TermLaw law{};
};

/// Sorted by key, each key once.
using Terms = std::vector<Term>;

/// A note as it is played at some time: what both a reading and a prediction are of.
struct Playing {
    units::Pitch note;
    horns::Fingering fingering;
    int partial = 0;
    /// Where the slides stand, as far as is known, in the kind's order.
    std::vector<units::Millimetres> positions;
};

/// Shares of the parts of the model in a reading or a prediction.
struct Shares {
    /// 1 - kappa in a reading; 1 in what slides answer.
    double horn = 1.0;
    double player_overall = 1.0;
    double player_slope = 1.0;
    /// By partial and by pitch.
    double player_notes = 1.0;
    /// On a hand slide.
    double arm = 1.0;
};

/// Numbers that tell horns, kinds of horn and players apart where there are several.
struct Owners {
    int horn = 0;
    int kind = 0;
    int player = 0;
    bool operator==(const Owners&) const = default;
};

/// The terms of one horn and one player.
class TermModel {
  public:
    TermModel(const horns::HornKind& kind, studio::Level level, const Figures& figures, units::Hertz a4,
              Owners owners = {});

    /// Lean by acoustics alone, against the studio's A4.
    [[nodiscard]] units::Cents acoustic_lean(const Playing& playing) const;
    /// Cents for a mm of each slide.
    [[nodiscard]] std::vector<units::CentsPerMillimetre> pull_slopes(const Playing& playing) const;
    /// Cents for a mm that the hand slide goes out; zero without one.
    [[nodiscard]] units::CentsPerMillimetre arm_slope(const Playing& playing) const;
    /// Horn and player terms of a playing; `mouthpiece` is a number for each one that is used.
    [[nodiscard]] Terms terms(const Playing& playing, const Shares& shares, int mouthpiece) const;
    /// The key with this model's horn, kind or player as its owner.
    [[nodiscard]] TermKey owned(TermKey key) const;
    [[nodiscard]] TermLaw law(const TermKey& key) const;
    /// Adds a term under its owner and with its law.
    void add(Terms& terms, const TermKey& key, double coefficient) const;

    [[nodiscard]] const horns::HornKind& kind() const { return kind_; }
    [[nodiscard]] Owners owners() const { return owners_; }
    [[nodiscard]] const acoustics::Tube& tube() const { return tube_; }
    [[nodiscard]] const LevelFigures& level() const { return level_; }

  private:
    [[nodiscard]] units::Millimetres length(const Playing& playing) const;
    [[nodiscard]] units::Millimetres own_length(int valve) const;

    const horns::HornKind& kind_;
    const Figures& figures_;
    const LevelFigures& level_;
    units::Hertz a4_;
    Owners owners_;
    acoustics::Tube tube_;
};

/// Adds a term, keeping order; coefficients of a key already there add up, and its law stays.
void add_term(Terms& terms, const TermKey& key, double coefficient, const TermLaw& law);

/// Prior covariance of two sums of terms that are `days` apart, in cents squared: the sum over shared keys of
/// coefficient coefficient spread^2 2^(-days/half-life).
double shared_variance(const Terms& one, const Terms& other, int days);

}  // namespace lowledger::tuning
