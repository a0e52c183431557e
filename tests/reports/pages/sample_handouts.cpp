#include "tests/reports/pages/sample_handouts.h"

#include <array>
#include <cmath>

#include "model/horns/chart.h"

namespace lowledger::pages {
namespace {

using tuning::Advice;
using tuning::Remedy;
using units::Cents;
using units::Millimetres;
using units::Pitch;
using namespace units::literals;

/// An invented lean: what the kind gives and a player who is a little sharp, rounded.
Cents invented_lean(const horns::ChartNote& note) {
    return Cents(std::round(note.usual.lean.value()) + 6.0);
}

tuning::SlideAnswer slide_answer(const horns::SlideKind& slide, Millimetres now, Millimetres to) {
    tuning::SlideAnswer answer;
    answer.slide = slide.id;
    answer.now = now;
    answer.recommended = to;
    answer.least = slide.least;
    answer.travel = slide.travel;
    answer.advice = now == to ? Advice::leave : Advice::move;
    answer.half_width = 12_mm;
    answer.cents_per_mm = units::CentsPerMillimetre(0.55);
    return answer;
}

tuning::CardStep card_step(const horns::TuningStep& order, const tuning::SlideAnswer& slide, Cents aim) {
    return {order.slide,
            order.note,
            order.fingering,
            2,
            slide.advice,
            slide.limit,
            slide.position_known,
            slide.now,
            slide.recommended,
            slide.recommended - slide.now,
            aim,
            true,
            10_cents,
            0.5,
            slide.cents_per_mm,
            slide.half_width};
}

void add_note(HandoutInputs& inputs, const horns::ChartNote& note) {
    auto& answer = inputs.answer;
    const Cents before = invented_lean(note);
    const Cents after = before - 9_cents;
    answer.profile.notes.push_back({note.note, note.usual.fingering, note.usual.partial, true, before,
                                    4_cents, before, 3_cents, before, 2, before, 0.6});
    tuning::NoteAnswer settled{
        note.note,
        1.0,
        {note.usual.fingering, note.usual.partial, before, 3_cents, 2, units::SquareCents(0)},
        true,
        before,
        after};
    answer.settings.notes.push_back(settled);
    if (abs(after) <= answer.remains.tolerance) return;
    tuning::RemainingNote remaining{
        note.note, note.usual.fingering, note.usual.partial, after, 4_cents, Remedy::air, {}, {}, -after, 0.8,
        2};
    if (after > 12_cents) remaining.next = Remedy::embouchure;
    if (!note.alternates.empty() && after > 16_cents) {
        remaining.next = Remedy::other_fingering;
        remaining.instead = note.alternates.front().fingering;
        remaining.lean_instead = 4_cents;
    }
    if (abs(after) > 26_cents) remaining.next = Remedy::beyond_player;
    answer.remains.notes.push_back(remaining);
}

void set_slides(HandoutInputs& inputs, const std::vector<std::array<double, 2>>& now_and_to) {
    auto& answer = inputs.answer;
    for (std::size_t i = 0; i < inputs.kind.slides.size(); ++i) {
        const auto& slide = inputs.kind.slides[i];
        answer.settings.slides.push_back(
            slide_answer(slide, Millimetres(now_and_to.at(i)[0]), Millimetres(now_and_to.at(i)[1])));
        inputs.horn.slides.push_back({slide.id, slide.least, slide.travel, false});
    }
}

void set_card(HandoutInputs& inputs) {
    constexpr std::array<double, 6> aims = {2, -3, 4, 7, 0, -12};
    auto& card = inputs.answer.card;
    card.steps.clear();
    for (std::size_t i = 0; i < inputs.kind.tuning_order.size(); ++i) {
        const auto& order = inputs.kind.tuning_order[i];
        const auto at = inputs.kind.slide_index(order.slide);
        card.steps.push_back(
            card_step(order, inputs.answer.settings.slides.at(at.value()), Cents(aims.at(i % 6))));
    }
    card.warm_up_minutes = inputs.kind.warm_up_minutes;
    card.band_note = {inputs.kind.band_note, {}, 3_cents};
}

HandoutInputs long_names() {
    auto inputs = usual_handout();
    inputs.student.name = "Wilhelmina-Alexandra Featherstonehaugh-Cholmondeley Montague";
    inputs.facts.teacher = "Bartholomew Montgomery Wolfeschlegelsteinhausenbergerdorff-M";
    inputs.facts.school = "The Royal Harbour Street Comprehensive School for Girls & Boys";
    inputs.horn.mark = "School horn number fourteen, the dented one with the new case.";
    return inputs;
}

HandoutInputs six_long_slides() {
    auto inputs = usual_handout();
    auto fifth = inputs.kind.slides.back();
    inputs.kind.slides.push_back(fifth);
    inputs.kind.slides.back().id = "fifth";
    inputs.kind.slides.back().name = "fifth valve slide of a name far too long";
    inputs.kind.tuning_order.push_back({"fifth", Pitch(28), {{1, 2, 3, 4}, 0}});
    inputs.answer.settings.slides.clear();
    for (auto& slide : inputs.kind.slides)
        slide.travel = 95_mm;
    set_slides(inputs, {{5, 95}, {5, 95}, {2, 95}, {3, 95}, {3, 95}, {3, 95}});
    for (auto& slide : inputs.answer.settings.slides)
        slide.limit = tuning::Limit::travel;
    set_card(inputs);
    return inputs;
}

HandoutInputs every_note_to_watch() {
    auto inputs = six_long_slides();
    constexpr std::array<Remedy, 4> remedies = {Remedy::other_fingering, Remedy::air, Remedy::embouchure,
                                                Remedy::beyond_player};
    auto& notes = inputs.answer.remains.notes;
    notes.clear();
    const auto chart = horns::chart(inputs.kind);
    for (std::size_t i = 0; i < chart.size(); ++i) {
        const auto& note = chart[i];
        const Cents lean(i % 2 == 0 ? 48.0 : -48.0);
        tuning::RemainingNote remaining{note.note, note.usual.fingering,  note.usual.partial, lean,
                                        9_cents,   remedies.at(i / 2 % 4)};
        remaining.instead = horns::Fingering{{1, 2, 3, 4}, 0};
        remaining.lean_instead = 4_cents;
        remaining.bend = -lean;
        remaining.chance = 0.9;
        remaining.takes = 1;
        notes.push_back(remaining);
    }
    return inputs;
}

HandoutInputs nothing_measured() {
    auto inputs = usual_handout();
    inputs.horn.mark.clear();
    auto& answer = inputs.answer;
    answer.profile.sheets_used = 0;
    answer.profile.takes_used = 0;
    answer.enough.missing = inputs.kind.tuning_order;
    answer.remains.notes.clear();
    return inputs;
}

HandoutInputs partly_measured() {
    auto inputs = usual_handout();
    inputs.answer.profile.takes_used = 4;
    inputs.answer.enough.missing = {inputs.kind.tuning_order.begin() + 2, inputs.kind.tuning_order.end()};
    return inputs;
}

HandoutInputs unknown_and_stuck() {
    auto inputs = usual_handout();
    auto& slides = inputs.answer.settings.slides;
    for (auto& slide : slides)
        slide.position_known = false;
    slides[1].advice = Advice::fixed;
    slides[3].advice = Advice::fixed;
    inputs.horn.slides[3].stuck = true;
    inputs.answer.remains.notes.clear();
    set_card(inputs);
    return inputs;
}

HandoutInputs named(const std::string& student, const std::string& teacher, const std::string& school) {
    auto inputs = usual_handout();
    inputs.student.name = student;
    inputs.facts.teacher = teacher;
    inputs.facts.school = school;
    return inputs;
}

/// The usual handout's invention for another kind, read so: slides where they were designed to stand, the
/// first pulled a little.
HandoutInputs read_as(std::string_view kind, std::string_view reader, units::Naming naming) {
    auto inputs = usual_handout();
    inputs.kind = *horns::find_kind(horns::built_in_kinds(), kind);
    inputs.student.reader = reader;
    inputs.facts.naming = naming;
    inputs.answer.profile.notes.clear();
    inputs.answer.settings = {};
    inputs.answer.remains.notes.clear();
    inputs.horn.slides.clear();
    for (const auto& note : horns::chart(inputs.kind)) {
        if (inputs.kind.core_range.contains(note.note)) add_note(inputs, note);
    }
    std::vector<std::array<double, 2>> now_and_to;
    for (const auto& slide : inputs.kind.slides) {
        const double designed = slide.designed.value();
        now_and_to.push_back({designed, designed + (now_and_to.empty() ? 6.0 : 0.0)});
    }
    set_slides(inputs, now_and_to);
    set_card(inputs);
    return inputs;
}

}  // namespace

HandoutInputs usual_handout() {
    HandoutInputs inputs{{},
                         {},
                         {},
                         *horns::find_kind(horns::built_in_kinds(), "bbb-tuba-4"),
                         {},
                         studio::Date(2026, 11, 25),
                         canvas::Paper::a4};
    inputs.facts.teacher = "Anselm Okoro";
    inputs.facts.school = "Harbour Street School";
    inputs.student.name = "Ida Holm";
    inputs.horn.mark = "T-4";
    inputs.answer.remains.tolerance = 10_cents;
    inputs.answer.profile.sheets_used = 3;
    inputs.answer.profile.takes_used = 41;
    for (const auto& note : horns::chart(inputs.kind)) {
        if (inputs.kind.core_range.contains(note.note)) add_note(inputs, note);
    }
    set_slides(inputs, {{20, 35}, {10, 10}, {5, 5}, {25, 25}, {40, 20}});
    set_card(inputs);
    return inputs;
}

HandoutInputs answered_handout(const horns::HornKind& kind) {
    HandoutInputs inputs = usual_handout();
    inputs.kind = kind;
    inputs.horn.slides.clear();
    studio::TuningSheet sheet{
        {}, {}, {}, studio::Date(2026, 11, 20), {}, true, false, false, {}, units::standard_a4, {}, {}, {}};
    for (const auto& slide : kind.slides) {
        inputs.horn.slides.push_back({slide.id, slide.least, slide.travel, false});
        sheet.positions[slide.id] = slide.designed;
    }
    for (const auto& note : horns::chart(kind)) {
        if (!kind.core_range.contains(note.note)) continue;
        for (const int take : {1, 2})
            sheet.readings.push_back({note.note, note.usual.fingering, note.usual.partial, take,
                                      note.usual.lean + Cents(12.0 + take)});
    }
    for (const auto& step : kind.tuning_order) {
        const auto partial = horns::sounding_partial(kind, step.fingering, step.note);
        if (partial)
            sheet.readings.push_back(
                {step.note, step.fingering, partial->partial, 3, partial->lean + 12_cents});
    }
    inputs.answer = tuning::answer({kind,
                                    inputs.horn.slides,
                                    sheet.positions,
                                    studio::Level::middle,
                                    {},
                                    {sheet},
                                    units::standard_a4,
                                    units::Celsius(21.0),
                                    inputs.date,
                                    {},
                                    units::standard_a4,
                                    {}});
    return inputs;
}

std::vector<NamedHandout> awkward_handouts() {
    return {{"usual", usual_handout()},
            {"long-names", long_names()},
            {"six-long-slides", six_long_slides()},
            {"every-note-to-watch", every_note_to_watch()},
            {"nothing-measured", nothing_measured()},
            {"partly-measured", partly_measured()},
            {"unknown-and-stuck", unknown_and_stuck()},
            {"treble-clef-euphonium", read_as("euphonium-4-comp", "treble-b-flat", units::Naming::english)},
            {"tenor-clef-trombone", read_as("tenor-trombone-f", "tenor", units::Naming::solfege)},
            {"german-names", read_as("f-tuba-5", "bass", units::Naming::german)},
            {"polish", named("Żaneta Wąż-Gęślicka", "Łukasz Źdźbło", "Szkoła Muzyczna w Żółwinie")},
            {"greek", named("Ευφροσύνη Παπαδημητρίου", "Χαράλαμπος Ψαλτής", "Σχολή Ωδείου Θήβας")},
            {"cyrillic", named("Любовь Щербатюк", "Ђорђе Живковић", "Школа на Њивама")}};
}

}  // namespace lowledger::pages
