#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/horns/kind.h"
#include "model/studio/records.h"
#include "model/studio/tuner_number.h"

namespace lowledger::desk {

/// A row of a tuning sheet: a note with the fingering it is played with.
struct SheetRow {
    units::Pitch note;
    horns::Fingering fingering;
    int partial = 0;
    /// One of the kind's tuning notes; the others are shown on demand.
    bool tuning_note = false;
    bool operator==(const SheetRow&) const = default;
};

/// A field of the sheet: a row (from 0) and a take (from 1).
struct Cell {
    std::size_t row = 0;
    int take = 1;
    auto operator<=>(const Cell&) const = default;
};

/// A reading as a field shows it: "+12", "-7.5".
std::string tuner_text(units::Cents cents);

/// A tuning sheet while it is typed: which rows it has, what each field says, where Enter goes. It holds a
/// copy of the sheet; whoever files it takes `sheet()`.
class SheetEntry {
  public:
    /// The tuning notes of `kind` in working order, every other note that `sheet` has a reading of, and, if
    /// `more_notes`, the rest of the kind's usual range in order of pitch.
    SheetEntry(const horns::HornKind& kind, studio::TuningSheet sheet, bool more_notes);

    [[nodiscard]] const studio::TuningSheet& sheet() const { return sheet_; }
    [[nodiscard]] const std::vector<SheetRow>& rows() const { return rows_; }
    [[nodiscard]] bool more_notes() const { return more_notes_; }
    /// How many takes have a column: two, or one more than is complete.
    [[nodiscard]] int takes() const;

    /// What the field shows: what was typed and not taken, else the reading ("+12"), else nothing.
    [[nodiscard]] std::string text(Cell cell) const;
    [[nodiscard]] std::optional<units::Cents> reading(Cell cell) const;
    /// The reading as text, "+12"; empty without one.
    [[nodiscard]] std::string reading_text(Cell cell) const;
    /// The field shows text that was not taken.
    [[nodiscard]] bool is_pending(Cell cell) const { return pending_.contains(cell); }
    /// Mean of the row's takes; empty without one.
    [[nodiscard]] std::optional<units::Cents> mean(std::size_t row) const;

    /// What became of the text typed into a field.
    struct Outcome {
        enum class Kind {
            /// The sheet holds it now (or holds nothing there, if the text was empty).
            taken,
            /// Nothing new was typed.
            unchanged,
            /// More than 50 cents away: typing Enter once more on the same text takes it.
            asks,
            /// Not taken; the field keeps the text.
            refused,
        } kind = Kind::unchanged;
        std::string sentence;
    };
    Outcome type(Cell cell, std::string_view typed);
    /// The field back to what the sheet holds.
    void restore(Cell cell) { pending_.erase(cell); }
    /// True when some field holds text that the sheet does not.
    [[nodiscard]] bool has_pending() const { return !pending_.empty(); }

    /// Where Enter goes: the next row of the same take, after the last row the first row of the next take.
    [[nodiscard]] Cell after(Cell cell) const;
    /// Where the typing goes on: the first empty field in working order.
    [[nodiscard]] Cell first_empty() const;

    /// Why a field's text in this row was not taken, a sentence; empty if all were.
    [[nodiscard]] std::string question(std::size_t row) const;
    /// True when the sentence of `question` asks, and Enter on the same text takes it.
    [[nodiscard]] bool asks(std::size_t row) const;
    /// Takes over the texts of another entry that its sheet does not hold, for the rows that are here too.
    void keep_pending_of(const SheetEntry& other);
    /// The head of the sheet. The readings stay as they are.
    void set_head(const studio::TuningSheet& head);

  private:
    void set_reading(Cell cell, std::optional<units::Cents> cents);

    struct Pending {
        std::string typed;
        Outcome outcome;
    };
    studio::TuningSheet sheet_;
    bool more_notes_ = false;
    std::vector<SheetRow> rows_;
    std::map<Cell, Pending> pending_;
};

}  // namespace lowledger::desk
