#include "model/exchange/sheet_csv.h"

#include <array>
#include <fmt/format.h>
#include <map>
#include <tuple>

#include "model/exchange/csv.h"
#include "model/horns/chart.h"
#include "model/studio/tuner_number.h"
#include "model/units/number_text.h"
#include "model/units/refusal.h"

namespace lowledger::exchange {

namespace {

constexpr std::array<std::string_view, 3> required{"note", "fingering", "cents"};
constexpr std::array<std::string_view, 1> optional{"take"};
constexpr int most_takes = 99;

/// One row with what is needed to refuse its fields by name.
struct Field {
    const CsvTable& table;
    const CsvColumns& columns;
    const CsvRow& row;
    [[nodiscard]] std::string_view text(std::string_view column) const { return columns.field(row, column); }
    [[noreturn]] void refuse(std::string_view column, std::string_view sentence) const {
        refuse_field(table, row, column, sentence);
    }
};

units::Pitch read_note(const Field& field) {
    const std::string_view text = field.text("note");
    if (const auto note = units::parse_pitch(text)) return *note;
    field.refuse("note", fmt::format("\"{}\" is no note. Write the sounding pitch with its octave, such as "
                                     "Bb2 or F#3 (middle C is C4).",
                                     text));
}

horns::Fingering read_fingering(const Field& field, const horns::HornKind& kind) {
    const std::string_view text = field.text("fingering");
    const auto labels = kind.valve_labels();
    const auto fingering = horns::parse_fingering(text, labels);
    if (fingering && kind.allows(*fingering)) return *fingering;
    if (horns::parse_fingering(text))
        field.refuse("fingering", fmt::format("the horn ({}) has no fingering {}. Check the fingering and "
                                              "the kind of horn.",
                                              kind.name, text));
    field.refuse("fingering", fmt::format("\"{}\" is no fingering. Write the valves that are down, such as "
                                          "0, 2 or 13.",
                                          text));
}

int read_take(const Field& field) {
    const std::string_view text = field.text("take");
    if (text.empty()) return 1;
    const auto take = units::parse_integer(text);
    if (!take || *take < 1 || *take > most_takes)
        field.refuse("take",
                     fmt::format("\"{}\" is no take. Write a whole number from 1 to {}.", text, most_takes));
    return *take;
}

units::Cents read_cents(const Field& field, units::Pitch note) {
    const std::string_view text = field.text("cents");
    if (text.empty())
        field.refuse("cents", "there is no number. Write what the tuner showed, or leave the row out.");
    const studio::TunerNumber number = studio::read_tuner_number(text, note);
    if (number.verdict == studio::TunerNumber::Verdict::refused) field.refuse("cents", number.sentence);
    return number.cents;
}

studio::Reading read_row(const Field& field, const horns::HornKind& kind) {
    studio::Reading reading{.note = read_note(field), .fingering = read_fingering(field, kind), .cents = {}};
    const auto sounding = horns::sounding_partial(kind, reading.fingering, reading.note);
    if (!sounding)
        field.refuse("fingering",
                     fmt::format("{} cannot be played with {} on this horn ({}). Check the note (sounding "
                                 "pitch, not written), the fingering and the kind.",
                                 units::file_name(reading.note), field.text("fingering"), kind.name));
    reading.partial = sounding->partial;
    reading.take = read_take(field);
    reading.cents = read_cents(field, reading.note);
    return reading;
}

}  // namespace

std::vector<studio::Reading> read_sheet_csv(std::string_view text, std::string_view file,
                                            const horns::HornKind& kind) {
    const CsvTable table = read_csv(text, file);
    const CsvColumns columns(table, required, optional);
    std::vector<studio::Reading> readings;
    std::map<std::tuple<units::Pitch, horns::Fingering, int>, std::size_t> lines;
    for (const CsvRow& row : table.rows) {
        const Field field{table, columns, row};
        const studio::Reading reading = read_row(field, kind);
        const auto [known, is_new] =
            lines.try_emplace(std::tuple(reading.note, reading.fingering, reading.take), row.line);
        if (!is_new)
            field.refuse(columns.has("take") ? "take" : "note",
                         fmt::format("{} with fingering {} is on line {} already as take {}. Number the "
                                     "takes in a column named take, or remove one of the rows.",
                                     units::file_name(reading.note), field.text("fingering"), known->second,
                                     reading.take));
        readings.push_back(reading);
    }
    if (readings.empty())
        throw units::Refusal(
            fmt::format("{} has no reading under its head. Write one a line, such as Bb2,0,-7.", file));
    return readings;
}

}  // namespace lowledger::exchange
