#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "app/desk/note_chart.h"
#include "model/store/studio_file.h"

namespace lowledger::desk {

/// A student whose sheets tell how a horn leans.
struct ChartPlayer {
    studio::StudentId student;
    std::string name;
    bool operator==(const ChartPlayer&) const = default;
};

/// The chart of a horn of the studio: of its kind as built, or with the leans of one who has played it.
class HornChart {
  public:
    /// Leans of whoever filed the newest sheet on it, if anybody did.
    HornChart(const store::StudioFile& file, const studio::Horn& horn, const horns::HornKind& kind,
              studio::Date today);

    [[nodiscard]] const NoteChart& chart() const { return chart_; }
    [[nodiscard]] NoteChart& chart() { return chart_; }
    /// Who has sheets on it, the newest first.
    [[nodiscard]] const std::vector<ChartPlayer>& players() const { return players_; }
    /// Where the player whose leans are shown stands among them; empty: as built.
    [[nodiscard]] std::optional<std::size_t> player() const { return player_; }
    /// Throws Refusal where the sheets make no sense; the chart then stays as it is.
    void lean_as(std::optional<std::size_t> player, const store::StudioFile& file, studio::Date today);
    /// Takes over how another chart of the same horn was looked at.
    void keep_look_of(const HornChart& other, const store::StudioFile& file, studio::Date today);

  private:
    studio::Horn horn_;
    NoteChart chart_;
    std::vector<ChartPlayer> players_;
    std::optional<std::size_t> player_;
};

}  // namespace lowledger::desk
