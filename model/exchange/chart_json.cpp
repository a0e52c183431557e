#include "model/exchange/chart_json.h"

#include <nlohmann/json.hpp>

#include "model/exchange/json_lines.h"
#include "model/exchange/settings_json.h"
#include "model/horns/chart.h"
#include "model/horns/hand_slide.h"
#include "model/units/inches.h"

namespace lowledger::exchange {

namespace {

using Json = nlohmann::ordered_json;
using horns::Way;

std::string_view word(horns::Clef clef) {
    switch (clef) {
        case horns::Clef::treble:
            return "treble";
        case horns::Clef::tenor:
            return "tenor";
        case horns::Clef::alto:
            return "alto";
        case horns::Clef::bass:
            break;
    }
    return "bass";
}

std::string_view word(horns::Tone tone) {
    switch (tone) {
        case horns::Tone::pedal:
            return "pedal";
        case horns::Tone::false_tone:
            return "false_tone";
        case horns::Tone::partial:
            break;
    }
    return "partial";
}

std::string_view word(horns::UsualBecause because) {
    switch (because) {
        case horns::UsualBecause::chart_partials:
            return "chart_partials";
        case horns::UsualBecause::easier_hands:
            return "easier_hands";
        case horns::UsualBecause::taught:
            return "taught";
        case horns::UsualBecause::ranks_first:
            break;
    }
    return "ranks_first";
}

class Writer {
  public:
    Writer(const horns::HornKind& kind, const std::optional<ChartedHorn>& horn)
        : kind_(kind), horn_(horn), labels_(kind.valve_labels()) {}

    [[nodiscard]] Json way(units::Pitch note, const Way& way) const {
        const tuning::ProfileNote* own = own_note(note, way);
        Json json = {{"fingering", horns::file_text(way.fingering, labels_)},
                     {"partial", way.tone == horns::Tone::false_tone ? Json(nullptr) : Json(way.partial)},
                     {"tone", word(way.tone)},
                     {"expected_lean_cents", way.lean.value()},
                     {"own_lean_cents", own != nullptr ? Json(own->mean.value()) : Json(nullptr)},
                     {"own_spread_cents", own != nullptr ? Json(own->spread.value()) : Json(nullptr)},
                     {"takes", own != nullptr ? own->takes : 0},
                     {"within_reach", way.within_reach},
                     {"ranking_cost_cents", way.cost.value()},
                     {"plain_position_mm", nullptr},
                     {"slide_offset_mm", nullptr},
                     {"slide_offset_sixteenths_inch", nullptr}};
        if (kind_.hand_slide) {
            const units::Cents lean = own != nullptr ? own->placed : way.lean;
            json["plain_position_mm"] = horns::plain_position(kind_, way.fingering).value();
            const units::Millimetres offset = horns::slide_offset(kind_, way.fingering, lean);
            json["slide_offset_mm"] = offset.value();
            json["slide_offset_sixteenths_inch"] = units::in_sixteenths(offset);
        }
        return json;
    }

    [[nodiscard]] Json notes(const horns::Reader& reader, units::Accidentals accidentals) const {
        Json notes = Json::array();
        for (const horns::ChartNote& note : horns::chart(kind_)) {
            Json alternates = Json::array();
            for (const Way& alternate : note.alternates)
                alternates.push_back(way(note.note, alternate));
            notes.push_back(
                {{"note", units::file_name(note.note)},
                 {"midi", note.note.midi()},
                 {"written", units::file_name(horns::written(units::spell(note.note, accidentals), reader))},
                 {"usual", way(note.note, note.usual)},
                 {"usual_because", word(note.because)},
                 {"alternates", alternates}});
        }
        return notes;
    }

    [[nodiscard]] Json slide_places() const {
        Json places = Json::array();
        for (int bits = 0; kind_.hand_slide && bits < 1 << kind_.valves.size(); ++bits) {
            acoustics::ValveSet set;
            Json valves = Json::array();
            for (std::size_t i = 0; i < kind_.valves.size(); ++i) {
                if (((bits >> i) & 1) == 0) continue;
                set = set.with(static_cast<int>(i) + 1);
                valves.push_back(labels_[i]);
            }
            if (!kind_.allows({set, 1})) continue;
            for (const horns::SlidePlace& place : horns::slide_places(kind_, set))
                places.push_back({{"valves", valves},
                                  {"position", place.position},
                                  {"out_mm", place.out.value()},
                                  {"out_sixteenths_inch", units::in_sixteenths(place.out)},
                                  {"within_reach", place.within_reach}});
        }
        return places;
    }

    [[nodiscard]] Json without_a_way() const {
        Json notes = Json::array();
        for (int midi = kind_.usual_range.low.midi(); midi <= kind_.usual_range.high.midi(); ++midi)
            if (horns::possible_fingerings(kind_, units::Pitch(midi)).empty())
                notes.push_back(units::file_name(units::Pitch(midi)));
        return notes;
    }

    [[nodiscard]] Json horn() const {
        if (!horn_) return nullptr;
        return {{"mark", horn_->mark},
                {"student", horn_->student},
                {"sheets_used", horn_->profile.sheets_used},
                {"takes_used", horn_->profile.takes_used}};
    }

  private:
    [[nodiscard]] const tuning::ProfileNote* own_note(units::Pitch note, const Way& way) const {
        if (!horn_ || way.tone == horns::Tone::false_tone) return nullptr;
        const tuning::ProfileNote* own = horn_->profile.way(note, way.fingering);
        return own != nullptr && own->partial == way.partial ? own : nullptr;
    }

    const horns::HornKind& kind_;
    const std::optional<ChartedHorn>& horn_;
    std::vector<std::string> labels_;
};

}  // namespace

std::string chart_json(const horns::HornKind& kind, const horns::Reader& reader,
                       units::Accidentals accidentals, const std::optional<ChartedHorn>& horn) {
    const Writer writer(kind, horn);
    const Json json = {
        {"format", "lowledger.chart/1"},
        {"engine_version", engine_version()},
        {"kind", kind.id},
        {"kind_name", kind.name},
        {"horn", writer.horn()},
        {"reader",
         {{"id", reader.id},
          {"name", reader.name},
          {"clef", word(reader.clef)},
          {"written_above_semitones", reader.written_above.count}}},
        {"usual_range", {units::file_name(kind.usual_range.low), units::file_name(kind.usual_range.high)}},
        {"hand_slide_mm", kind.hand_slide ? Json(kind.hand_slide->value()) : Json(nullptr)},
        {"notes", writer.notes(reader, accidentals)},
        {"notes_without_a_way", writer.without_a_way()},
        {"slide_places", writer.slide_places()},
    };
    return json_lines(json);
}

}  // namespace lowledger::exchange
