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
Score score_of(const Examined& examined, std::size_t row, std::size_t take) {
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
    return {score / information, 1.0 / std::sqrt(information), score / std::sqrt(information)};
}

/// How much of a take's weight is left to one that is so far from what all others say. A take is an error
/// with the chance `gross_error`, and then varies by `gross_spread` more (a contaminated normal: Tukey 1960).
/// The chance that this one is, by Bayes's rule, mixes the two precisions, which is the weight that the
/// expectation step of the EM algorithm gives it (Dempster, Laird and Rubin 1977, J. R. Stat. Soc. B 39, 1).
double counted(const Score& score, double take_variance, const Figures& figures) {
    const double gross = units::square(figures.gross_spread).value();
    const double fine_variance = score.spread * score.spread;
    const double gross_part = gross / (fine_variance + gross);
    const double log_odds = std::log(figures.gross_error / (1.0 - figures.gross_error)) +
                            0.5 * std::log1p(-gross_part) + 0.5 * score.z * score.z * gross_part;
    const double error = 1.0 / (1.0 + std::exp(-log_odds));
    return 1.0 - error * gross / (take_variance + gross);
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

std::optional<SuspectTake> furthest_take(const Examined& examined, const Figures& figures) {
    std::optional<SuspectTake> worst;
    for (std::size_t row = 0; row < examined.evidence.notes.size(); ++row) {
        const MeasuredNote& note = examined.evidence.notes[row];
        if (note.source != 0) continue;
        const double take_variance =
            units::square(examined.evidence.sources[note.source].model.level().take).value();
        for (std::size_t take = 0; take < note.takes.size(); ++take) {
            const Score score = score_of(examined, row, take);
            if (worst && std::abs(score.z) <= std::abs(worst->z)) continue;
            const studio::Reading& reading = *note.readings[take];
            worst = {{note.sheet->id, note.sheet->on, reading.note, reading.fingering, reading.take,
                      reading.cents, units::Cents(from_fellows(examined, row, take)), note.takes.size() == 1,
                      counted(score, take_variance, figures)},
                     score.z};
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
