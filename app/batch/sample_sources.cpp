#include "app/batch/sample_sources.h"

#include <algorithm>
#include <fmt/format.h>
#include <toml++/toml.h>

#include "app/batch/sample_readers.h"
#include "app/batch/sample_table.h"
#include "model/horns/kind.h"
#include "model/units/refusal.h"

#include "sample_source_files.h"

namespace lowledger::batch {

namespace {

std::map<std::string, units::Millimetres> lengths(const SampleTable& parent, std::string_view key) {
    std::map<std::string, units::Millimetres> out;
    if (const toml::table* table = parent.table(key))
        for (const auto& [slide, node] : *table) {
            const auto mm = node.value<double>();
            if (!mm) parent.refuse(key, "has a position that is no number.");
            out.emplace(slide.str(), units::Millimetres(*mm));
        }
    return out;
}

std::vector<units::Cents> cents(const std::vector<double>& numbers) {
    std::vector<units::Cents> out;
    out.reserve(numbers.size());
    for (const double number : numbers)
        out.emplace_back(number);
    return out;
}

void read_school(const toml::table& root, std::string_view file, SampleSources& sources) {
    const SampleTable top(root, file, {"studio", "calendar"});
    if (top.table("studio") == nullptr) top.refuse("studio", "is missing.");
    if (top.table("calendar") == nullptr) top.refuse("calendar", "is missing.");
    const SampleTable studio(
        *top.table("studio"), file,
        {"name", "teacher", "school", "a4_hertz", "usual_room_celsius", "paper", "accidentals"});
    studio::StudioFacts& facts = sources.facts;
    facts.name = studio.require<std::string>("name");
    facts.teacher = studio.require<std::string>("teacher");
    facts.school = studio.require<std::string>("school");
    facts.a4 = units::Hertz(studio.require<double>("a4_hertz"));
    facts.usual_room = units::Celsius(studio.require<double>("usual_room_celsius"));
    facts.paper = studio.word("paper", {"a4", "letter"}, "a4") == 0 ? studio::StudioFacts::Paper::a4
                                                                    : studio::StudioFacts::Paper::letter;
    facts.accidentals = studio.word("accidentals", {"flats", "sharps"}, "flats") == 0
                            ? units::Accidentals::flats
                            : units::Accidentals::sharps;
    const SampleTable calendar(*top.table("calendar"), file, {"horns_filed_in_week"});
    sources.horns_filed_in_week = calendar.week("horns_filed_in_week");
}

SampleHorn read_horn(const SampleTable& table, std::string_view file) {
    SampleHorn horn;
    horn.mark = table.require<std::string>("mark");
    horn.kind = table.require<std::string>("kind");
    horn.serial_number = table.get<std::string>("serial_number").value_or("");
    horn.remarks = table.get<std::string>("remarks").value_or("");
    horn.owner = table.get<std::string>("owner").value_or("");
    horn.archived = table.get<bool>("archived").value_or(false);
    horn.stuck = table.texts("stuck");
    horn.travel = lengths(table, "travel");
    horn.least = lengths(table, "least");
    horn.start = lengths(table, "start");
    if (const toml::table* told = table.table("is")) {
        const SampleTable is(*told, file, {"overall_cents", "valve_cents"});
        horn.is = SampleHorn::Is{units::Cents(is.require<double>("overall_cents")),
                                 cents(is.numbers("valve_cents"))};
    }
    return horn;
}

void read_horns(const toml::table& root, std::string_view file, SampleSources& sources) {
    const SampleTable top(root, file, {"horn"});
    for (const toml::table* table : top.tables("horn"))
        sources.horns.push_back(
            read_horn(SampleTable(*table, file,
                                  {"mark", "kind", "serial_number", "remarks", "owner", "archived", "stuck",
                                   "travel", "least", "start", "is"}),
                      file));
}

const SampleHorn* horn_marked(const SampleSources& sources, const std::string& mark) {
    const auto found = std::ranges::find(sources.horns, mark, &SampleHorn::mark);
    return found == sources.horns.end() ? nullptr : &*found;
}

void require_known_reader(const SampleSources& sources, const SampleStudent& student) {
    if (student.record.reader.empty()) return;
    for (const SamplePlays& plays : student.plays) {
        const SampleHorn* horn = horn_marked(sources, plays.horn);
        const horns::HornKind* kind =
            horn == nullptr ? nullptr : horns::find_kind(horns::built_in_kinds(), horn->kind);
        if (kind == nullptr) continue;
        if (std::ranges::find(kind->readers, student.record.reader, &horns::Reader::id) ==
            kind->readers.end())
            throw units::Refusal(fmt::format("students.toml: the reader of {} is {}, which {} has not.",
                                             student.record.name, student.record.reader, kind->id));
    }
}

void require_known_in_book(const SampleSources& sources) {
    const auto student = [&](std::string_view file, const std::string& name) {
        if (std::ranges::none_of(sources.students,
                                 [&](const SampleStudent& one) { return one.record.name == name; }))
            throw units::Refusal(fmt::format("{}: there is no student {} in students.toml.", file, name));
    };
    const auto mouthpiece = [&](const std::string& mark) {
        return std::ranges::any_of(sources.book.mouthpieces,
                                   [&](const SampleMouthpiece& one) { return one.record.mark == mark; });
    };
    const auto horn = [&](const std::string& mark) {
        if (horn_marked(sources, mark) == nullptr)
            throw units::Refusal(fmt::format("lending.toml: there is no {} in horns.toml.", mark));
    };
    for (const SampleGroup& group : sources.book.groups)
        for (const SampleMember& member : group.members)
            student("timetable.toml", member.name);
    for (const SampleMouthpiece& one : sources.book.mouthpieces) {
        if (!one.horn.empty()) horn(one.horn);
        if (!one.owner.empty()) student("lending.toml", one.owner);
    }
    for (const SampleLoan& loan : sources.book.loans) {
        horn(loan.horn);
        student("lending.toml", loan.student);
        if (!loan.mouthpiece.empty() && !mouthpiece(loan.mouthpiece))
            throw units::Refusal(fmt::format("lending.toml: there is no mouthpiece {}.", loan.mouthpiece));
    }
    for (const SampleUpkeep& upkeep : sources.book.upkeep)
        if (!mouthpiece(upkeep.mark)) horn(upkeep.mark);
}

void require_known_names(const SampleSources& sources) {
    const auto known_horn = [&](const std::string& mark) { return horn_marked(sources, mark) != nullptr; };
    for (const SampleStudent& student : sources.students) {
        require_known_reader(sources, student);
        for (const SamplePlays& plays : student.plays)
            if (!known_horn(plays.horn))
                throw units::Refusal(
                    fmt::format("students.toml: {} plays {}, and horns.toml has no such horn.",
                                student.record.name, plays.horn));
        for (const SampleSheet& sheet : student.sheets)
            if (!known_horn(sheet.on))
                throw units::Refusal(
                    fmt::format("students.toml: a sheet of {} is on {}, and horns.toml has no "
                                "such horn.",
                                student.record.name, sheet.on));
    }
    for (const SampleHorn& horn : sources.horns)
        if (!horn.owner.empty() &&
            std::none_of(sources.students.begin(), sources.students.end(),
                         [&](const SampleStudent& student) { return student.record.name == horn.owner; }))
            throw units::Refusal(
                fmt::format("horns.toml: {} belongs to {}, and students.toml has no such student.", horn.mark,
                            horn.owner));
}

toml::table parsed(const std::vector<SampleText>& files, std::string_view name) {
    const auto found =
        std::find_if(files.begin(), files.end(), [&](const SampleText& file) { return file.name == name; });
    if (found == files.end()) throw units::Refusal(fmt::format("The sample has no {}.", name));
    try {
        return toml::parse(found->text, name);
    } catch (const toml::parse_error& error) {
        throw units::Refusal(
            fmt::format("{}, line {}: {}", name, error.source().begin.line, error.description()));
    }
}

}  // namespace

SampleSources read_sample_sources(const std::vector<SampleText>& files) {
    SampleSources sources;
    read_school(parsed(files, "school.toml"), "school.toml", sources);
    read_horns(parsed(files, "horns.toml"), "horns.toml", sources);
    sources.students = read_sample_students(parsed(files, "students.toml"), "students.toml");
    sources.book = read_sample_book(parsed(files, "timetable.toml"), parsed(files, "lending.toml"),
                                    parsed(files, "notes.toml"));
    require_known_names(sources);
    require_known_in_book(sources);
    return sources;
}

SampleSources built_in_sample_sources() {
    std::vector<SampleText> files;
    for (const EmbeddedFile& file : sample_source_files())
        files.push_back({file.name, file.text});
    return read_sample_sources(files);
}

}  // namespace lowledger::batch
