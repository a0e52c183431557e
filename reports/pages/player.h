#pragma once

#include "model/horns/kind.h"
#include "model/studio/note_style.h"
#include "model/studio/records.h"

namespace lowledger::pages {

/// A student with a horn.
struct Player {
    studio::Student student;
    studio::Horn horn;
    horns::HornKind kind;
};

inline horns::NoteStyle note_style(const studio::StudioFacts& facts, const Player& player) {
    return studio::note_style(facts, player.student, player.kind);
}

}  // namespace lowledger::pages
