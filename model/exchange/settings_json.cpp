#include "model/exchange/settings_json.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>

#include "model/acoustics/air.h"
#include "model/exchange/checks_json.h"
#include "model/exchange/json_lines.h"
#include "model/studio/file_words.h"
#include "model/units/inches.h"

namespace lowledger::exchange {

namespace {

using Json = nlohmann::ordered_json;

std::string_view word(tuning::Limit limit) {
    switch (limit) {
        case tuning::Limit::least:
            return "least";
        case tuning::Limit::travel:
            return "travel";
        case tuning::Limit::none:
            break;
    }
    return "none";
}

std::string_view word(tuning::Advice advice) {
    switch (advice) {
        case tuning::Advice::move:
            return "move";
        case tuning::Advice::fixed:
            return "fixed";
        case tuning::Advice::leave:
            break;
    }
    return "leave";
}

std::string_view word(tuning::Remedy remedy) {
    switch (remedy) {
        case tuning::Remedy::hand_slide:
            return "hand_slide";
        case tuning::Remedy::slide_while_playing:
            return "slide_while_playing";
        case tuning::Remedy::other_fingering:
            return "other_fingering";
        case tuning::Remedy::air:
            return "air";
        case tuning::Remedy::embouchure:
            return "embouchure";
        case tuning::Remedy::beyond_player:
            break;
    }
    return "beyond_player";
}

std::string_view word(tuning::Reach reach) {
    switch (reach) {
        case tuning::Reach::closed:
            return "closed";
        case tuning::Reach::end:
            return "end";
        case tuning::Reach::there:
            break;
    }
    return "there";
}

std::string_view word(tuning::Mark mark) {
    switch (mark) {
        case tuning::Mark::source:
            return "source";
        case tuning::Mark::practice:
            return "practice";
        case tuning::Mark::estimate:
            break;
    }
    return "estimate";
}

std::string_view word(tuning::WhyNotUsed why) {
    switch (why) {
        case tuning::WhyNotUsed::cold:
            return "cold";
        case tuning::WhyNotUsed::mute:
            return "mute";
        case tuning::WhyNotUsed::no_readings:
            break;
    }
    return "no_readings";
}

template <typename Unit>
Json optional_number(const std::optional<units::Quantity<Unit>>& quantity) {
    return quantity ? Json(quantity->value()) : Json(nullptr);
}

/// Writes with the valve labels of one kind.
class Writer {
  public:
    explicit Writer(const horns::HornKind& kind) : kind_(kind), labels_(kind.valve_labels()) {}

    [[nodiscard]] Json horn(const tuning::TuningInputs& inputs) const {
        return {{"kind", kind_.id},
                {"kind_name", kind_.name},
                {"level", studio::file_word(inputs.level)},
                {"own_tolerance_cents", optional_number(inputs.tolerance)},
                {"today", inputs.today.iso()},
                {"studio_a4_hertz", inputs.studio_a4.value()},
                {"tuner_a4_hertz", inputs.tuner_a4.value()},
                {"usual_room_celsius", inputs.usual_room.value()},
                {"room_today_celsius", inputs.room_today ? Json(inputs.room_today->value()) : Json(nullptr)}};
    }

    [[nodiscard]] Json tube(const acoustics::Tube& tube) const {
        Json valves = Json::array();
        for (std::size_t i = 0; i < tube.valves.size(); ++i)
            valves.push_back({{"valve", labels_.at(i)}, {"tube_mm", tube.valves[i].value()}});
        Json loops = Json::array();
        for (const acoustics::Loop& loop : tube.loops)
            loops.push_back({{"when", fingering({loop.when, 0})}, {"tube_mm", loop.tube.value()}});
        return {{"speed_of_sound_m_per_s", acoustics::reference_speed_of_sound().value()},
                {"open_mm", tube.open.value()},
                {"valves", valves},
                {"loops", loops}};
    }

    [[nodiscard]] Json slides(const tuning::TuningAnswer& answer) const {
        Json slides = Json::array();
        for (std::size_t i = 0; i < answer.settings.slides.size(); ++i) {
            const tuning::SlideAnswer& slide = answer.settings.slides[i];
            const acoustics::SlideTube& tube = answer.question.tube.slides.at(i);
            slides.push_back(
                {{"slide", slide.slide},
                 {"advice", word(slide.advice)},
                 {"now_mm", slide.now.value()},
                 {"position_known", slide.position_known},
                 {"recommended_mm", slide.recommended.value()},
                 {"change_mm", (slide.recommended - slide.now).value()},
                 {"least_mm", slide.least.value()},
                 {"travel_mm", slide.travel.value()},
                 {"at_limit", word(slide.limit)},
                 {"fixed", answer.question.slides.at(i).fixed},
                 {"half_width_90_mm", optional_number(slide.half_width)},
                 {"chance_of_better", slide.chance_of_better},
                 {"cents_per_mm", slide.cents_per_mm.value()},
                 {"valve",
                  tube.valve ? Json(labels_.at(static_cast<std::size_t>(*tube.valve) - 1)) : Json(nullptr)},
                 {"legs", tube.legs},
                 {"bore", tube.bore},
                 {"designed_mm", tube.designed.value()}});
        }
        return slides;
    }

    [[nodiscard]] Json notes(const tuning::TuningAnswer& answer) const {
        Json notes = Json::array();
        for (std::size_t i = 0; i < answer.settings.notes.size(); ++i) {
            const tuning::NoteAnswer& note = answer.settings.notes[i];
            Json ways = Json::array();
            for (const tuning::PlayedNote& way : answer.question.notes.at(i).ways)
                ways.push_back({{"fingering", fingering(way.fingering)},
                                {"partial", way.partial},
                                {"takes", way.takes},
                                {"estimate_cents", way.mean.value()},
                                {"spread_cents", way.spread.value()},
                                {"penalty_square_cents", way.penalty.value()}});
            notes.push_back({{"note", units::file_name(note.note)},
                             {"midi", note.note.midi()},
                             {"weight", note.weight},
                             {"fingering", fingering(note.way.fingering)},
                             {"partial", note.way.partial},
                             {"is_usual", note.is_usual},
                             {"estimate_cents", note.way.mean.value()},
                             {"spread_cents", note.way.spread.value()},
                             {"lean_before_cents", note.lean_before.value()},
                             {"lean_after_cents", note.lean_after.value()},
                             {"ways", ways}});
        }
        return notes;
    }

    [[nodiscard]] Json profile(const tuning::TuningProfile& profile) const {
        Json notes = Json::array();
        for (const tuning::ProfileNote& note : profile.notes)
            notes.push_back({{"note", units::file_name(note.note)},
                             {"fingering", fingering(note.fingering)},
                             {"partial", note.partial},
                             {"usual", note.usual},
                             {"lean_as_played_cents", note.mean.value()},
                             {"lean_as_played_spread_cents", note.spread.value()},
                             {"lean_placed_cents", note.placed.value()},
                             {"lean_for_slides_cents", note.slides_mean.value()},
                             {"lean_for_slides_spread_cents", note.slides_spread.value()},
                             {"takes", note.takes},
                             {"mean_of_takes_cents", optional_number(note.mean_of_takes)},
                             {"share_of_data", note.share_of_data}});
        Json outlying = Json::array();
        for (const tuning::OutlyingTake& take : profile.outlying)
            outlying.push_back({{"date", take.on.iso()},
                                {"note", units::file_name(take.note)},
                                {"fingering", fingering(take.fingering)},
                                {"take", take.take},
                                {"reading_cents", take.reading.value()},
                                {"from_fellows_cents", take.from_fellows.value()},
                                {"only_take", take.only_take},
                                {"counted", take.counted}});
        Json not_used = Json::array();
        for (const tuning::SheetNotUsed& sheet : profile.not_used)
            not_used.push_back({{"date", sheet.on.iso()}, {"why", word(sheet.why)}});
        Json all = checks_json(profile);
        all.update({{"sheets_used", profile.sheets_used},
                    {"takes_used", profile.takes_used},
                    {"notes", notes},
                    {"outlying_takes", outlying},
                    {"sheets_not_used", not_used}});
        return all;
    }

    [[nodiscard]] Json sheets(const std::vector<studio::TuningSheet>& sheets) const {
        Json out = Json::array();
        for (const studio::TuningSheet& sheet : sheets) {
            Json positions = Json::object();
            for (const auto& [slide, position] : sheet.positions)
                positions[slide] = position.value();
            Json readings = Json::array();
            for (const studio::Reading& reading : sheet.readings)
                readings.push_back({{"note", units::file_name(reading.note)},
                                    {"fingering", fingering(reading.fingering)},
                                    {"partial", reading.partial},
                                    {"take", reading.take},
                                    {"cents", reading.cents.value()}});
            out.push_back({{"date", sheet.on.iso()},
                           {"warm", sheet.warm},
                           {"tuner_seen", sheet.tuner_seen},
                           {"mute", sheet.mute},
                           {"room_celsius", sheet.room ? Json(sheet.room->value()) : Json(nullptr)},
                           {"tuner_a4_hertz", sheet.tuner_a4.value()},
                           {"positions_mm", positions},
                           {"readings", readings}});
        }
        return out;
    }

    [[nodiscard]] Json card(const tuning::TuningCard& card) const {
        Json steps = Json::array();
        for (const tuning::CardStep& step : card.steps)
            steps.push_back({{"slide", step.slide},
                             {"note", units::file_name(step.note)},
                             {"fingering", fingering(step.fingering)},
                             {"set_to_mm", step.to.value()},
                             {"aim_cents", step.aim.value()},
                             {"tolerance_cents", step.tolerance.value()},
                             {"shifts_with_open_note", step.shifts_with_open_note},
                             {"part_of_miss", step.part_of_miss}});
        Json band = nullptr;
        if (card.band_note)
            band = {{"note", units::file_name(card.band_note->note)},
                    {"fingering", fingering(card.band_note->fingering)},
                    {"reading_cents", card.band_note->reading.value()}};
        return {{"warm_up_minutes", card.warm_up_minutes},
                {"takes", card.takes},
                {"steps", steps},
                {"band_note", band}};
    }

    [[nodiscard]] Json remains(const tuning::Remains& remains) const {
        Json notes = Json::array();
        for (const tuning::RemainingNote& note : remains.notes)
            notes.push_back({{"note", units::file_name(note.note)},
                             {"fingering", fingering(note.fingering)},
                             {"lean_cents", note.lean.value()},
                             {"spread_cents", note.spread.value()},
                             {"next", word(note.next)},
                             {"instead", note.instead ? Json(fingering(*note.instead)) : Json(nullptr)},
                             {"lean_instead_cents", optional_number(note.lean_instead)},
                             {"slide", note.slide ? Json(*note.slide) : Json(nullptr)},
                             {"slide_by_mm", optional_number(note.slide_by)},
                             {"bend_cents", note.bend.value()},
                             {"chance", note.chance}});
        return {{"tolerance_cents", remains.tolerance.value()}, {"notes", notes}};
    }

    [[nodiscard]] Json hand_slide(const tuning::TuningAnswer& answer) const {
        if (!kind_.hand_slide) return nullptr;
        Json notes = Json::array();
        for (const tuning::PlaceOnSlide& place : answer.places_on_slide)
            notes.push_back({{"note", units::file_name(place.note)},
                             {"fingering", fingering(place.fingering)},
                             {"partial", place.partial},
                             {"plain_mm", place.plain.value()},
                             {"out_mm", place.out.value()},
                             {"offset_mm", place.offset().value()},
                             {"offset_inches", units::inch_text(place.offset())},
                             {"reach", word(place.reach)},
                             {"left_cents", place.left.value()}});
        return {{"home_mm", answer.question.constants.hand_slide_home.value()},
                {"end_mm", kind_.hand_slide->value()},
                {"notes", notes}};
    }

    [[nodiscard]] Json tuning_notes(const tuning::TuningAnswer& answer) const {
        Json missing = Json::array();
        for (const horns::TuningStep& step : answer.enough.missing)
            missing.push_back({{"slide", step.slide},
                               {"note", units::file_name(step.note)},
                               {"fingering", fingering(step.fingering)}});
        Json next = nullptr;
        if (answer.next_note)
            next = {{"note", units::file_name(answer.next_note->note)},
                    {"fingering", fingering(answer.next_note->fingering)}};
        return {{"are_in", answer.enough.tuning_notes_in()}, {"missing", missing}, {"measure_next", next}};
    }

    [[nodiscard]] Json notes_for_slides(const tuning::TuningAnswer& answer) const {
        Json slides = Json::array();
        for (const tuning::NotesForSlide& of_slide : answer.notes_for_slides) {
            Json notes = Json::array();
            for (const tuning::NoteForSlide& note : of_slide.notes)
                notes.push_back({{"note", units::file_name(note.note)},
                                 {"fingering", fingering(note.fingering)},
                                 {"partial", note.partial},
                                 {"spread_mm", note.spread.value()},
                                 {"weight", note.weight}});
            slides.push_back({{"slide", of_slide.slide}, {"notes", notes}});
        }
        return slides;
    }

    [[nodiscard]] Json families(const tuning::TuningAnswer& answer) const {
        Json rules = Json::array();
        for (const tuning::FamilyRule& rule : answer.families) {
            Json notes = Json::array();
            for (const units::Pitch note : rule.notes)
                notes.push_back(units::file_name(note));
            rules.push_back({{"usual", fingering(rule.usual)},
                             {"instead", fingering(rule.instead)},
                             {"notes", notes},
                             {"by_usual_square_cents", rule.by_usual.value()},
                             {"by_rule_square_cents", rule.by_rule.value()},
                             {"by_choice_square_cents", rule.by_choice.value()}});
        }
        return rules;
    }

  private:
    [[nodiscard]] std::string fingering(const horns::Fingering& fingering) const {
        return horns::file_text(fingering, labels_);
    }

    const horns::HornKind& kind_;
    std::vector<std::string> labels_;
};

Json objective(const tuning::SlideSettings& settings) {
    return {{"before_square_cents", settings.objective_before.value()},
            {"after_square_cents", settings.objective_after.value()},
            {"mean_before_cents", settings.mean_before.value()},
            {"mean_after_cents", settings.mean_after.value()},
            {"mean_lean_after_cents", settings.mean_lean_after.value()},
            {"chance_of_better", settings.chance_of_better}};
}

Json both_mains(const tuning::TuningAnswer& answer) {
    const tuning::SettledPitch& pitch = answer.profile.settled_pitch;
    if (!answer.both_mains) return nullptr;
    return {{"slide", answer.both_mains->slide},
            {"horn_alone_mm", answer.both_mains->horn_alone.value()},
            {"with_player_mm", answer.both_mains->with_player.value()},
            {"settled_pitch_cents", pitch.mean.value()},
            {"settled_pitch_spread_cents", pitch.spread.value()},
            {"answered_cents", pitch.answered.value()}};
}

Json tubes_off(const tuning::TuningAnswer& answer) {
    Json tubes = Json::array();
    for (const tuning::TubeOff& tube : answer.tubes_off)
        tubes.push_back(
            {{"slide", tube.slide}, {"at_limit", word(tube.limit)}, {"left_cents", tube.left.value()}});
    return tubes;
}

Json certificate(const std::optional<tuning::Certificate>& certificate) {
    if (!certificate) return nullptr;
    return {{"bound_square_cents", certificate->bound.value()},
            {"gap_square_cents", certificate->gap.value()},
            {"closed", certificate->closed},
            {"boxes", certificate->boxes}};
}

Json held_note(const tuning::SettingsQuestion& question) {
    if (!question.held_note) return nullptr;
    return {{"note", units::file_name(question.notes.at(question.held_note->note).note)},
            {"lean_cents", question.held_note->lean.value()}};
}

Json constants(const tuning::SettingsConstants& constants) {
    return {{"flat_weight", constants.flat_weight},
            {"cost_per_cent_moved", constants.cost_per_cent_moved},
            {"worth_moving_cents", constants.worth_moving.value()},
            {"chance_of_better", constants.chance_of_better},
            {"chance_of_each", constants.chance_of_each},
            {"most_mean_sharp_cents", constants.most_mean_sharp.value()},
            {"hand_slide_home_mm", constants.hand_slide_home.value()},
            {"step_mm", constants.step.value()}};
}

Json figures() {
    Json list = Json::array();
    for (const tuning::Figure& figure : tuning::figures().all)
        list.push_back({{"key", figure.key},
                        {"value", figure.value},
                        {"unit", figure.unit},
                        {"mark", word(figure.mark)},
                        {"meaning", figure.meaning}});
    return list;
}

/// The lower triangle of a symmetric matrix given by rows: a list of rows, each up to the diagonal.
Json lower_triangle(const std::vector<double>& matrix) {
    std::size_t size = 0;
    while (size * size < matrix.size())
        ++size;
    Json out = Json::array();
    for (std::size_t row = 0; row < size; ++row) {
        const auto start = matrix.begin() + static_cast<std::ptrdiff_t>(row * size);
        out.push_back(std::vector<double>(start, start + static_cast<std::ptrdiff_t>(row + 1)));
    }
    return out;
}

}  // namespace

std::string_view engine_version() {
    return LOWLEDGER_VERSION;
}

std::string settings_json(const tuning::TuningInputs& inputs, const tuning::TuningAnswer& answer) {
    const Writer writer(inputs.kind);
    const Json json = {
        {"format", "lowledger.settings/1"},
        {"engine_version", engine_version()},
        {"for", writer.horn(inputs)},
        {"slides", writer.slides(answer)},
        {"notes", writer.notes(answer)},
        {"both_mains", both_mains(answer)},
        {"notes_for_slides", writer.notes_for_slides(answer)},
        {"tubes_off", tubes_off(answer)},
        {"families", writer.families(answer)},
        {"objective", objective(answer.settings)},
        {"certificate", certificate(answer.certificate)},
        {"constants", constants(answer.question.constants)},
        {"held_note", held_note(answer.question)},
        {"tuning_notes", writer.tuning_notes(answer)},
        {"tube", writer.tube(answer.question.tube)},
        {"card", writer.card(answer.card)},
        {"remains", writer.remains(answer.remains)},
        {"hand_slide", writer.hand_slide(answer)},
        {"profile", writer.profile(answer.profile)},
        {"ways_covariance_square_cents", lower_triangle(answer.question.covariance)},
        {"sheets", writer.sheets(inputs.sheets)},
        {"figures", figures()},
    };
    return json_lines(json);
}

}  // namespace lowledger::exchange
