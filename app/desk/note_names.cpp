#include "app/desk/note_names.h"

#include "reports/words/names.h"

namespace lowledger::desk {

std::string note_name(const studio::StudioFacts& facts, units::Pitch note) {
    return words::note_name_with_octave(units::spell(note, facts.accidentals));
}

}  // namespace lowledger::desk
