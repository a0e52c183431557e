#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "app/desk/sheet_entry.h"
#include "reports/pages/player.h"

namespace lowledger::desk {

/// A field of a section pass: a player and a note, both from 0.
struct PassCell {
    std::size_t player = 0;
    std::size_t note = 0;
    auto operator<=>(const PassCell&) const = default;
};

/// A section pass while it is typed: a row a player, a field for each of the pass's notes as that player
/// plays it. A reading may be left out. It holds what was typed until whoever files it takes `readings`.
class PassEntry {
  public:
    using Outcome = SheetEntry::Outcome;

    /// `notes` as `horns::section_notes` takes them.
    PassEntry(std::vector<pages::Player> players, std::vector<units::Pitch> notes);

    [[nodiscard]] const std::vector<pages::Player>& players() const { return players_; }
    [[nodiscard]] const std::vector<units::Pitch>& notes() const { return notes_; }
    /// What the player plays there; empty where the horn has no way to play the note, and no field.
    [[nodiscard]] const std::optional<SheetRow>& played(PassCell cell) const;

    /// What the field shows: what was typed and not taken, else the reading ("+12"), else nothing.
    [[nodiscard]] std::string text(PassCell cell) const;
    [[nodiscard]] std::optional<units::Cents> reading(PassCell cell) const;
    /// "+12"; empty without one.
    [[nodiscard]] std::string reading_text(PassCell cell) const;
    /// Takes what a tuner shows; what is not taken stays in the field, with the reason as `question`.
    Outcome type(PassCell cell, std::string_view typed);
    /// The field back to what was taken.
    void restore(PassCell cell) { pending_.erase(cell); }
    /// Why the field's text was not taken, a sentence; empty if it was.
    [[nodiscard]] std::string question(PassCell cell) const;
    /// Enter on the same text takes it.
    [[nodiscard]] bool asks(PassCell cell) const;

    /// The first field; empty where there is none.
    [[nodiscard]] std::optional<PassCell> first() const;
    /// Where Enter goes: the player's next note, after the last one the next player's first; empty at the
    /// end.
    [[nodiscard]] std::optional<PassCell> after(PassCell cell) const;
    /// The same note of the next player, or of the one before, that has it.
    [[nodiscard]] std::optional<PassCell> below(PassCell cell) const;
    [[nodiscard]] std::optional<PassCell> above(PassCell cell) const;
    /// The first field whose text was not taken.
    [[nodiscard]] std::optional<PassCell> first_pending() const;

    /// Where a note comes twice in the pass, the second time is another take.
    [[nodiscard]] std::vector<studio::Reading> readings(std::size_t player) const;
    [[nodiscard]] int count() const { return static_cast<int>(taken_.size()); }

  private:
    struct Pending {
        std::string typed;
        Outcome outcome;
    };
    [[nodiscard]] Outcome judged(PassCell cell, std::string_view typed);

    std::vector<pages::Player> players_;
    std::vector<units::Pitch> notes_;
    /// By player, then by note.
    std::vector<std::vector<std::optional<SheetRow>>> played_;
    std::map<PassCell, units::Cents> taken_;
    std::map<PassCell, Pending> pending_;
};

}  // namespace lowledger::desk
