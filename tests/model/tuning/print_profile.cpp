// Prints worlds of readings with the terms and laws of each, the terms of what is predicted, and the profile
// that follows, as JSON: for dense_conditioning.py, which conditions them without any of our algebra.
#include <iostream>
#include <nlohmann/json.hpp>

#include "model/tuning/belief.h"
#include "model/tuning/conditioning.h"
#include "model/tuning/predictions.h"
#include "tests/model/tuning/played_horn.h"

namespace {

using namespace lowledger;
using namespace lowledger::tuning;
using Json = nlohmann::json;

Json json_of(const Terms& terms) {
    Json all = Json::array();
    for (const Term& term : terms) {
        all.push_back({{"unknown", {static_cast<int>(term.key.kind), term.key.a, term.key.b, term.key.whose}},
                       {"coefficient", term.coefficient},
                       {"spread", term.law.spread},
                       {"half_life", term.law.half_life}});
    }
    return all;
}

Json json_of(const Prediction& prediction) {
    Json all = Json::array();
    for (std::size_t i = 0; i < prediction.terms.size(); ++i)
        all.push_back({{"expected", prediction.expected[i]}, {"terms", json_of(prediction.terms[i])}});
    return all;
}

Json json_of(const TuningProfile& profile) {
    Json notes = Json::array();
    for (const ProfileNote& note : profile.notes) {
        notes.push_back({{"mean", note.mean.value()},
                         {"spread", note.spread.value()},
                         {"slides_mean", note.slides_mean.value()},
                         {"aim", note.aim.value()},
                         {"placed", note.placed.value()},
                         {"share_of_data", note.share_of_data}});
    }
    return {{"notes", notes}, {"slides_covariance", profile.slides_covariance}};
}

Json world(const TuningInputs& inputs) {
    const Belief belief = believe(inputs, figures());
    const double more = belief.profile.correction.part - figures().of(inputs.level).kappa;
    const Evidence evidence = evidence_of(inputs, figures(), more);
    Json readings = Json::array();
    for (const Row& row : rows_of(evidence)) {
        readings.push_back({{"days", inputs.today - row.on},
                            {"off", row.off},
                            {"noise", row.noise},
                            {"terms", json_of(row.terms)}});
    }
    const Predictions predictions =
        predictions_of(evidence, ways_to_play(inputs, evidence.own().sheets.used), more);
    return {{"readings", readings},
            {"as_played", json_of(predictions.as_played)},
            {"placed", json_of(predictions.placed)},
            {"for_slides", json_of(predictions.for_slides)},
            {"aim", json_of(predictions.aim)},
            {"profile", json_of(belief.profile)},
            {"slides_by_reading", belief.slides_by_reading}};
}

TrueHorn horn(unsigned seed) {
    TrueHorn horn;
    horn.extra_open = units::Millimetres(-40.0);
    horn.extra_valve = {units::Millimetres(-10.0), units::Millimetres(4.0)};
    horn.player = units::Cents(6.0);
    horn.noise = units::Cents(5.0);
    horn.seed = seed;
    return horn;
}

TuningInputs one_sheet(studio::Level level) {
    TuningInputs inputs = fresh_inputs(level);
    inputs.sheets = {sheet_of(inputs, horn(1), 2, {"Bb2", "G2"})};
    return inputs;
}

/// Slides that were moved, rooms, a mouthpiece and a place not known, age, an uneven sheet.
TuningInputs everything() {
    TuningInputs inputs = fresh_inputs(studio::Level::middle, "bbb-tuba-4");
    studio::TuningSheet old = sheet_of(inputs, horn(2), 3, {"Bb2", "F2", "D3"});
    old.on = inputs.today - 90;
    old.room = units::Celsius(16.0);
    old.readings.pop_back();
    inputs.positions["main"] += units::Millimetres(15.0);
    inputs.positions["first"] += units::Millimetres(8.0);
    studio::TuningSheet recent = sheet_of(inputs, horn(3), 2, {"Bb2", "C3"});
    recent.id.number = 2;
    recent.positions.erase("third");
    recent.room.reset();
    recent.mouthpiece = "another";
    recent.tuner_seen = true;
    inputs.positions.erase("fourth");
    inputs.sheets = {old, recent};
    return inputs;
}

/// A trombonist's arm.
TuningInputs trombone() {
    TuningInputs inputs = fresh_inputs(studio::Level::beginner, "tenor-trombone");
    inputs.sheets = {sheet_of(inputs, horn(4), 2, {"C3", "D3", "A2", "G3"})};
    return inputs;
}

/// The student's own horn at home, and others who play the school's.
TuningInputs shared() {
    TuningInputs inputs = everything();
    TuningInputs home = fresh_inputs(studio::Level::middle, "euphonium-4-comp");
    home.positions.erase("third");
    inputs.other_horns = {{home.kind, home.positions, {sheet_of(home, horn(5), 2)}}};
    TuningInputs other = fresh_inputs(studio::Level::advanced, "bbb-tuba-4");
    studio::TuningSheet sheet = sheet_of(other, horn(6), 2, {"Bb2"});
    sheet.positions.erase("first");
    sheet.on = inputs.today - 30;
    inputs.other_players = {{studio::Level::advanced, {sheet}}};
    return inputs;
}

}  // namespace

int main() {
    const Json worlds = {{"one sheet, beginner", world(one_sheet(studio::Level::beginner))},
                         {"one sheet, advanced", world(one_sheet(studio::Level::advanced))},
                         {"no sheet", world(fresh_inputs())},
                         {"everything", world(everything())},
                         {"trombone", world(trombone())},
                         {"shared", world(shared())}};
    std::cout << worlds.dump() << '\n';
    return 0;
}
