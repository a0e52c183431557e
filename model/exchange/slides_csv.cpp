#include "model/exchange/slides_csv.h"

#include <array>
#include <fmt/format.h>
#include <map>

#include "model/exchange/csv.h"
#include "model/studio/tuner_number.h"
#include "model/units/number_text.h"

namespace lowledger::exchange {

namespace {

constexpr std::array<std::string_view, 4> required{"slide", "position", "least", "travel"};
/// No slide of a horn that a person can hold goes out further.
constexpr units::Millimetres longest{1000.0};

units::Millimetres read_length(const CsvTable& table, const CsvColumns& columns, const CsvRow& row,
                               std::string_view column, units::Millimetres usual) {
    const std::string_view text = columns.field(row, column);
    if (text.empty()) return usual;
    const auto value = units::parse_decimal(text);
    if (!value || *value < 0.0 || units::Millimetres(*value) > longest)
        refuse_field(table, row, column,
                     fmt::format("\"{}\" is no length of a slide. Write mm, such as 25 or 12.5, or leave it "
                                 "empty for the usual {}.",
                                 text, units::decimal_text(usual.value(), 0)));
    return units::Millimetres(*value);
}

std::optional<units::Millimetres> read_position(const CsvTable& table, const CsvColumns& columns,
                                                const CsvRow& row, units::Millimetres travel) {
    const std::string_view text = columns.field(row, "position");
    if (text.empty()) return std::nullopt;
    const auto position = studio::read_slide_position(text, travel);
    if (!position)
        refuse_field(
            table, row, "position",
            fmt::format("\"{}\" is no position. Write mm out from fully in, or in, or half; leave it "
                        "empty if it is unknown.",
                        text));
    if (*position < units::Millimetres(0.0) || *position > travel)
        refuse_field(table, row, "position",
                     fmt::format("{} mm is not between 0 and the slide's travel of {} mm. Measure again, or "
                                 "correct the travel.",
                                 text, units::decimal_text(travel.value(), 0)));
    return position;
}

SlideRow read_row(const CsvTable& table, const CsvColumns& columns, const CsvRow& row,
                  const horns::SlideKind& kind) {
    SlideRow slide;
    slide.slide.slide = kind.id;
    slide.slide.travel = read_length(table, columns, row, "travel", kind.travel);
    slide.slide.least = read_length(table, columns, row, "least", kind.least);
    if (slide.slide.least > slide.slide.travel)
        refuse_field(table, row, "least",
                     fmt::format("the least ({} mm) is above the travel ({} mm). Correct one of them.",
                                 units::decimal_text(slide.slide.least.value(), 0),
                                 units::decimal_text(slide.slide.travel.value(), 0)));
    slide.position = read_position(table, columns, row, slide.slide.travel);
    return slide;
}

std::string slide_names(const horns::HornKind& kind) {
    std::string names;
    for (const horns::SlideKind& slide : kind.slides)
        names += (names.empty() ? "" : ", ") + slide.id;
    return names;
}

}  // namespace

std::vector<SlideRow> slides_of_kind(const horns::HornKind& kind) {
    std::vector<SlideRow> slides;
    slides.reserve(kind.slides.size());
    for (const horns::SlideKind& slide : kind.slides)
        slides.push_back({{slide.id, slide.least, slide.travel, false}, std::nullopt});
    return slides;
}

std::vector<SlideRow> read_slides_csv(std::string_view text, std::string_view file,
                                      const horns::HornKind& kind) {
    const CsvTable table = read_csv(text, file);
    const CsvColumns columns(table, required, {});
    std::vector<SlideRow> slides = slides_of_kind(kind);
    std::map<std::size_t, std::size_t> lines;
    for (const CsvRow& row : table.rows) {
        const std::string_view name = columns.field(row, "slide");
        const auto index = kind.slide_index(name);
        if (!index)
            refuse_field(table, row, "slide",
                         fmt::format("the horn ({}) has no slide \"{}\". Its slides are: {}.", kind.name,
                                     name, slide_names(kind)));
        const auto [known, is_new] = lines.try_emplace(*index, row.line);
        if (!is_new)
            refuse_field(
                table, row, "slide",
                fmt::format("the slide {} is on line {} already. Keep one of them.", name, known->second));
        slides[*index] = read_row(table, columns, row, kind.slides[*index]);
    }
    return slides;
}

}  // namespace lowledger::exchange
