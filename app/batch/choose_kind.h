#pragma once

#include <span>
#include <string_view>

#include "model/horns/kind.h"

namespace lowledger::batch {

/// The kind of that id. Throws Refusal that begins with `asked_by` ("--kind") and lists the ids there are.
const horns::HornKind& choose_kind(std::span<const horns::HornKind> kinds, std::string_view id,
                                   std::string_view asked_by);

/// The reader of that id; the kind's first for an empty one. Throws Refusal that lists the kind's readers.
const horns::Reader& choose_reader(const horns::HornKind& kind, std::string_view id);

}  // namespace lowledger::batch
