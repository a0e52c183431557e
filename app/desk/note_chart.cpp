#include "app/desk/note_chart.h"

#include <algorithm>
#include <utility>

#include "model/units/note_names.h"
#include "reports/words/chart_words.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using horns::ChartNote;
using horns::Way;
using units::Pitch;
using words::Sentence;

constexpr std::string_view blanks = " \t\r\n";
constexpr int lowest_octave = -1;
constexpr int highest_octave = 9;
/// Of a row of the table; all of them stand under it for the note looked at.
constexpr std::size_t most_others = 3;

std::string trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(blanks);
    if (first == std::string_view::npos) return {};
    return std::string(text.substr(first, text.find_last_not_of(blanks) - first + 1));
}

std::optional<Pitch> sounding_of(const units::Spelling& written, const horns::Reader& reader) {
    try {
        return horns::sounding(written, reader);
    } catch (const units::Refusal&) {
        return std::nullopt;
    }
}

ListingCell cents_cell(units::Cents lean) {
    return {words::cents_text(lean), lean.value()};
}

}  // namespace

NoteChart::NoteChart(horns::HornKind kind, horns::NoteStyle style)
    : kind_(std::move(kind)),
      style_(std::move(style)),
      notes_(horns::chart(kind_)),
      note_(notes_.empty() ? kind_.band_note : notes_.front().note) {
    if (std::ranges::find(kind_.readers, style_.reader) == kind_.readers.end())
        style_.reader = kind_.readers.front();
    look_at(kind_.band_note);
}

std::size_t NoteChart::reader() const {
    const auto found = std::ranges::find(kind_.readers, style_.reader);
    return static_cast<std::size_t>(found - kind_.readers.begin());
}

void NoteChart::read_as(std::size_t reader) {
    style_.reader = kind_.readers.at(reader);
}

void NoteChart::look_at(Pitch note) {
    if (std::ranges::find(notes_, note, &ChartNote::note) != notes_.end()) note_ = note;
}

void NoteChart::step(int notes) {
    const auto found = std::ranges::find(notes_, note_, &ChartNote::note);
    if (found == notes_.end()) return;
    const auto last = static_cast<std::ptrdiff_t>(notes_.size()) - 1;
    const auto at = std::clamp<std::ptrdiff_t>(found - notes_.begin() + notes, 0, last);
    note_ = notes_[static_cast<std::size_t>(at)].note;
}

std::optional<Pitch> NoteChart::of_name(std::string_view typed) const {
    std::optional<Pitch> lowest;
    for (int octave = lowest_octave; octave <= highest_octave; ++octave) {
        const auto spelling = units::parse_note(std::string(typed) + std::to_string(octave), style_.naming);
        const auto note = spelling ? sounding_of(*spelling, style_.reader) : std::nullopt;
        if (!note || std::ranges::find(notes_, *note, &ChartNote::note) == notes_.end()) continue;
        if (*note > note_) return note;
        if (!lowest) lowest = note;
    }
    return lowest;
}

std::string NoteChart::find(const words::Words& words, std::string_view typed) {
    const std::string text = trimmed(typed);
    const auto in_chart = [&](const std::optional<Pitch>& note) {
        return note && std::ranges::find(notes_, *note, &ChartNote::note) != notes_.end();
    };
    const auto spelling = units::parse_note(text, style_.naming);
    const auto as_read = spelling ? sounding_of(*spelling, style_.reader) : of_name(text);
    const auto as_tuner = units::parse_pitch(text);
    for (const auto& note : {as_read, as_tuner}) {
        if (!in_chart(note)) continue;
        look_at(*note);
        return {};
    }
    if (as_read || as_tuner) return words.say(Sentence::chart_note_outside, {{"note", text}});
    const bool is_name = units::parse_note(text + "4", style_.naming).has_value();
    return words.say(is_name ? Sentence::chart_note_outside : Sentence::chart_note_unknown,
                     {{is_name ? "note" : "typed", text}});
}

std::string NoteChart::name(Pitch note) const {
    return words::note_name_with_octave(note, style_);
}

std::string NoteChart::tuner_name(Pitch note) const {
    return words::tuner_name(note, style_);
}

const ChartNote& NoteChart::looked_at() const {
    return *std::ranges::find(notes_, note_, &ChartNote::note);
}

const tuning::ProfileNote* NoteChart::own(Pitch note, const Way& way) const {
    if (!horn_ || way.tone == horns::Tone::false_tone) return nullptr;
    const auto* const found = horn_->profile.way(note, way.fingering);
    return found != nullptr && found->partial == way.partial ? found : nullptr;
}

units::Cents NoteChart::lean(Pitch note, const Way& way) const {
    const auto* const found = own(note, way);
    return found != nullptr ? found->mean : way.lean;
}

std::string NoteChart::remark(const words::Words& words, Pitch note, const Way& way) const {
    std::string remark;
    const auto add = [&](const std::string& text) { remark += (remark.empty() ? "" : "; ") + text; };
    if (way.tone == horns::Tone::false_tone) add(words.say(Sentence::chart_way_false));
    if (!way.within_reach) add(words.say(Sentence::chart_way_beyond));
    const auto* const found = own(note, way);
    if (found != nullptr && found->takes > 0)
        add(words.say_counted(Sentence::chart_way_read_one, Sentence::chart_way_read_many, found->takes));
    return remark;
}

ListingRow NoteChart::table_row(const words::Words& words, const ChartNote& note) const {
    ListingRow row{note.note.midi(), {{name(note.note), static_cast<double>(note.note.midi())}}, false};
    if (horns::calls_notes_otherwise(style_.reader)) row.cells.emplace_back(tuner_name(note.note));
    const auto own_lean = lean(note.note, note.usual);
    row.cells.emplace_back(words::fingering_label(kind_, note.usual.fingering));
    row.cells.push_back(cents_cell(own_lean));
    if (kind_.hand_slide) {
        const auto move = words::slide_move(kind_, note.usual.fingering, own_lean);
        row.cells.emplace_back(move.empty() ? move : words.say(Sentence::chart_move, {{"move", move}}));
    }
    std::string others;
    std::size_t shown = 0;
    for (const Way& way : note.alternates)
        if (way.within_reach && way.tone != horns::Tone::false_tone && shown++ < most_others)
            others += (others.empty() ? "" : ", ") + words::fingering_label(kind_, way.fingering) + " " +
                      words::cents_text(lean(note.note, way));
    row.cells.emplace_back(remark(words, note.note, note.usual));
    row.cells.emplace_back(std::move(others));
    return row;
}

Listing NoteChart::table(const words::Words& words) const {
    Listing listing;
    listing.columns.push_back({words.say(Sentence::chart_column_note), false, true});
    if (horns::calls_notes_otherwise(style_.reader))
        listing.columns.push_back({words.say(Sentence::chart_column_tuner), false, true});
    listing.columns.push_back(
        {words.say(kind_.hand_slide ? Sentence::chart_column_position : Sentence::chart_column_fingering),
         false, true});
    listing.columns.push_back({words.say(Sentence::chart_column_lean), true, true});
    if (kind_.hand_slide) listing.columns.push_back({words.say(Sentence::chart_column_slide), true, true});
    listing.columns.push_back({words.say(Sentence::chart_column_remark), false, true});
    listing.columns.push_back({words.say(Sentence::chart_column_others)});
    for (const ChartNote& note : notes_)
        listing.rows.push_back(table_row(words, note));
    return listing;
}

ListingRow NoteChart::way_row(const words::Words& words, const Way& way, int rank) const {
    ListingRow row{rank, {{std::to_string(rank), static_cast<double>(rank)}}, false};
    const auto own_lean = lean(note_, way);
    row.cells.emplace_back(words::fingering_label(kind_, way.fingering));
    row.cells.push_back(way.tone == horns::Tone::false_tone
                            ? ListingCell("")
                            : ListingCell(std::to_string(way.partial), static_cast<double>(way.partial)));
    row.cells.push_back(cents_cell(own_lean));
    if (kind_.hand_slide) {
        const auto move = words::slide_move(kind_, way.fingering, own_lean);
        row.cells.emplace_back(move.empty() ? move : words.say(Sentence::chart_move, {{"move", move}}));
    }
    const bool usual = way.fingering == looked_at().usual.fingering;
    std::string remarks = usual ? words.say(Sentence::chart_way_usual) : std::string();
    if (const auto more = remark(words, note_, way); !more.empty())
        remarks += (remarks.empty() ? "" : "; ") + more;
    row.cells.emplace_back(std::move(remarks));
    return row;
}

Listing NoteChart::ways(const words::Words& words) const {
    Listing listing;
    listing.columns = {
        {words.say(Sentence::chart_column_rank), true, true},
        {words.say(kind_.hand_slide ? Sentence::chart_column_position : Sentence::chart_column_fingering),
         false, true},
        {words.say(Sentence::chart_column_partial), true, true},
        {words.say(Sentence::chart_column_lean), true, true}};
    if (kind_.hand_slide) listing.columns.push_back({words.say(Sentence::chart_column_slide), true, true});
    listing.columns.push_back({words.say(Sentence::chart_column_remark)});
    int rank = 0;
    for (const Way& way : horns::possible_fingerings(kind_, note_))
        listing.rows.push_back(way_row(words, way, ++rank));
    return listing;
}

std::string NoteChart::ways_heading(const words::Words& words) const {
    if (!horns::calls_notes_otherwise(style_.reader))
        return words.say(Sentence::chart_ways_heading, {{"note", name(note_)}});
    return words.say(Sentence::chart_ways_heading_tuner,
                     {{"note", name(note_)}, {"sounding", tuner_name(note_)}});
}

pages::ChartInputs NoteChart::printed(canvas::Paper paper) const {
    return {kind_, style_, horn_, paper};
}

}  // namespace lowledger::desk
