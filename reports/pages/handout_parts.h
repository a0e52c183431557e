#pragma once

#include <string>
#include <vector>

#include "reports/charts/gauge_strip.h"
#include "reports/pages/handout.h"
#include "reports/pages/type.h"
#include "reports/words/tuning_words.h"

/// The parts of the handout. Each draws from the top of its place and returns the y below its last ink.
namespace lowledger::pages {

/// Space between parts of a column.
inline constexpr units::Millimetres part_gap{4.5};
/// Notes on the chart, and notes to watch of one remedy by name.
inline constexpr std::size_t most_by_name = 16;

words::Speech speech_of(const HandoutInputs& inputs, const words::Words& words);
/// "main slide" as the horn's kind calls it; the id if it calls it nothing.
std::string slide_name(const horns::HornKind& kind, const std::string& id);
/// With a capital, to stand alone.
std::string slide_title(const horns::HornKind& kind, const std::string& id);
const tuning::SlideAnswer* slide_answer(const tuning::TuningAnswer& answer, const std::string& id);
bool is_stuck(const studio::Horn& horn, const std::string& slide);

units::Millimetres draw_head(const Sheet& sheet, const HandoutInputs& inputs, const canvas::Box& place);

/// Cautions in two columns of small type.
units::Millimetres cautions_height(const Sheet& sheet, const horns::HornKind& kind, units::Millimetres width);
void draw_cautions(const Sheet& sheet, const horns::HornKind& kind, canvas::Point top_left,
                   units::Millimetres width);

/// The steps in working order, spread over the height of the place; `steps_height` is what they need.
units::Millimetres steps_height(const Sheet& sheet, const HandoutInputs& inputs, units::Millimetres width);
void draw_steps(const Sheet& sheet, const HandoutInputs& inputs, const canvas::Box& place);

/// One note on a staff with its fingering, in the middle of the place.
void draw_staff_note(const Sheet& sheet, const HandoutInputs& inputs, units::Pitch note,
                     const horns::Fingering& fingering, const canvas::Box& place);

/// What is missing, what would help, and a form with the notes to play and room to write.
units::Millimetres draw_missing_notes(const Sheet& sheet, const HandoutInputs& inputs,
                                      const canvas::Box& place);
/// A line to fill in for each slide.
units::Millimetres draw_slide_form(const Sheet& sheet, const HandoutInputs& inputs, const canvas::Box& place);

/// The lean chart of the tuning notes and the notes to watch; in a low place only as many as stand on one
/// system.
units::Millimetres least_chart_height(const Sheet& sheet, const HandoutInputs& inputs,
                                      units::Millimetres width);
units::Millimetres draw_chart(const Sheet& sheet, const HandoutInputs& inputs, const canvas::Box& place);

units::Millimetres band_note_height(const Sheet& sheet, const HandoutInputs& inputs,
                                    units::Millimetres width);
units::Millimetres draw_band_note(const Sheet& sheet, const HandoutInputs& inputs, canvas::Point top_left,
                                  units::Millimetres width);

/// The notes to watch in the order horn, air, lips, teacher; lists are cut so that all fits the place.
units::Millimetres draw_watch_list(const Sheet& sheet, const HandoutInputs& inputs, const canvas::Box& place);
/// With at most `most` notes of each remedy by name.
units::Millimetres watch_list_height(const Sheet& sheet, const HandoutInputs& inputs,
                                     units::Millimetres width, std::size_t most);

/// The strips to cut out that fit a height, those of slides that move first. What has no room is named.
struct Strips {
    std::vector<charts::GaugeStrip> shown;
    std::vector<std::string> left_out;
    units::Millimetres height;
};
Strips strips_that_fit(const Sheet& sheet, const HandoutInputs& inputs, units::Millimetres width,
                       units::Millimetres height);
void draw_strips(const Sheet& sheet, const Strips& strips, canvas::Point top_left, units::Millimetres width);

}  // namespace lowledger::pages
