#include "model/tuning/belief.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "model/tuning/conditioning.h"
#include "model/tuning/warnings.h"

namespace lowledger::tuning {
namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

Eigen::Index row(std::size_t i) {
    return static_cast<Eigen::Index>(i);
}

std::vector<double> by_rows(const Matrix& matrix) {
    std::vector<double> all;
    all.reserve(static_cast<std::size_t>(matrix.size()));
    for (Eigen::Index i = 0; i < matrix.rows(); ++i) {
        for (Eigen::Index j = 0; j < matrix.cols(); ++j)
            all.push_back(matrix(i, j));
    }
    return all;
}

/// One unknown as it is today.
struct Unknown {
    double mean = 0.0;
    double spread = 0.0;
    double share_of_data = 0.0;
};

Unknown unknown_today(const Evidence& evidence, const Conditioning& conditioning, const TermKey& key) {
    Terms terms;
    evidence.own().model.add(terms, key, 1.0);
    const Matrix with = conditioning.with_readings({terms});
    const double before = shared_variance(terms, terms, 0);
    const double after = std::max(0.0, before - conditioning.half(with).squaredNorm());
    return {with.row(0).dot(conditioning.solved_off()), std::sqrt(after), 1.0 - after / before};
}

/// Whether the player was read with the slides in more than one place.
bool tells_of_correction(const Evidence& evidence) {
    const TermKey own = evidence.own().model.owned({TermKind::correction});
    return std::ranges::any_of(evidence.notes, [&](const MeasuredNote& note) {
        return std::ranges::binary_search(note.terms, own, {}, &Term::key);
    });
}

/// The model is a product of what the player corrects and what the horn does; it is made linear about the
/// best guess of the first, which settles at once.
double corrects_more(const TuningInputs& inputs, const Figures& figures,
                     const std::vector<OutlyingTake>& told = {}) {
    constexpr int most = 5;
    constexpr double settled = 1e-6;
    double more = 0.0;
    for (int k = 0; k < most; ++k) {
        const Evidence evidence = evidence_of(inputs, figures, more, told);
        if (!tells_of_correction(evidence)) break;
        const std::vector<Row> rows = rows_of(evidence);
        const double next =
            unknown_today(evidence, Conditioning(rows, inputs.today), {TermKind::correction}).mean;
        const bool done = std::abs(next - more) < settled;
        more = next;
        if (done) break;
    }
    return more;
}

Correction correction_of(const LevelFigures& level, const Unknown& more, double linear_about) {
    constexpr double ninety = 1.6448536269514722;
    const double middle = level.kappa + more.mean;
    return {.part = part_corrected(level.kappa, linear_about),
            .spread = more.spread,
            .low = std::clamp(middle - ninety * more.spread, 0.0, 1.0),
            .high = std::clamp(middle + ninety * more.spread, 0.0, 1.0),
            .share_of_data = more.share_of_data};
}

std::vector<SlideBelief> slide_beliefs(const TuningInputs& inputs, const Evidence& evidence,
                                       const Conditioning& conditioning) {
    std::vector<SlideBelief> slides;
    for (std::size_t i = 0; i < inputs.kind.slides.size(); ++i) {
        const Unknown more = unknown_today(evidence, conditioning, {TermKind::bore, static_cast<int>(i)});
        slides.push_back({inputs.kind.slides[i].id, 1.0 + more.mean, more.spread});
    }
    return slides;
}

std::vector<ArmBelief> arm_beliefs(const TuningInputs& inputs, const Evidence& evidence,
                                   const Conditioning& conditioning) {
    std::vector<ArmBelief> arm;
    if (!inputs.kind.hand_slide) return arm;
    constexpr int furthest = 7;
    for (int position = 2; position <= furthest; ++position) {
        const Unknown out = unknown_today(evidence, conditioning, {TermKind::arm, position});
        arm.push_back(
            {position, units::Millimetres(out.mean), units::Millimetres(out.spread), out.share_of_data});
    }
    return arm;
}

/// Takes of just this way, brought to the slides as they stand.
void count_takes(ProfileNote& note, const Evidence& evidence) {
    const PlayerOnHorn& own = evidence.own();
    units::Cents sum(0.0);
    for (const MeasuredNote& m : evidence.notes) {
        if (m.source != 0 || m.playing.note != note.note || m.playing.fingering != note.fingering ||
            m.playing.partial != note.partial) {
            continue;
        }
        const Playing now{note.note, note.fingering, note.partial, own.today.at};
        const units::Cents moved =
            m.horn_share * (own.model.acoustic_lean(now) - own.model.acoustic_lean(m.playing));
        note.takes += static_cast<int>(m.takes.size());
        for (const units::Cents take : m.takes)
            sum += take + moved;
    }
    if (note.takes > 0) note.mean_of_takes = sum / note.takes;
}

void count_sheets(TuningProfile& profile, const Evidence& evidence) {
    for (const PlayerOnHorn& source : evidence.sources) {
        const int sheets = static_cast<int>(source.sheets.used.size());
        const Owners owners = source.model.owners();
        if (owners.horn != 0) {
            profile.sheets_of_other_horns += sheets;
        } else if (owners.player != 0) {
            profile.sheets_of_other_players += sheets;
        } else {
            profile.sheets_used = sheets;
        }
    }
    profile.not_used = evidence.own().sheets.not_used;
    profile.false_tones_left_out = evidence.false_tones;
    for (const MeasuredNote& note : evidence.notes) {
        if (note.source == 0) profile.takes_used += static_cast<int>(note.takes.size());
    }
}

/// Variance that one more reading of two takes, in a sitting of its own, adds to the lean as played.
double fresh_reading(const LevelFigures& level, const Figures& figures) {
    return units::square(level.sitting).value() + units::square(figures.tuner).value() +
           units::square(level.note_by_sitting).value() + units::square(level.take).value() / 2.0;
}

}  // namespace

Belief believe(const TuningInputs& inputs, const Figures& figures) {
    double more = corrects_more(inputs, figures);
    Warnings warnings = warnings_of(inputs, figures, more);
    if (!warnings.takes.empty()) more = corrects_more(inputs, figures, warnings.takes);
    const Evidence evidence = evidence_of(inputs, figures, more, warnings.takes);
    const std::vector<Row> rows = rows_of(evidence);
    const Conditioning conditioning(rows, inputs.today);
    const std::vector<WayToPlay> ways = ways_to_play(inputs, evidence.own().sheets.used);
    const Predictions predictions = predictions_of(evidence, ways, more);
    const Prediction& played = predictions.as_played;
    const Prediction& slides = predictions.for_slides;

    const Matrix played_with = conditioning.with_readings(played.terms);
    const Matrix slides_with = conditioning.with_readings(slides.terms);
    const Vector played_mean = conditioning.mean(played, played_with);
    const Vector slides_mean = conditioning.mean(slides, slides_with);
    const Vector aim_mean =
        conditioning.mean(predictions.aim, conditioning.with_readings(predictions.aim.terms));
    const Vector placed_mean =
        conditioning.mean(predictions.placed, conditioning.with_readings(predictions.placed.terms));
    const Matrix played_half = conditioning.half(played_with);
    const Matrix slides_half = conditioning.half(slides_with);
    const Matrix slides_posterior = prior(slides.terms, slides.terms) - slides_half.transpose() * slides_half;
    const Matrix cross = prior(slides.terms, played.terms) - slides_half.transpose() * played_half;

    Belief belief;
    TuningProfile& profile = belief.profile;
    const LevelFigures& level = figures.of(inputs.level);
    for (std::size_t i = 0; i < ways.size(); ++i) {
        const auto at = row(i);
        const double before = shared_variance(played.terms[i], played.terms[i], 0);
        const double after = std::max(0.0, before - played_half.col(at).squaredNorm());
        ProfileNote note{ways[i].note, ways[i].fingering, ways[i].partial, ways[i].usual};
        note.mean = units::Cents(played_mean[at]);
        note.spread = units::Cents(std::sqrt(after));
        note.placed = units::Cents(placed_mean[at]);
        note.slides_mean = units::Cents(slides_mean[at]);
        note.slides_spread = units::Cents(std::sqrt(std::max(0.0, slides_posterior(at, at))));
        note.aim = units::Cents(aim_mean[at]);
        note.share_of_data = 1.0 - after / before;
        count_takes(note, evidence);
        profile.notes.push_back(note);
        belief.reading_variance.push_back(after + fresh_reading(level, figures));
    }
    profile.correction =
        correction_of(level, unknown_today(evidence, conditioning, {TermKind::correction}), more);
    const Unknown pitch = unknown_today(evidence, conditioning, {TermKind::player_overall});
    profile.settled_pitch = {units::Cents(pitch.mean), units::Cents(pitch.spread),
                             units::Cents(level.gamma * pitch.mean)};
    profile.slides = slide_beliefs(inputs, evidence, conditioning);
    profile.arm = arm_beliefs(inputs, evidence, conditioning);
    profile.outlying = std::move(warnings.takes);
    profile.moves = std::move(warnings.moves);
    profile.other_horn = std::move(warnings.other_horn);
    count_sheets(profile, evidence);
    profile.slides_covariance = by_rows(slides_posterior);
    belief.slides_by_reading = by_rows(cross);
    belief.played_covariance =
        by_rows(prior(played.terms, played.terms) - played_half.transpose() * played_half);
    return belief;
}

const ProfileNote* TuningProfile::usual(units::Pitch note) const {
    const auto at =
        std::ranges::find_if(notes, [&](const ProfileNote& n) { return n.note == note && n.usual; });
    return at == notes.end() ? nullptr : &*at;
}

const ProfileNote* TuningProfile::way(units::Pitch note, const horns::Fingering& fingering) const {
    const auto at = std::ranges::find_if(
        notes, [&](const ProfileNote& n) { return n.note == note && n.fingering == fingering; });
    return at == notes.end() ? nullptr : &*at;
}

}  // namespace lowledger::tuning
