#pragma once

#include <string_view>

#include "model/horns/kind.h"
#include "model/horns/note_style.h"
#include "model/studio/records.h"

namespace lowledger::studio {

/// The reader of that key among the kind's; where the kind has none of it (a student who changed horns), or
/// the key is empty, the kind's first.
horns::Reader reader_of(const horns::HornKind& kind, std::string_view reader_id);

/// How a student's notes on a horn of this kind are written and named: the student's own choices, else the
/// studio's and the kind's.
horns::NoteStyle note_style(const StudioFacts& facts, const Student& student, const horns::HornKind& kind);

/// The same where no student is meant: a horn's or a kind's own page.
horns::NoteStyle note_style(const StudioFacts& facts, const horns::HornKind& kind);

}  // namespace lowledger::studio
