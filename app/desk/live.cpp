#include "app/desk/live.h"

#include <utility>

#include "model/units/refusal.h"

namespace lowledger::desk {

LiveAnswer worked_out(tuning::TuningInputs inputs) {
    LiveAnswer live{.inputs = std::move(inputs), .answer = std::nullopt, .refusal = {}};
    try {
        live.answer = tuning::answer(*live.inputs);
    } catch (const units::Refusal& refusal) {
        live.refusal = refusal.what();
    }
    return live;
}

}  // namespace lowledger::desk
