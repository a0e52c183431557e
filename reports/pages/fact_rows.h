#pragma once

#include <string>
#include <vector>

#include "reports/canvas/faces.h"
#include "reports/pages/flow.h"

namespace lowledger::pages {

/// What a thing is called and what is known of it.
struct Fact {
    std::string name;
    /// Empty: not known.
    std::string value;
};

/// A row a fact, names bold at the left, values wrapped beside them. What is not known is a line to write on
/// where `to_write`, else left out.
void put_facts(Flow& flow, const canvas::Faces& faces, const std::vector<Fact>& facts, bool to_write);

}  // namespace lowledger::pages
