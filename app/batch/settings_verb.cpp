#include <CLI/CLI.hpp>
#include <algorithm>
#include <fmt/format.h>
#include <memory>
#include <optional>
#include <ostream>
#include <string>
#include <vector>

#include "app/batch/choose.h"
#include "app/batch/choose_kind.h"
#include "app/batch/settings_table.h"
#include "app/batch/verbs.h"
#include "model/exchange/settings_json.h"
#include "model/exchange/sheet_csv.h"
#include "model/exchange/slides_csv.h"
#include "model/exchange/text_file.h"
#include "model/studio/file_words.h"
#include "model/studio/note_style.h"
#include "model/tuning/weights.h"
#include "model/units/refusal.h"

namespace lowledger::batch {

namespace {

/// What was asked for. Either a sheet of a kind or a student of a studio.
struct Asked {
    std::string sheet;
    std::string kind;
    std::string kinds;
    std::string slides;
    std::string level = "beginner";
    std::optional<double> room_celsius;
    double tuner_a4_hertz = 440.0;
    bool tuner_seen = false;
    std::string studio;
    std::string student;
    std::string horn;
    std::string date;
    std::vector<std::string> fixed;
    std::optional<double> step_mm;
    std::string weights;
    bool band_note_at_zero = false;
    bool json = false;
};

/// The question, and how the reader of the answer writes and names notes.
struct Question {
    tuning::TuningInputs inputs;
    horns::NoteStyle style = {};
};

units::Hertz tuner_a4(const Asked& asked) {
    if (asked.tuner_a4_hertz < 400.0 || asked.tuner_a4_hertz > 480.0)
        throw units::Refusal("--tuner-a4: write what the tuner's A is set to, from 400 to 480 Hz.");
    return units::Hertz(asked.tuner_a4_hertz);
}

std::optional<units::Celsius> room(const Asked& asked) {
    if (!asked.room_celsius) return std::nullopt;
    if (*asked.room_celsius < 0.0 || *asked.room_celsius > 40.0)
        throw units::Refusal("--room: write the room's temperature, from 0 to 40 degrees Celsius.");
    return units::Celsius(*asked.room_celsius);
}

Question question_of_sheet(const Asked& asked, studio::Date today) {
    const horns::HornKind kind = kind_asked({"", asked.kinds}, asked.kind, "--kind");
    const auto level = studio::parse_level(asked.level);
    if (!level)
        throw units::Refusal(fmt::format("--level {}: write beginner, middle or advanced.", asked.level));
    const auto rows = asked.slides.empty() ? exchange::slides_of_kind(kind)
                                           : exchange::read_slides_csv(exchange::read_text_file(asked.slides),
                                                                       asked.slides, kind);
    Question question{{.kind = kind,
                       .slides = {},
                       .positions = {},
                       .level = *level,
                       .tolerance = {},
                       .sheets = {},
                       .studio_a4 = units::standard_a4,
                       .usual_room = studio::StudioFacts{}.usual_room,
                       .today = today,
                       .room_today = room(asked),
                       .tuner_a4 = tuner_a4(asked),
                       .hand = {}},
                      {.reader = studio::reader_of(kind, {})}};
    for (const exchange::SlideRow& row : rows) {
        question.inputs.slides.push_back(row.slide);
        if (row.position) question.inputs.positions[row.slide.slide] = *row.position;
    }
    question.inputs.sheets.push_back(
        {.id = {},
         .student = {},
         .horn = {},
         .on = today,
         .mouthpiece = "",
         .tuner_seen = asked.tuner_seen,
         .room = room(asked),
         .tuner_a4 = tuner_a4(asked),
         .positions = question.inputs.positions,
         .readings = exchange::read_sheet_csv(exchange::read_text_file(asked.sheet), asked.sheet, kind),
         .remarks = ""});
    return question;
}

Question question_of_studio(const Asked& asked, studio::Date today, std::ostream& errors) {
    const auto file = store::StudioFile::open(asked.studio, store::Access::read_only);
    const studio::Student student = choose_student(file, asked.student);
    const studio::Horn horn = choose_horn(file, student, asked.horn, today);
    tell_vanished_kind(file, horn, errors);
    Question question{tuning_inputs(file, student, horn, today)};
    question.style = studio::note_style(file.facts(), student, question.inputs.kind);
    return question;
}

void apply_hand(const Asked& asked, tuning::TuningInputs& inputs) {
    for (const std::string& slide : asked.fixed) {
        if (inputs.kind.slide(slide) == nullptr)
            throw units::Refusal(
                fmt::format("--fix {}: the horn ({}) has no such slide.", slide, inputs.kind.name));
        inputs.hand.fixed.insert(slide);
    }
    if (asked.step_mm) {
        if (*asked.step_mm < 0.0 || *asked.step_mm > 50.0)
            throw units::Refusal("--step: write mm from 0 (any position) to 50.");
        inputs.hand.step = units::Millimetres(*asked.step_mm);
    }
    if (!asked.weights.empty()) inputs.hand.weights = tuning::weights_named(asked.weights, inputs.kind);
    inputs.hand.band_note_at_zero = asked.band_note_at_zero;
}

studio::Date day_asked(const Asked& asked, studio::Date today) {
    if (asked.date.empty()) return today;
    if (const auto date = studio::Date::parse_iso(asked.date)) return *date;
    throw units::Refusal(fmt::format("--on {}: that is no date. Write it as 2026-11-25.", asked.date));
}

void give_settings(const Asked& asked, const Surroundings& surroundings) {
    const studio::Date day = day_asked(asked, surroundings.today);
    Question question = asked.studio.empty() ? question_of_sheet(asked, day)
                                             : question_of_studio(asked, day, surroundings.errors);
    apply_hand(asked, question.inputs);
    tuning::TuningAnswer answer = tuning::answer(question.inputs);
    answer.certificate = tuning::certify(answer.question, answer.settings);
    surroundings.out << (asked.json ? exchange::settings_json(question.inputs, answer)
                                    : settings_table(question.inputs, answer, question.style));
}

void add_sheet_options(CLI::App& verb, Asked& asked) {
    const std::string group = "A tuning sheet of its own";
    auto* sheet =
        verb.add_option("--sheet", asked.sheet, "Readings as CSV: note,fingering,cents and perhaps take")
            ->type_name("CSV");
    auto* kind = verb.add_option("--kind", asked.kind,
                                 "Kind of horn, as 'kinds' lists it, or a kind's file, NAME.toml")
                     ->type_name("KIND")
                     ->needs(sheet);
    sheet->needs(kind)->group(group);
    kind->group(group);
    const auto with_sheet = [&](CLI::Option* option, const char* type) {
        option->type_name(type)->needs(sheet)->group(group);
    };
    with_sheet(verb.add_option("--kinds", asked.kinds, "Your folder of own kinds for --kind"), "FOLDER");
    with_sheet(verb.add_option("--slides", asked.slides, "Slides as CSV: slide,position,least,travel"),
               "CSV");
    with_sheet(verb.add_option("--level", asked.level, "beginner, middle or advanced")->capture_default_str(),
               "LEVEL");
    with_sheet(verb.add_option("--room", asked.room_celsius, "The room's temperature, degrees Celsius"), "C");
    with_sheet(verb.add_option("--tuner-a4", asked.tuner_a4_hertz, "What the tuner's A was set to")
                   ->capture_default_str(),
               "HZ");
    verb.add_flag("--tuner-seen", asked.tuner_seen, "The player watched the tuner")
        ->needs(sheet)
        ->group(group);
}

void add_studio_options(CLI::App& verb, Asked& asked) {
    const std::string group = "A student of a studio";
    auto* studio = verb.add_option("--studio", asked.studio, "The studio file, NAME.lowledger")
                       ->type_name("STUDIO")
                       ->excludes("--sheet");
    auto* student = verb.add_option("--student", asked.student, "Name, or what the student is called")
                        ->type_name("NAME")
                        ->needs(studio);
    studio->needs(student)->group(group);
    student->group(group);
    verb.add_option("--horn", asked.horn, "Mark of the horn, where the student plays several")
        ->type_name("MARK")
        ->needs(studio)
        ->group(group);
}

}  // namespace

void add_settings_verb(CLI::App& program, Surroundings& surroundings) {
    auto asked = std::make_shared<Asked>();
    CLI::App* verb = program.add_subcommand(
        "settings", "Where the slides belong, from a tuning sheet or for a student of a studio.");
    add_sheet_options(*verb, *asked);
    add_studio_options(*verb, *asked);
    verb->add_option("--on", asked->date, "The day it is for; today where left out")->type_name("DATE");
    verb->add_option("--fix", asked->fixed, "Slides that stay where they are")->type_name("SLIDE");
    verb->add_option("--step", asked->step_mm, "Positions in steps of so many mm; 0: any")->type_name("MM");
    verb->add_option(
            "--weights", asked->weights,
            "The notes that count: notes:Bb1,C2 or scale:Bb1 (major) or register:low, middle or high, "
            "or shares:Bb1=3,C2=1 of the music")
        ->type_name("WHAT");
    verb->add_flag("--band-note-at-zero", asked->band_note_at_zero, "Bring the band's tuning note to zero");
    verb->add_flag("--json", asked->json, "Print lowledger.settings/1 instead of a table");
    verb->callback([asked, &surroundings] {
        if (asked->sheet.empty() && asked->studio.empty())
            throw CLI::RequiredError("--sheet with --kind, or --studio with --student,");
        give_settings(*asked, surroundings);
    });
}

}  // namespace lowledger::batch
