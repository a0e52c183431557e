#include "tests/truth/tally.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>

namespace lowledger::truth {
namespace {

double mean_of(const std::vector<double>& values) {
    if (values.empty()) return 0.0;
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

double error_of(const std::vector<double>& values) {
    const auto n = static_cast<double>(values.size());
    if (n < 2.0) return 0.0;
    const double mean = mean_of(values);
    double sum = 0.0;
    for (const double value : values)
        sum += (value - mean) * (value - mean);
    return std::sqrt(sum / (n - 1.0) / n);
}

std::vector<double> largest_tenth(std::vector<double> values) {
    std::ranges::sort(values, std::greater<>());
    values.resize((values.size() + 9) / 10);
    return values;
}

}  // namespace

double Tally::mean() const {
    return mean_of(values_);
}

double Tally::error() const {
    return error_of(values_);
}

double Tally::root_mean_square() const {
    const double squares = std::inner_product(values_.begin(), values_.end(), values_.begin(), 0.0);
    return values_.empty() ? 0.0 : std::sqrt(squares / static_cast<double>(values_.size()));
}

double Tally::worst_tenth() const {
    return mean_of(largest_tenth(values_));
}

double Tally::worst_tenth_error() const {
    return error_of(largest_tenth(values_));
}

double Tally::largest() const {
    return values_.empty() ? 0.0 : *std::ranges::max_element(values_);
}

void Share::add_horn(double hits, double of) {
    if (of <= 0.0) return;
    hits_.push_back(hits);
    of_.push_back(of);
}

double Share::things() const {
    return std::accumulate(of_.begin(), of_.end(), 0.0);
}

double Share::percent() const {
    const double hits = std::accumulate(hits_.begin(), hits_.end(), 0.0);
    return of_.empty() ? 0.0 : 100.0 * hits / things();
}

double Share::error() const {
    const auto n = static_cast<double>(of_.size());
    if (n < 2.0) return 0.0;
    const double ratio = percent() / 100.0;
    double sum = 0.0;
    for (std::size_t i = 0; i < of_.size(); ++i)
        sum += (hits_[i] - ratio * of_[i]) * (hits_[i] - ratio * of_[i]);
    return 100.0 * std::sqrt(n * sum / (n - 1.0)) / things();
}

}  // namespace lowledger::truth
