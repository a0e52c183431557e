#include "model/tuning/outlying.h"

#include <cmath>

namespace lowledger::tuning {
namespace {

/// The row of a sitting's warming; empty where every note was played once.
std::optional<std::size_t> warming_of(const Evidence& evidence, std::size_t sitting) {
    for (std::size_t i = 0; i < evidence.warmings.size(); ++i) {
        if (evidence.warmings[i].sitting == sitting) return i;
    }
    return std::nullopt;
}

double mean_round(const MeasuredNote& note) {
    double sum = 0.0;
    for (const studio::Reading* reading : note.readings)
        sum += reading->take;
    return sum / static_cast<double>(note.readings.size());
}

/// A take that is off by x moves its note's mean by x/takes and its sitting's warming by x later/squares; the
/// rest of it is its own distance from both, which nothing else in the sitting shares.
double z_of(const Examined& examined, std::size_t row, std::size_t take) {
    const Evidence& evidence = examined.evidence;
    const MeasuredNote& note = evidence.notes[row];
    const auto takes = static_cast<double>(note.takes.size());
    const double variance = units::square(evidence.sources[note.source].model.level().take).value();
    Eigen::VectorXd j = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(examined.rows.size()));
    j[static_cast<Eigen::Index>(row)] = 1.0 / takes;
    double rest = (note.takes[take] - note.mean).value();
    double rest_information = 1.0 - 1.0 / takes;
    if (const auto at = warming_of(evidence, note.sitting)) {
        const Warming& warming = evidence.warmings[*at];
        const double later = note.readings[take]->take - mean_round(note);
        j[static_cast<Eigen::Index>(evidence.notes.size() + *at)] = later / warming.squares;
        rest -= later * warming.each_round.value();
        rest_information -= later * later / warming.squares;
    }
    const double score = rest / variance + j.dot(examined.conditioning.solved_off());
    const double information = rest_information / variance + j.dot(examined.inverse * j);
    return score / std::sqrt(information);
}

/// How far a take is from the mean of the others of its note; of what other notes say, where it has none.
double from_fellows(const Examined& examined, std::size_t row, std::size_t take) {
    const MeasuredNote& note = examined.evidence.notes[row];
    const auto count = static_cast<double>(note.takes.size());
    if (note.takes.size() > 1) return (note.takes[take] - note.mean).value() * count / (count - 1.0);
    const auto at = static_cast<Eigen::Index>(row);
    return examined.conditioning.solved_off()[at] / examined.inverse(at, at);
}

}  // namespace

std::optional<SuspectTake> furthest_take(const Examined& examined) {
    std::optional<SuspectTake> worst;
    for (std::size_t row = 0; row < examined.evidence.notes.size(); ++row) {
        const MeasuredNote& note = examined.evidence.notes[row];
        if (note.source != 0) continue;
        for (std::size_t take = 0; take < note.takes.size(); ++take) {
            const double z = z_of(examined, row, take);
            if (worst && std::abs(z) <= std::abs(worst->z)) continue;
            const studio::Reading& reading = *note.readings[take];
            worst = {{note.sheet->id, note.sheet->on, reading.note, reading.fingering, reading.take,
                      reading.cents, units::Cents(from_fellows(examined, row, take)), note.takes.size() == 1},
                     z};
        }
    }
    return worst;
}

std::size_t takes_examined(const Evidence& evidence) {
    std::size_t takes = 0;
    for (const MeasuredNote& note : evidence.notes) {
        if (note.source == 0) takes += note.takes.size();
    }
    return takes;
}

}  // namespace lowledger::tuning
