#include "model/tuning/suspicion.h"

#include <algorithm>
#include <cmath>

#include "model/tuning/loss.h"

namespace lowledger::tuning {

Score score(const Examined& examined, const Eigen::VectorXd& j) {
    const double information = j.dot(examined.inverse * j);
    if (information <= 0.0) return {};
    const double size = j.dot(examined.conditioning.solved_off()) / information;
    return {size, 1.0 / std::sqrt(information), size * std::sqrt(information)};
}

double log_ratio(const Examined& examined, const Eigen::VectorXd& j) {
    return j.dot(examined.conditioning.solved_off()) - 0.5 * j.dot(examined.inverse * j);
}

double told_from(std::size_t tests, double false_alarms, double least) {
    const double each = false_alarms / (2.0 * static_cast<double>(std::max<std::size_t>(tests, 1)));
    double low = least;
    double high = 10.0;
    constexpr double close = 1e-6;
    while (high - low > close) {
        const double middle = 0.5 * (low + high);
        (normal_below(-middle) > each ? low : high) = middle;
    }
    return high;
}

}  // namespace lowledger::tuning
