#pragma once

#include <vector>

#include "reports/engraving/music_line.h"
#include "reports/engraving/spacing.h"

namespace lowledger::engraving {

/// Which events stand on a staff, and how far apart.
struct SystemPlan {
    std::size_t begin = 0;
    /// One past the last.
    std::size_t end = 0;
    double stretch = 1.0;
    units::Millimetres staff_width;
};

/// From the staff's left end past clef, key and (where the line begins) time to the first event's ink.
units::Millimetres start_of_system(const Engraver& engraver, const MusicLine& line, std::size_t begin);

/// From the last event's ink to the staff's right end: none after a bar line.
units::Millimetres end_of_system(const Engraver& engraver, const MusicLine& line, std::size_t begin,
                                 std::size_t end);

/// Sets the events of a plan; `notes` are those of the whole line, `columns` those of the plan.
EngravedSystem engrave_system(const Engraver& engraver, const MusicLine& line, const std::vector<Note>& notes,
                              const std::vector<Column>& columns, const SystemPlan& plan);

}  // namespace lowledger::engraving
