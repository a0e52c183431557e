#include "app/desk/pass_entry.h"

#include <algorithm>
#include <utility>

#include "model/horns/section_notes.h"

namespace lowledger::desk {
namespace {

using studio::TunerNumber;

std::vector<std::optional<SheetRow>> row_of(const horns::HornKind& kind,
                                            std::span<const units::Pitch> notes) {
    std::vector<std::optional<SheetRow>> row;
    for (const auto& charted : horns::section_notes(kind, notes)) {
        std::optional<SheetRow> played;
        if (charted) played = SheetRow{charted->note, charted->usual.fingering, charted->usual.partial, true};
        row.push_back(played);
    }
    return row;
}

}  // namespace

PassEntry::PassEntry(std::vector<pages::Player> players, std::vector<units::Pitch> notes)
    : players_(std::move(players)), notes_(std::move(notes)) {
    played_.reserve(players_.size());
    for (const auto& player : players_)
        played_.push_back(row_of(player.kind, notes_));
}

const std::optional<SheetRow>& PassEntry::played(PassCell cell) const {
    return played_.at(cell.player).at(cell.note);
}

std::optional<units::Cents> PassEntry::reading(PassCell cell) const {
    const auto found = taken_.find(cell);
    return found == taken_.end() ? std::nullopt : std::optional(found->second);
}

std::string PassEntry::reading_text(PassCell cell) const {
    const auto cents = reading(cell);
    return cents ? tuner_text(*cents) : std::string();
}

std::string PassEntry::text(PassCell cell) const {
    if (const auto found = pending_.find(cell); found != pending_.end()) return found->second.typed;
    return reading_text(cell);
}

PassEntry::Outcome PassEntry::type(PassCell cell, std::string_view typed) {
    using Kind = Outcome::Kind;
    const auto found = pending_.find(cell);
    if (typed == text(cell)) {
        if (found == pending_.end()) return {Kind::unchanged, {}};
        if (found->second.outcome.kind != Kind::asks) return found->second.outcome;
        pending_.erase(found);
        taken_[cell] = studio::read_tuner_number(typed, played(cell).value().note).cents;
        return {Kind::taken, {}};
    }
    pending_.erase(cell);
    return judged(cell, typed);
}

PassEntry::Outcome PassEntry::judged(PassCell cell, std::string_view typed) {
    using Kind = Outcome::Kind;
    if (typed.find_first_not_of(" \t") == std::string_view::npos)
        return {taken_.erase(cell) > 0 ? Kind::taken : Kind::unchanged, {}};
    const auto read = studio::read_tuner_number(typed, played(cell).value().note);
    if (read.verdict == TunerNumber::Verdict::taken) {
        taken_[cell] = read.cents;
        return {Kind::taken, {}};
    }
    Outcome outcome{read.verdict == TunerNumber::Verdict::ask ? Kind::asks : Kind::refused, read.sentence};
    pending_[cell] = {std::string(typed), outcome};
    return outcome;
}

std::string PassEntry::question(PassCell cell) const {
    const auto found = pending_.find(cell);
    return found == pending_.end() ? std::string() : found->second.outcome.sentence;
}

bool PassEntry::asks(PassCell cell) const {
    const auto found = pending_.find(cell);
    return found != pending_.end() && found->second.outcome.kind == Outcome::Kind::asks;
}

std::optional<PassCell> PassEntry::first() const {
    if (players_.empty() || notes_.empty()) return std::nullopt;
    const PassCell start{0, 0};
    return played(start) ? std::optional(start) : after(start);
}

std::optional<PassCell> PassEntry::after(PassCell cell) const {
    while (true) {
        if (++cell.note == notes_.size()) cell = {cell.player + 1, 0};
        if (cell.player >= players_.size()) return std::nullopt;
        if (played(cell)) return cell;
    }
}

std::optional<PassCell> PassEntry::below(PassCell cell) const {
    while (++cell.player < players_.size())
        if (played(cell)) return cell;
    return std::nullopt;
}

std::optional<PassCell> PassEntry::above(PassCell cell) const {
    while (cell.player-- > 0)
        if (played(cell)) return cell;
    return std::nullopt;
}

std::optional<PassCell> PassEntry::first_pending() const {
    return pending_.empty() ? std::nullopt : std::optional(pending_.begin()->first);
}

std::vector<studio::Reading> PassEntry::readings(std::size_t player) const {
    std::vector<studio::Reading> readings;
    for (std::size_t note = 0; note < notes_.size(); ++note) {
        const auto cents = reading({player, note});
        if (!cents) continue;
        const SheetRow& row = *played({player, note});
        const auto takes = std::ranges::count_if(readings, [&](const studio::Reading& before) {
            return before.note == row.note && before.fingering == row.fingering;
        });
        readings.push_back({row.note, row.fingering, row.partial, static_cast<int>(takes) + 1, *cents});
    }
    return readings;
}

}  // namespace lowledger::desk
