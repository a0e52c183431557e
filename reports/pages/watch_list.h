#pragma once

#include <string>
#include <vector>

#include "model/tuning/remains.h"
#include "reports/words/tuning_words.h"

namespace lowledger::pages {

/// One kind of remedy with the notes that it is for.
struct WatchGroup {
    /// "Horn", "Air", "Lips", "Teacher".
    std::string label;
    /// "Sharp: D♭ (1-2-3) +18, G (1-2) +16. Use slower, warmer air ..."
    std::string text;
    bool operator==(const WatchGroup&) const = default;
};

/// The notes to watch in the order horn, air, lips, teacher, sharp before flat; of each group at most `most`
/// notes by name, the worst first, and how many more there are.
std::vector<WatchGroup> watch_groups(const words::Speech& speech, const tuning::Remains& remains,
                                     std::size_t most);

}  // namespace lowledger::pages
