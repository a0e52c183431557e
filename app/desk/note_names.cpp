#include "app/desk/note_names.h"

#include "app/desk/desk.h"

namespace lowledger::desk {

horns::NoteStyle note_style(const Desk& desk) {
    const auto facts = desk.file().facts();
    if (!desk.horn()) return {.accidentals = facts.accidentals, .naming = facts.naming};
    if (!desk.student()) return studio::note_style(facts, desk.kind());
    return studio::note_style(facts, *desk.student(), desk.kind());
}

}  // namespace lowledger::desk
