#include "app/batch/choose.h"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <ostream>

#include "model/exchange/kind_files.h"
#include "model/studio/kind_of.h"
#include "model/studio/questions.h"
#include "model/tuning/inputs.h"
#include "model/units/refusal.h"

namespace lowledger::batch {

namespace {

std::string lower(std::string_view text) {
    std::string out(text);
    for (char& c : out)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return out;
}

template <typename Test>
std::vector<studio::Student> those(const std::vector<studio::Student>& students, Test test) {
    std::vector<studio::Student> out;
    std::copy_if(students.begin(), students.end(), std::back_inserter(out), test);
    return out;
}

std::string names(const std::vector<studio::Student>& students) {
    std::vector<std::string> out;
    out.reserve(students.size());
    for (const studio::Student& student : students)
        out.push_back(student.name);
    return fmt::format("{}", fmt::join(out, "; "));
}

std::string marks(const std::vector<studio::Horn>& horns) {
    std::vector<std::string> out;
    out.reserve(horns.size());
    for (const studio::Horn& horn : horns)
        out.push_back(horn.mark);
    return fmt::format("{}", fmt::join(out, ", "));
}

}  // namespace

studio::Student choose_student(const store::StudioFile& file, std::string_view name) {
    const auto students = file.students();
    const std::string wanted = lower(name);
    auto found = those(students, [&](const studio::Student& s) { return lower(s.name) == wanted; });
    if (found.empty())
        found = those(students, [&](const studio::Student& s) { return lower(studio::called(s)) == wanted; });
    if (found.empty() && !wanted.empty())
        found = those(students, [&](const studio::Student& s) {
            return lower(s.name).find(wanted) != std::string::npos;
        });
    if (found.size() == 1) return found.front();
    if (found.empty())
        throw units::Refusal(fmt::format("There is no student \"{}\" in {}. There are: {}.", name,
                                         file.path().string(), names(students)));
    throw units::Refusal(fmt::format("\"{}\" may be any of: {}. Give the whole name.", name, names(found)));
}

std::vector<studio::Horn> horns_of(const store::StudioFile& file, const studio::Student& student,
                                   studio::Date on) {
    std::vector<studio::Horn> horns;
    for (const studio::HornId id : studio::horns_on(file.horn_uses(student.id), student.id, on))
        if (auto horn = file.horn(id)) horns.push_back(std::move(*horn));
    return horns;
}

studio::Horn horn_marked(const store::StudioFile& file, std::string_view mark) {
    const auto all = file.horns();
    for (const studio::Horn& horn : all)
        if (lower(horn.mark) == lower(mark)) return horn;
    throw units::Refusal(fmt::format("There is no horn marked \"{}\" in {}. There are: {}.", mark,
                                     file.path().string(), marks(all)));
}

studio::Horn choose_horn(const store::StudioFile& file, const studio::Student& student, std::string_view mark,
                         studio::Date on) {
    if (!mark.empty()) return horn_marked(file, mark);
    const auto horns = horns_of(file, student, on);
    if (horns.size() == 1) return horns.front();
    if (horns.empty())
        throw units::Refusal(
            fmt::format("{} plays no horn on {}. Name one with --horn MARK.", student.name, on.iso()));
    throw units::Refusal(fmt::format("{} plays {}. Name one with --horn MARK.", student.name, marks(horns)));
}

void tell_vanished_kind(const store::StudioFile& file, const studio::Horn& horn, std::ostream& errors) {
    const auto read = exchange::readable_kinds(file.path());
    if (horns::find_kind(read.kinds, horn.kind_id) != nullptr) return;
    for (const std::string& problem : read.problems)
        errors << problem << "\n";
    errors << fmt::format(
        "The kind \"{}\" of horn {} is neither among those that come with the program nor in the folder "
        "kinds beside the studio; the copy in the studio is used.\n",
        horn.kind_id, horn.mark);
}

tuning::TuningInputs tuning_inputs(const store::StudioFile& file, const studio::Student& student,
                                   const studio::Horn& horn, studio::Date today) {
    return tuning::inputs_of_studio(
        file.facts(), student, horn, studio::kind_of(horn), file.students(), file.horns(),
        [&](studio::HornId id) { return file.slide_history(id); }, file.sheets(student.id),
        file.sheets(horn.id), today);
}

}  // namespace lowledger::batch
