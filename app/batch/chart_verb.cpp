#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <memory>
#include <optional>
#include <ostream>
#include <string>
#include <vector>

#include "app/batch/chart_table.h"
#include "app/batch/choose.h"
#include "app/batch/choose_kind.h"
#include "app/batch/print_request.h"
#include "app/batch/verbs.h"
#include "app/paper/output_files.h"
#include "model/exchange/chart_json.h"
#include "model/studio/file_words.h"
#include "model/studio/kind_of.h"
#include "model/studio/note_style.h"
#include "model/units/refusal.h"
#include "reports/canvas/pdf.h"
#include "reports/pages/handout.h"

namespace lowledger::batch {

namespace {

struct Asked {
    std::string kind;
    std::string studio;
    std::string kinds;
    std::string horn;
    std::string student;
    std::string reader;
    std::string note;
    std::string into;
    std::string paper;
    std::string date;
    bool sharps = false;
    bool json = false;
};

/// What is charted, before a reader is chosen.
struct Charted {
    horns::HornKind kind;
    std::optional<pages::ChartOfHorn> horn;
    /// Of who plays it, else of the horn itself.
    horns::NoteStyle style = {};
    canvas::Paper paper = canvas::Paper::a4;
};

studio::Date day_asked(const Asked& asked, studio::Date today) {
    if (asked.date.empty()) return today;
    if (const auto date = studio::Date::parse_iso(asked.date)) return *date;
    throw units::Refusal(fmt::format("--on {}: that is no date. Write it as 2026-11-25.", asked.date));
}

/// Whose leans the chart of a horn shows: of the student asked for, else of the only one who plays it on that
/// day.
std::optional<studio::Student> player(const store::StudioFile& file, const studio::Horn& horn,
                                      const Asked& asked, studio::Date day, std::ostream& errors) {
    if (!asked.student.empty()) return choose_student(file, asked.student);
    std::vector<studio::Student> players;
    for (studio::Student& student : file.students())
        for (const studio::Horn& played : horns_of(file, student, day))
            if (played.id == horn.id) players.push_back(student);
    if (players.size() == 1) return players.front();
    constexpr const char* nobody =
        "Nobody plays {} on {}, so the leans are its kind's. Name a student with --student NAME.\n";
    constexpr const char* several =
        "Several students play {} on {}, so the leans are its kind's. Name one with --student NAME.\n";
    errors << fmt::format(fmt::runtime(players.empty() ? nobody : several), horn.mark, day.iso());
    return std::nullopt;
}

Charted charted_horn(const Asked& asked, const Surroundings& surroundings) {
    const studio::Date day = day_asked(asked, surroundings.today);
    const auto file = store::StudioFile::open(asked.studio, store::Access::read_only);
    const studio::Horn horn = horn_marked(file, asked.horn);
    const auto facts = file.facts();
    Charted charted{studio::kind_of(horn), std::nullopt, {}, pages::paper_of(facts)};
    charted.style = studio::note_style(facts, charted.kind);
    tell_vanished_kind(file, horn, surroundings.errors);
    if (const auto student = player(file, horn, asked, day, surroundings.errors)) {
        charted.style = studio::note_style(facts, *student, charted.kind);
        charted.horn = {horn.mark, student->name,
                        tuning::answer(tuning_inputs(file, *student, horn, day)).profile};
    }
    return charted;
}

Charted charted_kind(const Asked& asked) {
    return {kind_asked({asked.studio, asked.kinds}, asked.kind, "KIND"), std::nullopt};
}

canvas::Paper paper_asked(const Asked& asked, canvas::Paper otherwise) {
    if (asked.paper.empty()) return otherwise;
    const auto paper = studio::parse_paper(asked.paper);
    if (!paper) throw units::Refusal(fmt::format("--paper {}: write a4 or letter.", asked.paper));
    return *paper == studio::StudioFacts::Paper::letter ? canvas::Paper::letter : canvas::Paper::a4;
}

units::Pitch note_asked(const Asked& asked) {
    if (const auto note = units::parse_pitch(asked.note)) return *note;
    throw units::Refusal(
        fmt::format("--note {}: that is no note. Write the sounding one, as Bb2 or F#3.", asked.note));
}

std::string json_of(const pages::ChartInputs& chart) {
    std::optional<exchange::ChartedHorn> horn;
    if (chart.horn) horn = exchange::ChartedHorn{chart.horn->mark, chart.horn->student, chart.horn->profile};
    return exchange::chart_json(chart.kind, chart.style.reader, chart.style.accidentals, horn);
}

horns::NoteStyle style_asked(const Asked& asked, const Charted& charted) {
    horns::NoteStyle style = charted.style;
    if (asked.horn.empty() || !asked.reader.empty()) style.reader = choose_reader(charted.kind, asked.reader);
    if (asked.sharps) style.accidentals = units::Accidentals::sharps;
    return style;
}

void give_chart(const Asked& asked, const Surroundings& surroundings) {
    if (!asked.into.empty()) paper::require_place(asked.into, true);
    const Charted charted = asked.horn.empty() ? charted_kind(asked) : charted_horn(asked, surroundings);
    const pages::ChartInputs chart{.kind = charted.kind,
                                   .style = style_asked(asked, charted),
                                   .horn = charted.horn,
                                   .paper = paper_asked(asked, charted.paper)};
    if (!asked.into.empty()) {
        const canvas::Faces faces;
        const auto document = pages::chart_page(chart, words::Words(), faces);
        paper::write_all({{asked.into, canvas::pdf_bytes(document, faces)}});
        tell_undrawable(document, faces, surroundings.errors);
        surroundings.out << fmt::format("The chart is in {}.\n", asked.into);
        return;
    }
    if (!asked.note.empty()) {
        surroundings.out << note_table(chart, note_asked(asked));
        return;
    }
    surroundings.out << (asked.json ? json_of(chart) : chart_table(chart));
}

}  // namespace

void add_chart_verb(CLI::App& program, Surroundings& surroundings) {
    auto asked = std::make_shared<Asked>();
    CLI::App* verb = program.add_subcommand(
        "chart", "The fingering or position chart of a kind, or of a horn of a studio with its own leans.");
    auto* kind = verb->add_option("KIND", asked->kind,
                                  "Key of the kind, as 'kinds' lists it, or a kind's file, NAME.toml");
    auto* studio =
        verb->add_option("--studio", asked->studio, "The studio of the horn; its own kinds count for KIND")
            ->type_name("STUDIO");
    verb->add_option("--kinds", asked->kinds, "Your folder of own kinds for KIND")
        ->type_name("FOLDER")
        ->needs(kind);
    auto* horn = verb->add_option("--horn", asked->horn, "Mark of the horn")
                     ->type_name("MARK")
                     ->needs(studio)
                     ->excludes(kind);
    verb->add_option("--student", asked->student, "Whose leans; left out: of the one who plays it")
        ->type_name("NAME")
        ->needs(horn);
    verb->add_option("--reader", asked->reader, "How the parts are written, as 'kinds' lists it")
        ->type_name("READER");
    verb->add_flag("--sharps", asked->sharps, "Black keys as sharps");
    auto* note =
        verb->add_option("--note", asked->note, "Every way of this sounding note, as Bb2")->type_name("NOTE");
    auto* json = verb->add_flag("--json", asked->json, "Print lowledger.chart/1 instead of a table");
    verb->add_option("--into", asked->into, "Print the page as PDF into this file")
        ->type_name("FILE")
        ->excludes(json)
        ->excludes(note);
    json->excludes(note);
    verb->add_option("--paper", asked->paper, "a4 or letter; the studio's own where left out")
        ->type_name("PAPER");
    verb->add_option("--on", asked->date, "The day it is for; today where left out")->type_name("DATE");
    verb->callback([asked, &surroundings] {
        if (asked->kind.empty() && asked->horn.empty())
            throw CLI::RequiredError("KIND, or --studio with --horn,");
        give_chart(*asked, surroundings);
    });
}

}  // namespace lowledger::batch
