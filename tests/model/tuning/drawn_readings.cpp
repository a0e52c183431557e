#include "tests/model/tuning/drawn_readings.h"

#include <algorithm>

#include "tests/model/tuning/played_horn.h"

namespace lowledger::tuning {

double Drawing::value(const Term& term) {
    const auto [at, is_new] = unknowns_.try_emplace(term.key, 0.0);
    if (is_new) at->second = term.law.spread * normal();
    return at->second;
}

void Drawing::fill(TuningInputs& inputs) {
    fill(inputs, 0, inputs.sheets.front().positions);
}

void Drawing::fill(TuningInputs& inputs, std::size_t sheet,
                   const std::map<std::string, units::Millimetres>& stood) {
    TuningInputs truth = inputs;
    truth.sheets[sheet].positions = stood;
    const Evidence evidence = evidence_of(truth, figures());
    const LevelFigures& level = evidence.own().model.level();
    for (const MeasuredNote& note : evidence.notes) {
        double lean = note.expected.value() + level.note_by_sitting.value() * normal();
        double rising = 0.0;
        int last = 1;
        for (const Term& term : note.terms) {
            const double drawn = value(term);
            if (term.key.kind == TermKind::warming) {
                rising = drawn;
            } else {
                lean += term.coefficient * drawn;
            }
        }
        for (const studio::Reading& reading : note.sheet->readings)
            last = std::max(last, reading.take);
        for (const studio::Reading* reading : note.readings) {
            const auto at = static_cast<std::size_t>(reading - note.sheet->readings.data());
            const auto of = static_cast<std::size_t>(note.sheet - truth.sheets.data());
            const double read = lean + rising * (reading->take - last) + level.take.value() * normal();
            // Beyond that a teacher would take it for another note.
            inputs.sheets[of].readings[at].cents = units::Cents(std::clamp(read, -100.0, 100.0));
        }
    }
}

TuningInputs before_and_after(studio::Level level, units::Millimetres main, units::Millimetres first) {
    TuningInputs inputs = fresh_inputs(level);
    const std::vector<std::string> more{"F1", "Bb2", "F2", "Eb2"};
    inputs.sheets = {sheet_of(inputs, {}, 2, more)};
    inputs.positions["main"] += main;
    inputs.positions["first"] += first;
    inputs.sheets.push_back(sheet_of(inputs, {}, 2, more));
    inputs.sheets.back().id.number = 2;
    return inputs;
}

}  // namespace lowledger::tuning
