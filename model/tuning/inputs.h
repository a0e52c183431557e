#pragma once

#include <functional>
#include <map>
#include <span>
#include <string>
#include <vector>

#include "model/horns/kind.h"
#include "model/studio/records.h"
#include "model/tuning/answer.h"

namespace lowledger::tuning {

/// Where the slides stand on a day as far as anybody measured, moved or wrote down: the latest of the horn's
/// history (save its start, which is only how the kind was designed) and of the sheets' own positions. Of one
/// day the history holds. A slide that is missing is unknown.
std::map<std::string, units::Millimetres> known_positions(std::span<const studio::SlidePosition> history,
                                                          std::span<const studio::TuningSheet> sheets,
                                                          studio::Date on);

/// What the studio knows beyond one student on one horn: who else plays the horn, and what the student plays
/// besides.
struct Others {
    struct OfStudent {
        studio::HornId horn;
        horns::HornKind kind;
        std::vector<studio::SlidePosition> history;
    };
    /// The student's other horns.
    std::vector<OfStudent> horns;
    /// How far the horn's other players are.
    std::map<studio::StudentId, studio::Level> players;
};

/// What the records say for one student on one horn, so that the window and the command line ask the same
/// question. `sheets` may hold those of other students and horns: of the others' they are used as the
/// readings of another player or horn, the rest are left out. The newest sheet says what the student's tuner
/// is set to and, if it is of today, how warm the room is.
TuningInputs inputs_of(const studio::StudioFacts& facts, const studio::Student& student,
                       const studio::Horn& horn, const horns::HornKind& kind,
                       std::span<const studio::SlidePosition> history,
                       std::span<const studio::TuningSheet> sheets, studio::Date today,
                       const Others& others = {});

/// The same with what a whole studio holds: `history_of` gives a horn's slide positions.
TuningInputs inputs_of_studio(
    const studio::StudioFacts& facts, const studio::Student& student, const studio::Horn& horn,
    const horns::HornKind& kind, std::span<const studio::Student> students,
    std::span<const studio::Horn> horns,
    const std::function<std::vector<studio::SlidePosition>(studio::HornId)>& history_of,
    std::span<const studio::TuningSheet> of_student, std::span<const studio::TuningSheet> of_horn,
    studio::Date today);

}  // namespace lowledger::tuning
