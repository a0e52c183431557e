#pragma once

#include <optional>
#include <vector>

#include "reports/canvas/page.h"

namespace lowledger::engraving {

/// The box that an item's ink lies in; a text's from its ascenders to its descenders.
canvas::Box ink_of(const canvas::Item& item);

/// The item, right and down by `by`.
canvas::Item moved(canvas::Item item, const canvas::Point& by);

/// What is drawn so far, asked for how far up and down it reaches.
class Skyline {
  public:
    void add(const canvas::Box& box) { boxes_.push_back(box); }
    [[nodiscard]] const std::vector<canvas::Box>& boxes() const { return boxes_; }
    /// y of the highest ink that has a part between two x; empty where there is none.
    [[nodiscard]] std::optional<units::Millimetres> top(units::Millimetres from, units::Millimetres to) const;
    [[nodiscard]] std::optional<units::Millimetres> bottom(units::Millimetres from,
                                                           units::Millimetres to) const;

  private:
    std::vector<canvas::Box> boxes_;
};

}  // namespace lowledger::engraving
