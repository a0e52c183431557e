#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <memory>
#include <optional>
#include <ostream>
#include <string>
#include <vector>

#include "app/batch/choose.h"
#include "app/batch/file_names.h"
#include "app/batch/output_files.h"
#include "app/batch/verbs.h"
#include "model/studio/file_words.h"
#include "model/studio/kind_of.h"
#include "model/units/refusal.h"
#include "reports/canvas/pdf.h"
#include "reports/pages/handout.h"
#include "reports/pages/joined.h"

namespace lowledger::batch {

namespace {

struct Asked {
    std::string studio;
    std::string into;
    std::vector<std::string> students;
    std::string paper;
    std::string date;
};

/// A handout and whose it is.
struct Made {
    std::string title;
    canvas::Document document;
};

bool one_file(const std::filesystem::path& into) {
    return into.extension() == ".pdf" || into.extension() == ".PDF";
}

std::vector<studio::Student> students_asked(const store::StudioFile& file, const Asked& asked) {
    std::vector<studio::Student> students;
    for (const std::string& name : asked.students)
        students.push_back(choose_student(file, name));
    if (!asked.students.empty()) return students;
    for (studio::Student& student : file.students())
        if (!student.archived) students.push_back(std::move(student));
    return students;
}

studio::StudioFacts facts_asked(const store::StudioFile& file, const Asked& asked) {
    studio::StudioFacts facts = file.facts();
    if (asked.paper.empty()) return facts;
    const auto paper = studio::parse_paper(asked.paper);
    if (!paper) throw units::Refusal(fmt::format("--paper {}: write a4 or letter.", asked.paper));
    facts.paper = *paper;
    return facts;
}

/// Says on the error stream what the fonts here lack; the handout has a box in its place.
void tell_undrawable(const studio::Student& student, const studio::Horn& horn, const canvas::Faces& faces,
                     std::ostream& errors) {
    for (const std::string& text : {student.name, horn.mark})
        for (const std::string& letter : faces.undrawable(text))
            errors << fmt::format(
                "In \"{}\" no font of this system can draw {}; an empty box stands for it.\n", text, letter);
}

std::vector<Made> make_handouts(const Asked& asked, const canvas::Faces& faces, studio::Date day,
                                const Surroundings& surroundings) {
    const auto file = store::StudioFile::open(asked.studio, store::Access::read_only);
    const studio::StudioFacts facts = facts_asked(file, asked);
    const words::Words words;
    std::vector<Made> made;
    for (const studio::Student& student : students_asked(file, asked)) {
        const auto horns = horns_of(file, student, day);
        if (horns.empty())
            surroundings.errors << fmt::format("{} plays no horn on {}: no handout.\n", student.name,
                                               day.iso());
        for (const studio::Horn& horn : horns) {
            tell_undrawable(student, horn, faces, surroundings.errors);
            tell_vanished_kind(file, horn, surroundings.errors);
            const tuning::TuningInputs inputs = tuning_inputs(file, student, horn, day);
            made.push_back({fmt::format("{}, {}", student.name, horn.mark),
                            pages::handout({.facts = facts,
                                            .student = student,
                                            .horn = horn,
                                            .kind = inputs.kind,
                                            .answer = tuning::answer(inputs),
                                            .date = day,
                                            .paper = pages::paper_of(facts)},
                                           words, faces)});
        }
    }
    if (made.empty())
        throw units::Refusal(
            fmt::format("There is nothing to print: nobody asked for plays a horn on {}.", day.iso()));
    return made;
}

canvas::Document as_one(const std::vector<Made>& handouts) {
    std::vector<canvas::Document> documents;
    documents.reserve(handouts.size());
    for (const Made& handout : handouts)
        documents.push_back(handout.document);
    return pages::joined(documents, handouts.size() == 1 ? handouts.front().title : "Tuning handouts");
}

void print_handouts(const Asked& asked, const Surroundings& surroundings) {
    std::optional<studio::Date> day = surroundings.today;
    if (!asked.date.empty()) day = studio::Date::parse_iso(asked.date);
    if (!day)
        throw units::Refusal(fmt::format("--on {}: that is no date. Write it as 2026-11-25.", asked.date));
    const std::filesystem::path into = asked.into;
    require_place(into, one_file(into));
    const canvas::Faces faces;
    const std::vector<Made> handouts = make_handouts(asked, faces, *day, surroundings);
    std::vector<OutputFile> files;
    if (one_file(into)) {
        files.push_back({into, canvas::pdf_bytes(as_one(handouts), faces)});
    } else {
        FileNames names;
        for (const Made& handout : handouts)
            files.push_back(
                {into / (names.next(handout.title) + ".pdf"), canvas::pdf_bytes(handout.document, faces)});
    }
    write_all(files);
    surroundings.out << fmt::format("{} handouts are in {}.\n", handouts.size(), asked.into);
}

}  // namespace

void add_handouts_verb(CLI::App& program, Surroundings& surroundings) {
    auto asked = std::make_shared<Asked>();
    CLI::App* verb = program.add_subcommand(
        "handouts", "Print what students take home: all of a studio, or those named. Changes no studio.");
    verb->add_option("STUDIO", asked->studio, "The studio file, NAME.lowledger")->required();
    verb->add_option("--into", asked->into,
                     "FILE.pdf for one file with bookmarks, else a folder for a file each")
        ->type_name("PLACE")
        ->required();
    verb->add_option("--student", asked->students, "Only these, by name or what they are called")
        ->type_name("NAME...");
    verb->add_option("--paper", asked->paper, "a4 or letter; the studio's own where left out")
        ->type_name("PAPER");
    verb->add_option("--on", asked->date, "The day it is given out; today where left out")->type_name("DATE");
    verb->callback([asked, &surroundings] { print_handouts(*asked, surroundings); });
}

}  // namespace lowledger::batch
