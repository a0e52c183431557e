#include "model/studio/note_style.h"

#include <algorithm>

namespace lowledger::studio {

horns::Reader reader_of(const horns::HornKind& kind, std::string_view reader_id) {
    const auto found = std::ranges::find(kind.readers, reader_id, &horns::Reader::id);
    if (found != kind.readers.end()) return *found;
    return kind.readers.empty() ? horns::NoteStyle{}.reader : kind.readers.front();
}

horns::NoteStyle note_style(const StudioFacts& facts, const Student& student, const horns::HornKind& kind) {
    return {reader_of(kind, student.reader), student.accidentals.value_or(facts.accidentals), facts.naming};
}

horns::NoteStyle note_style(const StudioFacts& facts, const horns::HornKind& kind) {
    return {reader_of(kind, {}), facts.accidentals, facts.naming};
}

}  // namespace lowledger::studio
