#include "app/desk/routine_lists.h"

#include <algorithm>
#include <map>
#include <set>

#include "app/desk/desk.h"
#include "app/desk/lists.h"
#include "model/routines/library.h"
#include "model/studio/assigned.h"
#include "model/studio/calendar.h"
#include "model/studio/kind_of.h"
#include "model/studio/questions.h"
#include "reports/pages/handout.h"
#include "reports/words/names.h"
#include "reports/words/routine_words.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

constexpr int days_looked_back = 28;

std::map<studio::RoutineId, studio::Routine> routines_by_id(const store::StudioFile& file) {
    std::map<studio::RoutineId, studio::Routine> all;
    for (auto& routine : file.routines())
        all.emplace(routine.id, std::move(routine));
    return all;
}

ListingCell until_cell(const Desk& desk, const studio::Assignment& given) {
    const auto& words = desk.words();
    if (!given.until) return {words.say(Sentence::no_end), 1e9};
    const std::string date = words::date_text(words, *given.until);
    if (*given.until > desk.today()) return {date, *given.until};
    return {words.say(Sentence::given_ended, {{"date", date}}), *given.until};
}

}  // namespace

std::string levels_text(const words::Words& words, const std::vector<studio::Level>& levels) {
    if (levels.empty()) return words.say(Sentence::levels_all);
    std::string text;
    for (const auto level : levels)
        text += (text.empty() ? "" : ", ") + words::level_name(words, level);
    return text;
}

std::vector<studio::Student> who_has(const store::StudioFile& file, studio::RoutineId id, studio::Date on) {
    std::set<studio::StudentId> ids;
    for (const auto& given : file.assignments(id, on)) {
        if (given.student) ids.insert(*given.student);
        if (!given.group) continue;
        if (const auto group = file.group(*given.group))
            for (const auto member : studio::members_on(*group, on))
                ids.insert(member);
    }
    std::vector<studio::Student> students;
    students.reserve(ids.size());
    for (const auto student : ids)
        students.push_back(*file.student(student));
    std::ranges::sort(students, {}, &studio::Student::name);
    return students;
}

Listing routines_listing(const Desk& desk, std::string_view find) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {{words.say(Sentence::column_routine), false, true},
                       {words.say(Sentence::column_level)},
                       {words.say(Sentence::column_have_it), true, true}};
    for (const auto& routine : desk.file().routines()) {
        std::string text = routine.title + " " + routine.aim;
        for (const auto& horn : routine.horns)
            text += " " + horn;
        if (!found_in(text, find)) continue;
        const auto have = who_has(desk.file(), routine.id, desk.today()).size();
        listing.rows.push_back(
            {routine.id.number,
             {routine.title,
              levels_text(words, routine.levels),
              {have == 0 ? std::string() : std::to_string(have), static_cast<double>(have)}},
             routine.archived});
    }
    return listing;
}

Listing who_has_listing(const Desk& desk, studio::RoutineId id) {
    Listing listing;
    listing.columns = {{desk.words().say(Sentence::column_student)}};
    for (const auto& student : who_has(desk.file(), id, desk.today()))
        listing.rows.push_back({student.id.number, {student.name}, false});
    return listing;
}

std::vector<studio::Assignment> given_to_student(const Desk& desk) {
    const auto& student = desk.student();
    if (!student) return {};
    const auto all = desk.file().assignments(student->id);
    const auto groups = desk.file().groups();
    const auto today = desk.today();
    const auto is_members = [&](const studio::Assignment& given) {
        return !studio::assigned_on(std::vector{given}, groups, student->id, std::max(today, given.from))
                    .empty();
    };
    std::vector<studio::Assignment> shown;
    std::ranges::copy_if(all, std::back_inserter(shown), [&](const auto& given) {
        return (!given.until || *given.until > today) && is_members(given);
    });
    std::ranges::copy_if(all, std::back_inserter(shown), [&](const auto& given) {
        return given.until && *given.until <= today && *given.until > today - days_looked_back &&
               given.end == studio::Assignment::End::at_its_time;
    });
    return shown;
}

std::optional<studio::Assignment> given_selected(const Desk& desk) {
    const auto all = given_to_student(desk);
    const auto found = std::ranges::find_if(
        all, [&](const auto& given) { return desk.chosen(Table::given) == given.id.number; });
    if (found != all.end()) return *found;
    if (all.empty()) return std::nullopt;
    return all.front();
}

Listing given_listing(const Desk& desk) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {{words.say(Sentence::column_routine), false, true},
                       {words.say(Sentence::column_how_much)},
                       {words.say(Sentence::column_days), false, true},
                       {words.say(Sentence::column_until), false, true},
                       {words.say(Sentence::column_practised), true, true}};
    if (!desk.student()) return listing;
    const auto routines = routines_by_id(desk.file());
    const auto first = desk.today() - days_looked_back;
    const auto entries = desk.file().practice(desk.student()->id, first, desk.today());
    for (const auto& given : given_to_student(desk)) {
        const auto& routine = routines.at(given.routine);
        std::string title = routine.title;
        if (given.group)
            if (const auto group = desk.file().group(*given.group))
                title = words.say(Sentence::given_to_group, {{"routine", title}, {"group", group->name}});
        const auto count = studio::practised(given, entries, desk.student()->id, first, desk.today());
        listing.rows.push_back({given.id.number,
                                {title,
                                 given.amount.empty() ? routine.dose : given.amount,
                                 words::weekdays_text(words, given.days),
                                 until_cell(desk, given),
                                 {words.say(Sentence::practised_of, {{"done", std::to_string(count.done)},
                                                                     {"due", std::to_string(count.due)}}),
                                  static_cast<double>(count.done)}},
                                given.until && *given.until <= desk.today()});
    }
    return listing;
}

pages::RoutineSheetInputs routine_sheet_of(const store::StudioFile& file, const studio::Student& student,
                                           studio::Date day, const pages::PageStyle& style) {
    pages::RoutineSheetInputs inputs{file.facts(), student, {}, day - (day.weekday() - 1), {}, style};
    const auto horns = studio::horns_on(file.horn_uses(student.id), student.id, day);
    if (!horns.empty())
        if (const auto horn = file.horn(horns.back())) inputs.kind = studio::kind_of(*horn);
    inputs.routines = pages::routines_of_week(file.assignments(student.id), file.groups(), file.routines(),
                                              student.id, inputs.first);
    return inputs;
}

std::vector<studio::Routine> missing_routines(const store::StudioFile& file) {
    std::set<std::string> there;
    for (const auto& routine : file.routines())
        there.insert(routine.key);
    std::vector<studio::Routine> missing;
    std::ranges::copy_if(routines::library(), std::back_inserter(missing),
                         [&](const auto& routine) { return !there.contains(routine.key); });
    return missing;
}

int add_missing_routines(store::StudioFile& file, const words::Words& words) {
    const auto missing = missing_routines(file);
    file.edit(words.say(Sentence::edit_library), [&](store::Edit& edit) {
        for (const auto& routine : missing)
            edit.add(routine);
    });
    return static_cast<int>(missing.size());
}

}  // namespace lowledger::desk
