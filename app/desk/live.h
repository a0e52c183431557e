#pragma once

#include <optional>
#include <stop_token>
#include <string>

#include "model/tuning/answer.h"

namespace lowledger::desk {

/// The settings for what is on the desk, as far as they are known.
struct LiveAnswer {
    /// What was asked; empty where there is no student on a horn.
    std::optional<tuning::TuningInputs> inputs;
    /// Empty while it is worked out, or when it was refused.
    std::optional<tuning::TuningAnswer> answer;
    /// Why there is no answer, a sentence.
    std::string refusal;

    [[nodiscard]] bool there() const { return answer.has_value(); }
    [[nodiscard]] bool something_moves() const { return answer && answer->settings.anything_moves(); }
};

/// Works an answer out; what the model refuses becomes `refusal`.
LiveAnswer worked_out(tuning::TuningInputs inputs);

}  // namespace lowledger::desk
