#include "app/desk/sheet_history.h"

#include <algorithm>
#include <map>
#include <optional>
#include <tuple>
#include <utility>

#include "reports/charts/sheet_chart.h"
#include "reports/words/names.h"
#include "reports/words/tuning_words.h"

namespace lowledger::desk {
namespace {

using studio::TuningSheet;
using units::Cents;
using units::Millimetres;
using words::Sentence;

/// A note with the fingering it was played with.
struct Played {
    units::Pitch note;
    horns::Fingering fingering;
    bool operator==(const Played&) const = default;
};

std::optional<Cents> mean_of(const TuningSheet& sheet, const std::optional<Played>& played) {
    double sum = 0.0;
    int count = 0;
    for (const auto& reading : sheet.readings) {
        if (played && Played{reading.note, reading.fingering} != *played) continue;
        sum += reading.cents.value();
        ++count;
    }
    if (count == 0) return std::nullopt;
    return Cents(sum / count);
}

std::string how_played(const words::Words& words, const TuningSheet& sheet) {
    std::string text;
    const auto add = [&](const std::string& part) { text += (text.empty() ? "" : " · ") + part; };
    if (!sheet.warm) add(words.say(Sentence::sheets_cold));
    if (sheet.mute) add(words.say(Sentence::sheets_mute));
    if (sheet.tuner_seen) add(words.say(Sentence::sheets_tuner_seen));
    if (!sheet.remarks.empty()) add(sheet.remarks);
    return text;
}

/// Two that are chosen, else the newest; oldest first.
std::vector<const TuningSheet*> sheets_to_show(const Desk& desk, const std::vector<std::int64_t>& chosen) {
    std::vector<const TuningSheet*> shown;
    if (chosen.size() == 2) {
        for (const auto& sheet : desk.sheets())
            if (std::ranges::find(chosen, sheet.id.number) != chosen.end()) shown.push_back(&sheet);
    } else {
        for (const auto& sheet : desk.sheets())
            if (shown.size() < sheets_in_a_picture && !sheet.readings.empty()) shown.push_back(&sheet);
    }
    std::ranges::reverse(shown);
    return shown;
}

Cents tolerance_of(const Desk& desk) {
    if (desk.answer().there()) return desk.answer().answer->remains.tolerance;
    return desk.student()->tolerance.value_or(charts::SheetChart{}.tolerance);
}

/// Every note of these sheets, in the order of pitch.
std::vector<Played> notes_of(const std::vector<const TuningSheet*>& sheets) {
    std::vector<Played> notes;
    for (const auto* sheet : sheets) {
        for (const auto& reading : sheet->readings) {
            const Played played{reading.note, reading.fingering};
            if (std::ranges::find(notes, played) == notes.end()) notes.push_back(played);
        }
    }
    std::ranges::stable_sort(notes, {}, &Played::note);
    return notes;
}

}  // namespace

Listing sheets_listing(const Desk& desk) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {{words.say(Sentence::sheets_day), false, true},
                       {words.say(Sentence::sheets_readings), true, true},
                       {words.say(Sentence::sheets_mean), true, true},
                       {words.say(Sentence::sheets_played)}};
    for (const auto& sheet : desk.sheets()) {
        const auto mean = mean_of(sheet, std::nullopt);
        const auto count = sheet.readings.size();
        listing.rows.push_back(
            {sheet.id.number,
             {ListingCell(words::date_text(words, sheet.on), sheet.on),
              ListingCell(std::to_string(count), static_cast<double>(count)),
              mean ? ListingCell(words::cents_text(*mean), mean->value()) : ListingCell(""),
              how_played(words, sheet)}});
    }
    return listing;
}

void open_sheet(Desk& desk, studio::TuningSheetId sheet) {
    View view = desk.view();
    view.section = Section::sheet;
    desk.go(view);
    desk.show_sheet(sheet);
    desk.front().show_section();
}

Picture sheets_picture(const PictureTools& tools, const Desk& desk, const std::vector<std::int64_t>& chosen,
                       Millimetres width) {
    Picture picture;
    picture.page.size.width = width;
    if (!desk.horn() || !desk.student()) return picture;
    const auto sheets = sheets_to_show(desk, chosen);
    const auto notes = notes_of(sheets);
    if (notes.empty()) return picture;
    charts::SheetChart chart{.clef = tools.style.reader.clef,
                             .notes = {},
                             .sheets = {},
                             .tolerance = tolerance_of(desk),
                             .unit = tools.words.say(Sentence::chart_unit)};
    for (const auto& played : notes)
        chart.notes.push_back(
            {horns::spelt(played.note, tools.style), words::fingering_label(desk.kind(), played.fingering)});
    const words::Speech speech{tools.words, desk.kind(), tools.style};
    std::vector<std::string> lines;
    lines.reserve(notes.size());
    for (const auto& played : notes)
        lines.push_back(words::played(speech, played.note, played.fingering) + ":");
    for (const auto* sheet : sheets) {
        charts::SheetLeans leans{.label = words::date_text(tools.words, sheet->on), .leans = {}};
        for (std::size_t i = 0; i < notes.size(); ++i) {
            leans.leans.push_back(mean_of(*sheet, notes[i]));
            if (leans.leans.back())
                lines[i]
                    .append(" ")
                    .append(leans.label)
                    .append(" ")
                    .append(words::cents_text(*leans.leans.back()))
                    .append(";");
        }
        chart.sheets.push_back(std::move(leans));
    }
    for (const auto& line : lines)
        picture.content.append(line).append("\n");
    const Millimetres height = charts::sheet_chart_height(tools.engraver, chart, width);
    const canvas::Box box{Millimetres(0), Millimetres(0), width, height};
    if (chosen.size() == 2 && chart.sheets.size() == 2)
        charts::draw_two_sheets(picture.page, tools.engraver, chart, box);
    else
        charts::draw_sheets_over_time(picture.page, tools.engraver, chart, box);
    picture.page.size.height = height;
    return picture;
}

}  // namespace lowledger::desk
