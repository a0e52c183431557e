#pragma once

#include "model/horns/kind.h"
#include "model/studio/records.h"

namespace lowledger::studio {

/// The kind of a horn, read from the text that the studio keeps with it, so that it answers where the kind is
/// not installed. Throws Refusal that names the horn. It parses each time: keep the answer while a page is
/// made.
horns::HornKind kind_of(const Horn& horn);

}  // namespace lowledger::studio
