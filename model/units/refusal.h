#pragma once

#include <stdexcept>
#include <string>

namespace lowledger::units {

/// Something asked for cannot be done. `what()` is a whole sentence for the person who asked: it names the
/// file, line or field, says what is wrong and what to do. Layers derive from it where a caller must tell
/// cases apart.
class Refusal : public std::runtime_error {
  public:
    explicit Refusal(const std::string& sentence) : std::runtime_error(sentence) {}
};

}  // namespace lowledger::units
