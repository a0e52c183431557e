#include "model/tuning/model_step.h"

#include <algorithm>
#include <cmath>

namespace lowledger::tuning {
namespace {

/// Places nearer than this, in mm, are the same.
constexpr double same_place = 1e-12;
/// A slope smaller than this, in cents squared a mm, is none.
constexpr double flat = 1e-11;

/// Solves a x = b for a positive definite `a` (rows, size x size) in place, by Cholesky's method.
void solve(std::vector<double>& a, std::vector<double>& b) {
    const std::size_t size = b.size();
    for (std::size_t j = 0; j < size; ++j) {
        for (std::size_t k = 0; k < j; ++k)
            a[j * size + j] -= a[j * size + k] * a[j * size + k];
        a[j * size + j] = std::sqrt(a[j * size + j]);
        for (std::size_t i = j + 1; i < size; ++i) {
            for (std::size_t k = 0; k < j; ++k)
                a[i * size + j] -= a[i * size + k] * a[j * size + k];
            a[i * size + j] /= a[j * size + j];
        }
    }
    for (std::size_t i = 0; i < size; ++i) {
        for (std::size_t k = 0; k < i; ++k)
            b[i] -= a[i * size + k] * b[k];
        b[i] /= a[i * size + i];
    }
    for (std::size_t i = size; i-- > 0;) {
        for (std::size_t k = i + 1; k < size; ++k)
            b[i] -= a[k * size + i] * b[k];
        b[i] /= a[i * size + i];
    }
}

/// Where slides act on the same notes, or on none, the model is flat along some direction; a little curvature
/// makes such a step long, and it ends at the first stop.
double ridge_of(const LocalModel& model, std::size_t size) {
    constexpr double part = 1e-9;
    double largest = 1.0;
    for (std::size_t i = 0; i < size; ++i)
        largest = std::max(largest, model.curvature[i * size + i]);
    return part * largest;
}

class ActiveSet {
  public:
    ActiveSet(const SlideProblem& problem, const LocalModel& model, const Positions& at)
        : problem_(problem),
          model_(model),
          start_(at),
          ridge_(ridge_of(model, at.size())),
          place_(at),
          side_(at.size(), 0) {
        for (std::size_t i = 0; i < at.size(); ++i) {
            const SlideProblem::Slide& slide = problem.slides[i];
            if (place_[i] > slide.low && place_[i] < slide.high && place_[i] != slide.now) {
                side_[i] = place_[i] > slide.now ? 1 : -1;
            }
        }
    }

    Positions step() {
        constexpr int most = 500;
        for (int k = 0; k < most; ++k) {
            if (!newton_step()) continue;
            if (!release_one()) break;
        }
        Positions step(start_.size());
        for (std::size_t i = 0; i < step.size(); ++i)
            step[i] = place_[i] - start_[i];
        return step;
    }

  private:
    /// Of the local model, without the cost of moving.
    [[nodiscard]] double slope(std::size_t i) const {
        double slope = model_.slope[i];
        for (std::size_t j = 0; j < place_.size(); ++j)
            slope += model_.curvature[i * place_.size() + j] * (place_[j] - start_[j]);
        return slope;
    }

    /// To the optimum of the free slides, or as far as the first of them may go, which then stops there.
    /// False if one stopped.
    bool newton_step() {
        std::vector<std::size_t> free;
        for (std::size_t i = 0; i < side_.size(); ++i) {
            if (side_[i] != 0) free.push_back(i);
        }
        if (free.empty()) return true;
        const std::size_t size = free.size();
        std::vector<double> a(size * size);
        std::vector<double> b(size);
        for (std::size_t i = 0; i < size; ++i) {
            b[i] = -(slope(free[i]) + side_[free[i]] * problem_.slides[free[i]].cost);
            for (std::size_t j = 0; j < size; ++j)
                a[i * size + j] = model_.curvature[free[i] * place_.size() + free[j]];
            a[i * size + i] += ridge_;
        }
        solve(a, b);
        double part = 1.0;
        std::size_t stopped = size;
        for (std::size_t i = 0; i < size; ++i) {
            const double room = stop(free[i], b[i]) - place_[free[i]];
            if (std::abs(b[i]) > same_place && std::abs(room) < part * std::abs(b[i])) {
                part = std::abs(room / b[i]);
                stopped = i;
            }
        }
        for (std::size_t i = 0; i < size; ++i)
            place_[free[i]] += part * b[i];
        if (stopped == size) return true;
        place_[free[stopped]] = stop(free[stopped], b[stopped]);
        side_[free[stopped]] = 0;
        return false;
    }

    /// Where a free slide that goes that way has to stop: its limit, or where it stands now.
    [[nodiscard]] double stop(std::size_t i, double way) const {
        const SlideProblem::Slide& slide = problem_.slides[i];
        if (way > 0.0) return side_[i] < 0 ? std::min(slide.now, slide.high) : slide.high;
        return side_[i] > 0 ? std::max(slide.now, slide.low) : slide.low;
    }

    /// Frees the stopped slide that gains most by going on. False if none gains.
    bool release_one() {
        double most = flat;
        std::size_t best = side_.size();
        int side = 0;
        for (std::size_t i = 0; i < side_.size(); ++i) {
            const SlideProblem::Slide& slide = problem_.slides[i];
            if (side_[i] != 0 || slide.low == slide.high) continue;
            const double here = slope(i);
            const int outward = place_[i] >= slide.now ? 1 : -1;
            const int inward = place_[i] > slide.now ? 1 : -1;
            if (place_[i] < slide.high && -(here + outward * slide.cost) > most) {
                most = -(here + outward * slide.cost);
                best = i;
                side = outward;
            }
            if (place_[i] > slide.low && here + inward * slide.cost > most) {
                most = here + inward * slide.cost;
                best = i;
                side = inward;
            }
        }
        if (best == side_.size()) return false;
        side_[best] = side;
        return true;
    }

    const SlideProblem& problem_;
    const LocalModel& model_;
    const Positions& start_;
    double ridge_;
    Positions place_;
    /// Of a free slide, on which side of where it stands now (+1 out); 0 of one that has stopped.
    std::vector<int> side_;
};

}  // namespace

Positions model_step(const SlideProblem& problem, const LocalModel& model, const Positions& at) {
    return ActiveSet(problem, model, at).step();
}

}  // namespace lowledger::tuning
