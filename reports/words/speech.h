#pragma once

#include "model/horns/kind.h"
#include "model/horns/note_style.h"
#include "reports/words/words.h"

namespace lowledger::words {

/// What sentences about one player's notes on one kind of horn are said with. Notes are named as the player
/// writes and calls them.
struct Speech {
    const Words& words;
    const horns::HornKind& kind;
    horns::NoteStyle style = {};
};

}  // namespace lowledger::words
