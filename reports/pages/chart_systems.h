#pragma once

#include <vector>

#include "reports/engraving/note_row.h"
#include "reports/pages/chart_page.h"
#include "reports/pages/type.h"
#include "reports/words/chart_words.h"

/// The staves of the fingering chart.
namespace lowledger::pages {

/// A note of the chart with all that stands over and under it.
struct ChartColumn {
    engraving::RowNote note;
    /// Lines over the staff: the reader's names, and the tuner's where they differ.
    std::vector<std::string> over;
    /// Lines under the lean: false tone, the way the slide moves, how often it was read.
    std::vector<std::string> under;
    std::vector<std::string> alternates;
};

/// One staff of the chart.
struct ChartSystem {
    std::vector<ChartColumn> columns;
    units::Millimetres height;
};

/// All systems of one chart, measured: columns of one width, as even in number as they go.
struct ChartSystems {
    engraving::Engraver engraver;
    horns::Clef clef;
    units::Millimetres width;
    units::Millimetres columns_left;
    units::Millimetres column_width;
    std::vector<ChartSystem> systems;
};

/// With at most so many other ways under a note.
std::vector<ChartColumn> chart_columns(const ChartInputs& inputs, const words::Speech& speech,
                                       const std::vector<horns::ChartNote>& chart,
                                       std::size_t most_alternates);

/// `columns` is not empty.
ChartSystems chart_systems(const std::vector<ChartColumn>& columns, horns::Clef clef,
                           const engraving::Engraver& engraver, units::Millimetres width);

void draw_system(const Sheet& sheet, const ChartSystems& all, const ChartSystem& system,
                 canvas::Point top_left);

}  // namespace lowledger::pages
