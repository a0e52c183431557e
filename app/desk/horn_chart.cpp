#include "app/desk/horn_chart.h"

#include <algorithm>

#include "app/desk/live.h"
#include "model/studio/note_style.h"
#include "model/tuning/inputs.h"
#include "model/units/refusal.h"

namespace lowledger::desk {

HornChart::HornChart(const store::StudioFile& file, const studio::Horn& horn, const horns::HornKind& kind,
                     studio::Date today)
    : horn_(horn), chart_(kind, studio::note_style(file.facts(), kind)) {
    auto sheets = file.sheets(horn.id);
    std::ranges::stable_sort(sheets, std::ranges::greater{}, &studio::TuningSheet::on);
    for (const auto& sheet : sheets) {
        if (std::ranges::find(players_, sheet.student, &ChartPlayer::student) != players_.end()) continue;
        if (const auto student = file.student(sheet.student))
            players_.push_back({student->id, student->name});
    }
    if (players_.empty()) return;
    try {
        lean_as(0, file, today);
    } catch (const units::Refusal&) {
        // What is wrong is said where the settings are asked for; the chart as built is right all the same.
        player_.reset();
    }
}

void HornChart::lean_as(std::optional<std::size_t> player, const store::StudioFile& file,
                        studio::Date today) {
    if (!player) {
        chart_.lean_as(std::nullopt);
        player_.reset();
        return;
    }
    const auto student = file.student(players_.at(*player).student);
    if (!student) return;
    const auto live =
        worked_out(tuning::inputs_of(file.facts(), *student, horn_, chart_.kind(),
                                     file.slide_history(horn_.id), file.sheets(horn_.id), today));
    if (!live.there()) throw units::Refusal(live.refusal);
    chart_.lean_as(pages::ChartOfHorn{horn_.mark, student->name, live.answer->profile});
    player_ = player;
}

void HornChart::keep_look_of(const HornChart& other, const store::StudioFile& file, studio::Date today) {
    if (chart_.kind().id != other.chart_.kind().id) return;
    const auto& readers = chart_.kind().readers;
    const auto reader = std::ranges::find(readers, other.chart_.style().reader);
    if (reader != readers.end()) chart_.read_as(static_cast<std::size_t>(reader - readers.begin()));
    chart_.look_at(other.chart_.note());
    if (!other.player_) {
        lean_as(std::nullopt, file, today);
        return;
    }
    const auto player = std::ranges::find(players_, other.players_.at(*other.player_));
    const auto at = static_cast<std::size_t>(player - players_.begin());
    if (player != players_.end() && player_ != at) lean_as(at, file, today);
}

}  // namespace lowledger::desk
