#include "app/desk/sheet_entry.h"

#include <algorithm>
#include <cmath>

#include "model/horns/chart.h"
#include "model/units/number_text.h"

namespace lowledger::desk {
namespace {

using studio::Reading;
using studio::TunerNumber;

constexpr int times_round = 2;
constexpr int most_takes = 9;

bool same_way(const SheetRow& row, const Reading& reading) {
    return row.note == reading.note && row.fingering == reading.fingering;
}

bool has_row(const std::vector<SheetRow>& rows, units::Pitch note, const horns::Fingering& fingering) {
    return std::ranges::any_of(
        rows, [&](const SheetRow& row) { return row.note == note && row.fingering == fingering; });
}

int partial_of(const horns::HornKind& kind, const horns::Fingering& fingering, units::Pitch note) {
    const auto found = horns::sounding_partial(kind, fingering, note);
    return found ? found->partial : 0;
}

std::vector<SheetRow> rows_of(const horns::HornKind& kind, const studio::TuningSheet& sheet, bool more) {
    std::vector<SheetRow> rows;
    const auto add = [&](units::Pitch note, const horns::Fingering& fingering, int partial, bool tuning) {
        if (!has_row(rows, note, fingering)) rows.push_back({note, fingering, partial, tuning});
    };
    for (const auto& step : kind.tuning_order)
        add(step.note, step.fingering, partial_of(kind, step.fingering, step.note), true);
    const auto chart = horns::chart(kind);
    // One partial alone would tune a note, not the horn: the open notes of the core range come too.
    for (const auto& note : chart) {
        const bool open = note.usual.fingering == horns::Fingering{} && note.usual.partial > 2;
        if (open && kind.core_range.contains(note.note))
            add(note.note, note.usual.fingering, note.usual.partial, true);
    }
    const auto tuning_rows = static_cast<std::ptrdiff_t>(rows.size());
    if (more) {
        for (const auto& note : chart)
            if (note.usual.tone != horns::Tone::false_tone)
                add(note.note, note.usual.fingering, note.usual.partial, false);
    }
    for (const auto& reading : sheet.readings)
        add(reading.note, reading.fingering, reading.partial, false);
    std::stable_sort(rows.begin() + tuning_rows, rows.end(),
                     [](const SheetRow& a, const SheetRow& b) { return a.note < b.note; });
    return rows;
}

}  // namespace

std::string tuner_text(units::Cents cents) {
    const bool whole = cents.value() == std::round(cents.value());
    return units::signed_text(cents.value(), whole ? 0 : 1);
}

SheetEntry::SheetEntry(const horns::HornKind& kind, studio::TuningSheet sheet, bool more_notes)
    : sheet_(std::move(sheet)), more_notes_(more_notes), rows_(rows_of(kind, sheet_, more_notes)) {}

int SheetEntry::takes() const {
    int complete = 0;
    for (int take = 1; take <= most_takes; ++take) {
        const bool all = std::ranges::all_of(rows_, [&](const SheetRow& row) {
            return !row.tuning_note || std::ranges::any_of(sheet_.readings, [&](const Reading& r) {
                return r.take == take && same_way(row, r);
            });
        });
        if (!all) break;
        complete = take;
    }
    int last = 0;
    for (const auto& reading : sheet_.readings)
        last = std::max(last, reading.take);
    for (const auto& [cell, typed] : pending_)
        last = std::max(last, cell.take);
    return std::clamp(std::max({times_round, complete + 1, last}), times_round, most_takes);
}

std::optional<units::Cents> SheetEntry::reading(Cell cell) const {
    for (const auto& reading : sheet_.readings)
        if (reading.take == cell.take && same_way(rows_.at(cell.row), reading)) return reading.cents;
    return std::nullopt;
}

std::string SheetEntry::text(Cell cell) const {
    if (const auto found = pending_.find(cell); found != pending_.end()) return found->second.typed;
    return reading_text(cell);
}

std::string SheetEntry::reading_text(Cell cell) const {
    const auto cents = reading(cell);
    return cents ? tuner_text(*cents) : std::string();
}

std::optional<units::Cents> SheetEntry::mean(std::size_t row) const {
    units::Cents sum;
    int count = 0;
    for (const auto& reading : sheet_.readings) {
        if (!same_way(rows_.at(row), reading)) continue;
        sum += reading.cents;
        ++count;
    }
    if (count == 0) return std::nullopt;
    return sum / count;
}

void SheetEntry::set_reading(Cell cell, std::optional<units::Cents> cents) {
    const SheetRow& row = rows_.at(cell.row);
    std::erase_if(sheet_.readings, [&](const Reading& r) { return r.take == cell.take && same_way(row, r); });
    if (cents) sheet_.readings.push_back({row.note, row.fingering, row.partial, cell.take, *cents});
}

SheetEntry::Outcome SheetEntry::type(Cell cell, std::string_view typed) {
    using Kind = Outcome::Kind;
    if (typed == text(cell)) {
        const auto found = pending_.find(cell);
        if (found == pending_.end()) return {Kind::unchanged, {}};
        if (found->second.outcome.kind != Kind::asks) return found->second.outcome;
        const auto read = studio::read_tuner_number(typed, rows_.at(cell.row).note);
        pending_.erase(found);
        set_reading(cell, read.cents);
        return {Kind::taken, {}};
    }
    pending_.erase(cell);
    if (typed.find_first_not_of(" \t") == std::string_view::npos) {
        const bool had = reading(cell).has_value();
        set_reading(cell, std::nullopt);
        return {had ? Kind::taken : Kind::unchanged, {}};
    }
    const auto read = studio::read_tuner_number(typed, rows_.at(cell.row).note);
    if (read.verdict == TunerNumber::Verdict::taken) {
        if (reading(cell) == read.cents) return {Kind::unchanged, {}};
        set_reading(cell, read.cents);
        return {Kind::taken, {}};
    }
    Outcome outcome{read.verdict == TunerNumber::Verdict::ask ? Kind::asks : Kind::refused, read.sentence};
    pending_[cell] = {std::string(typed), outcome};
    return outcome;
}

Cell SheetEntry::after(Cell cell) const {
    if (cell.row + 1 < rows_.size()) return {cell.row + 1, cell.take};
    if (cell.take < takes()) return {0, cell.take + 1};
    return cell;
}

Cell SheetEntry::first_empty() const {
    for (int take = 1; take <= takes(); ++take) {
        for (std::size_t row = 0; row < rows_.size(); ++row)
            if (rows_[row].tuning_note && text({row, take}).empty()) return {row, take};
    }
    return {0, 1};
}

std::string SheetEntry::question(std::size_t row) const {
    for (const auto& [cell, typed] : pending_)
        if (cell.row == row) return typed.outcome.sentence;
    return {};
}

bool SheetEntry::asks(std::size_t row) const {
    return std::ranges::any_of(pending_, [&](const auto& entry) {
        return entry.first.row == row && entry.second.outcome.kind == Outcome::Kind::asks;
    });
}

void SheetEntry::keep_pending_of(const SheetEntry& other) {
    for (const auto& [cell, typed] : other.pending_) {
        const auto found = std::ranges::find(rows_, other.rows_.at(cell.row));
        if (found != rows_.end())
            pending_[{static_cast<std::size_t>(found - rows_.begin()), cell.take}] = typed;
    }
}

void SheetEntry::set_head(const studio::TuningSheet& head) {
    auto readings = std::move(sheet_.readings);
    sheet_ = head;
    sheet_.readings = std::move(readings);
}

}  // namespace lowledger::desk
