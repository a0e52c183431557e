#include "model/horns/note_style.h"

namespace lowledger::horns {

units::Spelling spelt(units::Pitch sounding, const NoteStyle& style) {
    return written(units::spell(sounding, style.accidentals), style.reader);
}

bool calls_notes_otherwise(const Reader& reader) {
    return reader.written_above.count % 12 != 0;
}

}  // namespace lowledger::horns
