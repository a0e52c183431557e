#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "model/horns/kind.h"
#include "model/studio/records.h"
#include "model/tuning/answer.h"
#include "tests/truth/draw.h"

namespace lowledger::truth {

/// Slide positions by slide id.
using Places = std::map<std::string, units::Millimetres>;

/// A note as it is played.
struct Played {
    units::Pitch note;
    horns::Fingering fingering;
    int partial = 0;
    /// Of a hand slide, beyond its plain position.
    units::Millimetres further_out{0.0};
};

/// How a partial of a horn with so much of its open length in use leans beside what one effective length
/// says: length in use / open length, partial.
using BoreLean = std::function<units::Cents(double, int)>;

/// In what the world differs from the model's figures.
struct WorldLaw {
    /// All that varies from horn to horn and player to player, so many times as wide.
    double wider = 1.0;
    /// What the player corrects, instead of the level's.
    std::optional<double> kappa{};
    BoreLean bore{};
};

/// A sitting as it is, and what the teacher writes of it.
struct Sitting {
    studio::Date on;
    int number = 1;
    units::Celsius room{21.0};
    bool room_written = true;
    units::Hertz tuner_a4 = units::standard_a4;
    bool tuner_seen = false;
    int mouthpiece = 0;
    /// Where the slides truly stand.
    Places places{};
    /// Times round, while the horn goes on warming; 0: it is warm.
    int rounds = 0;
};

/// A horn of a kind and its player, every number drawn from the figures by name and played through
/// `model/acoustics`: nothing here knows how a profile is formed.
class World {
  public:
    /// `days`: when anything is read or asked, oldest first; the player changes between them.
    World(const horns::HornKind& kind, studio::Level level, std::vector<studio::Date> days, WorldLaw law,
          std::uint64_t seed);

    [[nodiscard]] const horns::HornKind& kind() const { return kind_; }
    [[nodiscard]] studio::Level level() const { return level_; }
    [[nodiscard]] studio::Date today() const { return days_.back(); }
    [[nodiscard]] const Draw& draw() const { return draw_; }
    /// As built, every tube and bore.
    [[nodiscard]] const acoustics::Tube& tube() const { return tube_; }

    /// The player is used to slides that truly stand so; of what they are moved from there the player takes
    /// back a part of their own.
    void get_used_to(Places truly) { used_to_ = std::move(truly); }

    /// Where slides stand that the ruler says are at `written`: a measurement has its error, the same each
    /// time a slide is put to the same place.
    [[nodiscard]] Places truly(const Places& written) const;

    /// The horn alone, against A4 = 440 Hz in the usual room.
    [[nodiscard]] units::Cents horn(const Played& played, const Places& truly, int mouthpiece) const;
    /// What slides are to answer: the horn, and gamma of the player's settled pitch.
    [[nodiscard]] units::Cents answered(const Played& played, const Places& truly, int mouthpiece) const;
    /// As it is heard in the long run today, the tuner hidden.
    [[nodiscard]] units::Cents heard(const Played& played, const Places& truly, int mouthpiece) const;
    /// What the tuner shows; takes are numbered over the whole of a sitting.
    [[nodiscard]] units::Cents shown(const Sitting& sitting, const Played& played, int take) const;

  private:
    [[nodiscard]] double player_number(int what, int which, double spread, studio::Date on) const;
    [[nodiscard]] double player(const Played& played, studio::Date on) const;
    [[nodiscard]] double kappa(bool tuner_seen) const;
    [[nodiscard]] units::Cents kept_of_horn(const Played& played, const Places& truly, int mouthpiece,
                                            bool tuner_seen) const;
    [[nodiscard]] units::Millimetres length(const Played& played, const Places& truly) const;
    [[nodiscard]] units::Cents arm(const Played& played, const Places& truly, studio::Date on) const;

    const horns::HornKind& kind_;
    studio::Level level_;
    const tuning::LevelFigures& of_level_;
    std::vector<studio::Date> days_;
    WorldLaw law_;
    Draw draw_;
    acoustics::Tube tube_;
    std::optional<Places> used_to_;
};

/// The usual way of a note of the kind's chart; of a fingering the likeliest partial.
Played usual_way(const horns::HornKind& kind, units::Pitch note);
Played way_of(const horns::HornKind& kind, units::Pitch note, const horns::Fingering& fingering);
/// The notes that set the slides.
std::vector<Played> tuning_notes(const horns::HornKind& kind);

/// The kind's designed positions.
Places designed_places(const horns::HornKind& kind);

/// A sheet of that sitting: each note `takes` times, round by round; `written` is what the teacher says of
/// the slides.
studio::TuningSheet sheet_of(const World& world, Sitting sitting, const Places& written,
                             const std::vector<Played>& notes, int takes);

/// Inputs for that student with the slides as said and no sheet.
tuning::TuningInputs inputs_for(const World& world, const Places& written);

}  // namespace lowledger::truth
