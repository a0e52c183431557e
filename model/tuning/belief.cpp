#include "model/tuning/belief.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "model/tuning/measured.h"
#include "model/tuning/outlying.h"
#include "model/tuning/ways.h"

namespace lowledger::tuning {
namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

Eigen::Index row(std::size_t i) {
    return static_cast<Eigen::Index>(i);
}

/// One quantity that is predicted for every way: its terms today and what acoustics says.
struct Quantity {
    std::vector<Terms> terms;
    Vector expected;
};

Quantity quantity(const TuningInputs& inputs, const TermModel& model, const std::vector<WayToPlay>& ways,
                  const Shares& shares, int mouthpiece) {
    const SlidesToday today = slides_today(inputs);
    Quantity all{{}, Vector(row(ways.size()))};
    for (std::size_t i = 0; i < ways.size(); ++i) {
        const Playing playing{ways[i].note, ways[i].fingering, ways[i].partial, today.at};
        all.terms.push_back(model.terms(playing, shares, mouthpiece));
        add_places_today(all.terms.back(), model, today, playing, shares.horn);
        all.expected[row(i)] = shares.horn * model.acoustic_lean(playing).value();
    }
    return all;
}

/// Prior covariance of two lists of sums of terms.
Matrix prior(const TermModel& model, const std::vector<Terms>& rows, const std::vector<Terms>& columns) {
    Matrix covariance(row(rows.size()), row(columns.size()));
    for (std::size_t i = 0; i < rows.size(); ++i) {
        for (std::size_t j = 0; j < columns.size(); ++j)
            covariance(row(i), row(j)) = shared_variance(model, rows[i], columns[j], 0);
    }
    return covariance;
}

/// The readings' covariance, factorised, and what follows from it.
class Conditioning {
  public:
    Conditioning(const TermModel& model, const std::vector<MeasuredNote>& measured, studio::Date today)
        : model_(model), measured_(measured), today_(today), off_(row(measured.size())) {
        const std::size_t size = measured.size();
        Matrix covariance(row(size), row(size));
        for (std::size_t i = 0; i < size; ++i) {
            off_[row(i)] = (measured[i].mean - measured[i].expected).value();
            for (std::size_t j = 0; j <= i; ++j) {
                const int days = measured[i].sheet->on - measured[j].sheet->on;
                covariance(row(i), row(j)) =
                    shared_variance(model, measured[i].terms, measured[j].terms, days);
            }
            covariance(row(i), row(i)) += measured[i].noise.value();
        }
        factor_.compute(covariance.selfadjointView<Eigen::Lower>());
        solved_off_ = factor_.solve(off_);
    }

    /// Covariance of a quantity (rows) with the readings.
    [[nodiscard]] Matrix with_readings(const Quantity& quantity) const {
        Matrix covariance(row(quantity.terms.size()), row(measured_.size()));
        for (std::size_t i = 0; i < quantity.terms.size(); ++i) {
            for (std::size_t j = 0; j < measured_.size(); ++j) {
                covariance(row(i), row(j)) = shared_variance(model_, quantity.terms[i], measured_[j].terms,
                                                             today_ - measured_[j].sheet->on);
            }
        }
        return covariance;
    }

    [[nodiscard]] Vector mean(const Quantity& quantity, const Matrix& with) const {
        return quantity.expected + with * solved_off_;
    }

    /// L^-1 with', so that a posterior covariance is prior - A' B.
    [[nodiscard]] Matrix half(const Matrix& with) const { return factor_.matrixL().solve(with.transpose()); }

    /// What each reading is off from what all others say of it, and the variance of that: e_i/(V^-1)_ii and
    /// 1/(V^-1)_ii.
    [[nodiscard]] std::vector<LeftOut> left_out() const {
        const Matrix inverse = factor_.solve(Matrix::Identity(off_.size(), off_.size()));
        std::vector<LeftOut> all;
        for (Eigen::Index i = 0; i < off_.size(); ++i)
            all.push_back({solved_off_[i] / inverse(i, i), 1.0 / inverse(i, i)});
        return all;
    }

  private:
    const TermModel& model_;
    const std::vector<MeasuredNote>& measured_;
    studio::Date today_;
    Vector off_;
    Eigen::LLT<Matrix> factor_;
    Vector solved_off_;
};

std::vector<double> by_rows(const Matrix& matrix) {
    std::vector<double> all;
    all.reserve(static_cast<std::size_t>(matrix.size()));
    for (Eigen::Index i = 0; i < matrix.rows(); ++i) {
        for (Eigen::Index j = 0; j < matrix.cols(); ++j)
            all.push_back(matrix(i, j));
    }
    return all;
}

/// Takes of just this way, brought to the slides as they stand.
void count_takes(ProfileNote& note, const TermModel& model, const std::vector<MeasuredNote>& measured,
                 const SlidesToday& today) {
    units::Cents sum(0.0);
    for (const MeasuredNote& m : measured) {
        if (m.playing.note != note.note || m.playing.fingering != note.fingering ||
            m.playing.partial != note.partial) {
            continue;
        }
        const Playing now{note.note, note.fingering, note.partial, today.at};
        const units::Cents moved = m.horn_share * (model.acoustic_lean(now) - model.acoustic_lean(m.playing));
        note.takes += static_cast<int>(m.takes.size());
        sum += static_cast<double>(m.takes.size()) * (m.mean + moved);
    }
    if (note.takes > 0) note.mean_of_takes = sum / note.takes;
}

}  // namespace

Belief believe(const TuningInputs& inputs, const Figures& figures) {
    const TermModel model(inputs.kind, inputs.level, figures, inputs.studio_a4);
    const LevelFigures& level = model.level();
    const SheetsSorted sheets = sort_sheets(inputs.sheets);
    Belief belief;
    TuningProfile& profile = belief.profile;
    const auto measured = measured_notes(inputs, figures, model, sheets.used, profile.false_tones_left_out);
    const std::vector<WayToPlay> ways = ways_to_play(inputs, sheets.used);
    const int mouthpiece = Mouthpieces(sheets.used).latest();
    const double horn = 1.0 - level.kappa;
    const Quantity slides = quantity(inputs, model, ways, {1.0, level.gamma, 0.0, 0.0, 0.0}, mouthpiece);
    const Quantity played = quantity(inputs, model, ways, {horn, 1.0, 1.0, 1.0, 1.0}, mouthpiece);
    const Quantity placed = quantity(inputs, model, ways, {horn, 1.0, 1.0, 1.0, 0.0}, mouthpiece);
    const Quantity aim = quantity(inputs, model, ways, {horn, 1.0, 1.0, 0.0, 0.0}, mouthpiece);

    const Conditioning conditioning(model, measured, inputs.today);
    const Matrix slides_with = conditioning.with_readings(slides);
    const Matrix played_with = conditioning.with_readings(played);
    const Matrix slides_half = conditioning.half(slides_with);
    const Matrix played_half = conditioning.half(played_with);
    const Vector slides_mean = conditioning.mean(slides, slides_with);
    const Vector played_mean = conditioning.mean(played, played_with);
    const Vector aim_mean = conditioning.mean(aim, conditioning.with_readings(aim));
    const Vector placed_mean = conditioning.mean(placed, conditioning.with_readings(placed));
    const Matrix slides_posterior =
        prior(model, slides.terms, slides.terms) - slides_half.transpose() * slides_half;
    const Matrix cross = prior(model, slides.terms, played.terms) - slides_half.transpose() * played_half;
    const double fresh = units::square(level.sitting).value() + units::square(figures.tuner).value() +
                         units::square(level.note_by_sitting).value() +
                         units::square(level.take).value() / 2.0;

    const SlidesToday today = slides_today(inputs);
    for (std::size_t i = 0; i < ways.size(); ++i) {
        const auto at = row(i);
        const double before = shared_variance(model, played.terms[i], played.terms[i], 0);
        const double after = std::max(0.0, before - played_half.col(at).squaredNorm());
        ProfileNote note{ways[i].note, ways[i].fingering, ways[i].partial, ways[i].usual};
        note.mean = units::Cents(played_mean[at]);
        note.spread = units::Cents(std::sqrt(after));
        note.placed = units::Cents(placed_mean[at]);
        note.slides_mean = units::Cents(slides_mean[at]);
        note.slides_spread = units::Cents(std::sqrt(std::max(0.0, slides_posterior(at, at))));
        note.aim = units::Cents(aim_mean[at]);
        note.share_of_data = 1.0 - after / before;
        count_takes(note, model, measured, today);
        profile.notes.push_back(note);
        belief.reading_variance.push_back(after + fresh);
    }
    profile.outlying = outlying_takes(measured, conditioning.left_out(), level, figures.outlying);
    profile.not_used = sheets.not_used;
    profile.sheets_used = static_cast<int>(sheets.used.size());
    for (const MeasuredNote& note : measured)
        profile.takes_used += static_cast<int>(note.takes.size());
    profile.slides_covariance = by_rows(slides_posterior);
    belief.slides_by_reading = by_rows(cross);
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
