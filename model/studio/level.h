#pragma once

namespace lowledger::studio {

/// How far a student is: sets tolerance and the model's figures.
enum class Level { beginner, middle, advanced };

}  // namespace lowledger::studio
