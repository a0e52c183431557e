#pragma once

#include <string>
#include <vector>

#include "model/studio/records.h"

namespace lowledger::desk {

class Desk;

/// A way that a student's parts may be written.
struct ReaderOffer {
    /// What the student's record keeps; empty: the usual one of the horn.
    std::string id;
    std::string text;
    bool operator==(const ReaderOffer&) const = default;
};

/// The readers of the horns that the student plays today; of all kinds, without the interval that differs
/// from kind to kind, for one who plays none. The first is the usual one; the student's own is always among
/// them.
std::vector<ReaderOffer> readers_offered(const Desk& desk, const studio::Student& student);

}  // namespace lowledger::desk
