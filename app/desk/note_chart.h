#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/desk/listing.h"
#include "app/desk/pictures.h"
#include "model/horns/chart.h"
#include "model/horns/note_style.h"
#include "reports/pages/chart_page.h"

namespace lowledger::desk {

/// The chart of a kind, or of a horn with its own leans, as one looks at it: how it is read, whose leans it
/// shows, which note is looked at.
class NoteChart {
  public:
    /// The reader of `style` is one of the kind's; an unknown one becomes the kind's first.
    NoteChart(horns::HornKind kind, horns::NoteStyle style);

    [[nodiscard]] const horns::HornKind& kind() const { return kind_; }
    [[nodiscard]] const horns::NoteStyle& style() const { return style_; }
    [[nodiscard]] const std::vector<horns::ChartNote>& notes() const { return notes_; }
    /// Where the reader stands among the kind's.
    [[nodiscard]] std::size_t reader() const;
    void read_as(std::size_t reader);
    /// Leans as believed of a horn in a student's hands; without, the kind's as built.
    void lean_as(std::optional<pages::ChartOfHorn> horn) { horn_ = std::move(horn); }
    [[nodiscard]] const std::optional<pages::ChartOfHorn>& horn() const { return horn_; }

    /// The note that is looked at: at first the one a band tunes to.
    [[nodiscard]] units::Pitch note() const { return note_; }
    /// Only a note of the chart; another is passed over.
    void look_at(units::Pitch note);
    /// So many notes up, down if negative, as far as the chart goes.
    void step(int notes);
    /// Looks at the note that was typed as the reader calls it, else as a tuner does: "Bb2", "B♭". Without an
    /// octave it is the next of that name above the one looked at, after the highest the lowest. A sentence
    /// where it is no note or none of the chart; empty if it was found.
    std::string find(const words::Words& words, std::string_view typed);

    /// As the reader calls a note, with its octave.
    [[nodiscard]] std::string name(units::Pitch note) const;
    /// As a tuner calls it, without octave.
    [[nodiscard]] std::string tuner_name(units::Pitch note) const;

    /// All notes, a row each; the id is the note's MIDI number.
    [[nodiscard]] Listing table(const words::Words& words) const;
    /// Every way of the note looked at, the best first.
    [[nodiscard]] Listing ways(const words::Words& words) const;
    /// What stands over the ways, and why the usual one is usual.
    [[nodiscard]] std::string ways_heading(const words::Words& words) const;
    [[nodiscard]] std::string why(const words::Words& words) const;
    /// How the chart is written and whose leans it shows.
    [[nodiscard]] std::string about(const words::Words& words) const;

    /// The chart on staves over a width, the note looked at marked.
    [[nodiscard]] Picture picture(const PictureTools& tools, units::Millimetres width) const;
    /// The note drawn at a point of the picture of that width.
    [[nodiscard]] std::optional<units::Pitch> note_at(const PictureTools& tools, units::Millimetres width,
                                                      canvas::Point point) const;
    /// What the printed chart is made of; holds references to this chart.
    [[nodiscard]] pages::ChartInputs printed(canvas::Paper paper) const;

  private:
    [[nodiscard]] const horns::ChartNote& looked_at() const;
    [[nodiscard]] const tuning::ProfileNote* own(units::Pitch note, const horns::Way& way) const;
    [[nodiscard]] units::Cents lean(units::Pitch note, const horns::Way& way) const;
    [[nodiscard]] ListingRow table_row(const words::Words& words, const horns::ChartNote& note) const;
    [[nodiscard]] ListingRow way_row(const words::Words& words, const horns::Way& way, int rank) const;
    [[nodiscard]] std::string remark(const words::Words& words, units::Pitch note,
                                     const horns::Way& way) const;
    [[nodiscard]] std::optional<units::Pitch> of_name(std::string_view typed) const;

    horns::HornKind kind_;
    horns::NoteStyle style_;
    std::vector<horns::ChartNote> notes_;
    std::optional<pages::ChartOfHorn> horn_;
    units::Pitch note_;
};

}  // namespace lowledger::desk
