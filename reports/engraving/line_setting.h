#pragma once

#include <algorithm>
#include <utility>
#include <vector>

#include "reports/engraving/ink.h"
#include "reports/engraving/music_system.h"

namespace lowledger::engraving {

/// A staff while it is being set: events keep their places in the whole line. What is drawn goes to `page`;
/// what later signs must keep clear of, to `ink`.
class LineSetting {
  public:
    LineSetting(const MusicLine& line, std::vector<Note> notes, std::vector<units::Millimetres> anchors,
                const SystemPlan& plan)
        : staff{line.clef, {}, plan.staff_width},
          line_(&line),
          notes_(std::move(notes)),
          anchors_(std::move(anchors)),
          plan_(plan) {}

    canvas::Page page;
    Staff staff;
    Skyline ink;

    [[nodiscard]] const MusicLine& line() const { return *line_; }
    [[nodiscard]] std::size_t begin() const { return plan_.begin; }
    [[nodiscard]] std::size_t end() const { return plan_.end; }
    [[nodiscard]] bool has(std::size_t event) const { return event >= plan_.begin && event < plan_.end; }
    [[nodiscard]] units::Millimetres anchor(std::size_t event) const {
        return anchors_.at(event - plan_.begin);
    }
    [[nodiscard]] Note& note(std::size_t event) { return notes_.at(event); }
    [[nodiscard]] const Note& note(std::size_t event) const { return notes_.at(event); }
    /// The event if it is a note.
    [[nodiscard]] const LineNote* line_note(std::size_t event) const {
        return std::get_if<LineNote>(&line_->events.at(event));
    }

    /// What was drawn since the last of these calls keeps later signs away, or does not.
    void take_in() {
        for (; taken_ < page.items.size(); ++taken_)
            ink.add(ink_of(page.items[taken_]));
    }
    void pass_over() { taken_ = page.items.size(); }

    /// y of the highest and lowest ink between two x, the staff's own at the least.
    [[nodiscard]] units::Millimetres top(units::Millimetres from, units::Millimetres to) const {
        return std::min(ink.top(from, to).value_or(staff.top_left.y), staff.top_left.y);
    }
    [[nodiscard]] units::Millimetres bottom(units::Millimetres from, units::Millimetres to,
                                            units::Millimetres staff_height) const {
        return std::max(ink.bottom(from, to).value_or(staff_height), staff_height);
    }

  private:
    const MusicLine* line_;
    std::vector<Note> notes_;
    std::vector<units::Millimetres> anchors_;
    SystemPlan plan_;
    std::size_t taken_ = 0;
};

}  // namespace lowledger::engraving
