#pragma once

#include "model/studio/note_style.h"

namespace lowledger::desk {

class Desk;

/// How notes stand on the open page: as the student's part has them, or the horn's first reader; the studio's
/// names without either. Only with a studio.
horns::NoteStyle note_style(const Desk& desk);

}  // namespace lowledger::desk
