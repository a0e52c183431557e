#pragma once

#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/words/words.h"

namespace lowledger::pages {

/// The four sizes of type that every page keeps to: 18, 11, 9 and 7 points.
namespace type {
inline constexpr canvas::TextStyle title{units::Points(18.0), canvas::Weight::bold, canvas::Tone::ink};
inline constexpr canvas::TextStyle heading{units::Points(11.0), canvas::Weight::bold, canvas::Tone::ink};
inline constexpr canvas::TextStyle lead{units::Points(11.0), canvas::Weight::regular, canvas::Tone::ink};
inline constexpr canvas::TextStyle strong{units::Points(9.0), canvas::Weight::bold, canvas::Tone::ink};
inline constexpr canvas::TextStyle body{units::Points(9.0), canvas::Weight::regular, canvas::Tone::ink};
inline constexpr canvas::TextStyle small_strong{units::Points(7.0), canvas::Weight::bold, canvas::Tone::ink};
inline constexpr canvas::TextStyle small{units::Points(7.0), canvas::Weight::regular, canvas::Tone::ink};
}  // namespace type

/// What every part of a page is written on and with.
struct Sheet {
    canvas::Page& page;
    const canvas::Faces& faces;
    const words::Words& words;
};

}  // namespace lowledger::pages
