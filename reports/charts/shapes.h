#pragma once

#include <initializer_list>
#include <string>

#include "model/units/quantity.h"
#include "reports/canvas/page.h"

namespace lowledger::charts {

/// A filled rectangle, named in recorded text.
void add_rectangle(canvas::Page& page, std::string name, const canvas::Box& box, canvas::Tone tone);
/// Its outline, the stroke inside the box.
void add_frame(canvas::Page& page, const canvas::Box& box, const canvas::Stroke& stroke);
/// A filled polygon.
void add_polygon(canvas::Page& page, std::string name, std::initializer_list<canvas::Point> corners,
                 canvas::Tone tone);
/// A closed outline through the corners.
void add_open_polygon(canvas::Page& page, std::initializer_list<canvas::Point> corners,
                      const canvas::Stroke& stroke);

/// A filled disc, and a ring whose stroke lies inside the radius.
void add_disc(canvas::Page& page, std::string name, canvas::Point middle, units::Millimetres radius,
              canvas::Tone tone);
void add_ring(canvas::Page& page, canvas::Point middle, units::Millimetres radius,
              const canvas::Stroke& stroke);

/// Height of the numerals of a style.
units::Millimetres numeral_height(const canvas::TextStyle& style);
/// The baseline at which numerals of a style stand centred on `y`.
units::Millimetres middle_baseline(units::Millimetres y, const canvas::TextStyle& style);

}  // namespace lowledger::charts
