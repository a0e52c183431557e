#include "model/tuning/outlying.h"

#include <cmath>

namespace lowledger::tuning {
namespace {

OutlyingTake take_of(const MeasuredNote& note, std::size_t take, double from_fellows) {
    const studio::Reading& reading = *note.readings[take];
    return {note.sheet->id,
            note.sheet->on,
            reading.note,
            reading.fingering,
            reading.take,
            reading.cents,
            units::Cents(from_fellows),
            note.takes.size() == 1};
}

/// How far a take is from the mean of the others.
double from_fellows(const MeasuredNote& note, std::size_t take) {
    const auto count = static_cast<double>(note.takes.size());
    return (note.takes[take] - note.mean).value() * count / (count - 1.0);
}

/// The take furthest from its fellows; of two, from what the other notes say.
std::size_t furthest(const MeasuredNote& note, const LeftOut& left_out) {
    std::size_t worst = 0;
    const auto distance = [&](std::size_t i) {
        if (note.takes.size() > 2) return std::abs(from_fellows(note, i));
        return std::abs((note.takes[i] - note.mean).value() + left_out.off);
    };
    for (std::size_t i = 1; i < note.takes.size(); ++i) {
        if (distance(i) > distance(worst)) worst = i;
    }
    return worst;
}

}  // namespace

std::vector<OutlyingTake> outlying_takes(const std::vector<MeasuredNote>& measured,
                                         const std::vector<LeftOut>& left_out, const LevelFigures& level,
                                         double most) {
    std::vector<OutlyingTake> outlying;
    for (std::size_t n = 0; n < measured.size(); ++n) {
        const MeasuredNote& note = measured[n];
        if (note.takes.size() == 1) {
            if (std::abs(left_out[n].off) > most * std::sqrt(left_out[n].variance)) {
                outlying.push_back(take_of(note, 0, left_out[n].off));
            }
            continue;
        }
        const std::size_t worst = furthest(note, left_out[n]);
        const double off = from_fellows(note, worst);
        const auto fellows = static_cast<double>(note.takes.size() - 1);
        if (std::abs(off) > most * level.take.value() * std::sqrt(1.0 + 1.0 / fellows)) {
            outlying.push_back(take_of(note, worst, off));
        }
    }
    return outlying;
}

}  // namespace lowledger::tuning
