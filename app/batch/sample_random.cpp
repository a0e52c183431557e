#include "app/batch/sample_random.h"

namespace lowledger::batch {

namespace {

std::uint64_t mixed(std::uint64_t z) {
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
    return z ^ (z >> 31U);
}

/// FNV-1a, 64 bits.
std::uint64_t hash(std::string_view text) {
    std::uint64_t h = 0xCBF29CE484222325U;
    for (const char c : text)
        h = (h ^ static_cast<unsigned char>(c)) * 0x100000001B3U;
    return h;
}

}  // namespace

SampleRandom::SampleRandom(std::uint64_t seed, std::string_view stream)
    : state_(mixed(seed) ^ hash(stream)) {}

std::uint64_t SampleRandom::next() {
    state_ += 0x9E3779B97F4A7C15U;
    return mixed(state_);
}

double SampleRandom::uniform() {
    return static_cast<double>(next() >> 32U) * 0x1p-32;
}

double SampleRandom::normal() {
    double sum = -6.0;
    for (int i = 0; i < 12; ++i)
        sum += uniform();
    return sum;
}

}  // namespace lowledger::batch
