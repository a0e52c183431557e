#pragma once

#include <string_view>
#include <vector>

#include "model/horns/kind.h"
#include "model/studio/records.h"

namespace lowledger::exchange {

/// Readings from CSV with the columns note, fingering, cents and, if there, take. Notes are sounding pitch
/// ("Bb2"), fingerings as in files ("0", "12"), cents in every form that a tuner's number is typed
/// (`studio::read_tuner_number`), within 100 of the note. Without a take, or where it is empty, it is the
/// first. Throws Refusal that names `file`, line and column, and says what to do: besides what `read_csv`
/// refuses, a note that is none, a fingering that `kind` has not or that cannot sound the note, words for
/// numbers, too many cents, the same note, fingering and take twice, no reading at all.
std::vector<studio::Reading> read_sheet_csv(std::string_view text, std::string_view file,
                                            const horns::HornKind& kind);

}  // namespace lowledger::exchange
