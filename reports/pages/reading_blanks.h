#pragma once

#include <string>
#include <vector>

#include "reports/pages/player.h"
#include "reports/pages/type.h"

/// Notes on a staff with room under each to write down what the tuner shows.
namespace lowledger::pages {

struct NoteToPlay {
    units::Pitch note;
    horns::Fingering fingering;
};

struct ReadingBlanks {
    const horns::HornKind& kind;
    horns::NoteStyle style;
    std::vector<NoteToPlay> notes;
    /// What stands before each row of blanks.
    std::vector<std::string> rows;
    /// Left of the staff, for these.
    units::Millimetres label_width;
};

units::Millimetres reading_blanks_height(const Sheet& sheet, const ReadingBlanks& blanks);
void draw_reading_blanks(const Sheet& sheet, const ReadingBlanks& blanks, canvas::Point top_left,
                         units::Millimetres width);

/// Thin, to write on.
void draw_writing_line(const Sheet& sheet, canvas::Point left_end, units::Millimetres width);

}  // namespace lowledger::pages
