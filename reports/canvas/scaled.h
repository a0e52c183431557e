#pragma once

#include "reports/canvas/page.h"

namespace lowledger::canvas {

/// The page with every length, type too, `factor` times as large.
Page scaled(const Page& page, double factor);

}  // namespace lowledger::canvas
