#include "app/batch/print_request.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <ostream>
#include <set>

#include "app/batch/choose.h"
#include "app/paper/output_files.h"
#include "model/studio/calendar.h"
#include "model/studio/file_words.h"
#include "model/units/refusal.h"
#include "reports/canvas/pdf.h"
#include "reports/canvas/undrawable.h"

namespace lowledger::batch {
namespace {

bool one_file(const std::filesystem::path& into) {
    return into.extension() == ".pdf" || into.extension() == ".PDF";
}

std::vector<studio::Student> present_students(const store::StudioFile& file) {
    auto students = file.students();
    std::erase_if(students, [](const studio::Student& student) { return student.archived; });
    return students;
}

[[noreturn]] void refuse_group(const store::StudioFile& file, const std::string& group) {
    std::set<std::string> names;
    for (const studio::Student& student : present_students(file))
        if (!student.group.empty()) names.insert(student.group);
    for (const studio::Group& each : file.groups())
        if (!each.archived) names.insert(each.name);
    throw units::Refusal(
        fmt::format("--group {}: there is no class or group of that name with students in it. "
                    "There are: {}.",
                    group, fmt::join(names, "; ")));
}

}  // namespace

std::vector<studio::Student> students_asked(const store::StudioFile& file, const PrintRequest& request,
                                            studio::Date day) {
    std::vector<studio::Student> students;
    for (const std::string& name : request.students)
        students.push_back(choose_student(file, name));
    if (!students.empty()) return students;
    students = present_students(file);
    if (request.group.empty()) return students;
    std::set<studio::StudentId> members;
    for (const studio::Group& group : file.groups())
        if (group.name == request.group)
            for (const studio::StudentId id : studio::members_on(group, day))
                members.insert(id);
    std::erase_if(students, [&](const studio::Student& student) {
        return student.group != request.group && !members.contains(student.id);
    });
    if (students.empty()) refuse_group(file, request.group);
    return students;
}

void tell_undrawable(const canvas::Document& document, const canvas::Faces& faces, std::ostream& errors) {
    for (const auto& [text, characters] : canvas::undrawable(document, faces))
        errors << fmt::format(
            "On \"{}\", in \"{}\", no font of this system can draw {}; an empty box stands for it.\n",
            document.title, text, fmt::join(characters, " "));
}

void add_print_options(CLI::App& verb, PrintRequest& request) {
    verb.add_option("STUDIO", request.studio, "The studio file, NAME.lowledger")->required();
    verb.add_option("--into", request.into,
                    "FILE.pdf for one file with bookmarks, else a folder for a file each")
        ->type_name("PLACE")
        ->required();
    verb.add_option("--student", request.students, "Only these, by name or what they are called")
        ->type_name("NAME...");
    verb.add_option("--group", request.group, "Only those of this class or group")->type_name("NAME");
    verb.add_option("--paper", request.paper, "a4 or letter; the studio's own where left out")
        ->type_name("PAPER");
    verb.add_flag("--large-print", request.large_print, "Everything larger, on more pages");
    verb.add_option("--on", request.date, "The day it is given out; today where left out")->type_name("DATE");
}

studio::Date day_of(const PrintRequest& request, studio::Date today) {
    if (request.date.empty()) return today;
    if (const auto date = studio::Date::parse_iso(request.date)) return *date;
    throw units::Refusal(fmt::format("--on {}: that is no date. Write it as 2026-11-25.", request.date));
}

studio::StudioFacts facts_of(const store::StudioFile& file, const PrintRequest& request) {
    studio::StudioFacts facts = file.facts();
    if (request.paper.empty()) return facts;
    const auto paper = studio::parse_paper(request.paper);
    if (!paper) throw units::Refusal(fmt::format("--paper {}: write a4 or letter.", request.paper));
    facts.paper = *paper;
    return facts;
}

std::vector<PlayerAsked> players_of(const store::StudioFile& file, const PrintRequest& request,
                                    studio::Date day, std::ostream& errors) {
    std::vector<PlayerAsked> players;
    for (const studio::Student& student : students_asked(file, request, day)) {
        const auto horns = horns_of(file, student, day);
        if (horns.empty())
            errors << fmt::format("{} plays no horn on {}: no handout.\n", student.name, day.iso());
        for (const studio::Horn& horn : horns) {
            players.push_back({student, horn});
            tell_vanished_kind(file, horn, errors);
        }
    }
    if (players.empty())
        throw units::Refusal(
            fmt::format("There is nothing to print: nobody asked for plays a horn on {}.", day.iso()));
    return players;
}

std::string name_of(const PlayerAsked& player) {
    return fmt::format("{}, {}", player.student.name, player.horn.mark);
}

pages::HandoutInputs inputs_of(const store::StudioFile& file, const studio::StudioFacts& facts,
                               const PlayerAsked& player, studio::Date day, bool large_print) {
    const tuning::TuningInputs question = tuning_inputs(file, player.student, player.horn, day);
    return {.facts = facts,
            .student = player.student,
            .horn = player.horn,
            .kind = question.kind,
            .answer = tuning::answer(question),
            .date = day,
            .paper = pages::paper_of(facts),
            .large_print = large_print};
}

void require_place(const PrintRequest& request) {
    paper::require_place(request.into, one_file(request.into));
}

void write_documents(const PrintRequest& request, const std::vector<pages::NamedDocument>& documents,
                     const std::string& title, const canvas::Faces& faces, std::ostream& errors) {
    const std::filesystem::path into = request.into;
    std::vector<paper::OutputFile> files;
    if (one_file(into)) {
        files.push_back({into, canvas::pdf_bytes(pages::as_one(documents, title), faces)});
    } else {
        for (pages::PdfFile& file : pages::as_files(documents, faces))
            files.push_back({into / file.name, std::move(file.bytes)});
    }
    paper::write_all(files);
    for (const pages::NamedDocument& named : documents)
        tell_undrawable(named.document, faces, errors);
}

}  // namespace lowledger::batch
