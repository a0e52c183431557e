#include "app/desk/whom.h"

#include <algorithm>
#include <set>
#include <string>
#include <utility>

#include "app/desk/desk.h"
#include "model/studio/kind_of.h"
#include "model/studio/questions.h"
#include "model/studio/timetable.h"
#include "model/units/refusal.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

constexpr std::string_view of_page = "page";
constexpr std::string_view everybody = "all";
constexpr std::string_view ticked = "ticked";
constexpr std::string_view of_class = "class ";
constexpr std::string_view of_group = "group ";

template <typename Record>
std::string key(std::string_view kind, const Record& record) {
    return std::string(kind) + std::to_string(record.id.number);
}

std::vector<studio::Student> present_students(const Desk& desk) {
    auto students = desk.file().students();
    std::erase_if(students, [](const studio::Student& student) { return student.archived; });
    return students;
}

bool is_member(const studio::Group& group, const studio::Student& student, studio::Date on) {
    return std::ranges::any_of(group.members, [&](const studio::GroupMember& member) {
        return member.student == student.id && member.from <= on && (!member.until || on < *member.until);
    });
}

std::vector<SlipChoice> groups_offered(const Desk& desk, const std::vector<studio::Student>& students,
                                       Sentence all) {
    std::vector<SlipChoice> choices;
    const auto& words = desk.words();
    if (desk.student())
        choices.push_back(
            {std::string(of_page), words.say(Sentence::print_for_single, {{"name", desk.student()->name}})});
    else if (desk.horn())
        choices.push_back(
            {std::string(of_page), words.say(Sentence::print_for_horn, {{"mark", desk.horn()->mark}})});
    choices.push_back({std::string(everybody), words.say(all)});
    std::set<std::string> classes;
    for (const auto& student : students)
        if (!student.group.empty()) classes.insert(student.group);
    for (const auto& name : classes)
        choices.push_back({std::string(of_class) + name, name});
    for (const auto& group : desk.file().groups())
        if (!group.archived) choices.push_back({key(of_group, group), group.name});
    choices.push_back({std::string(ticked), words.say(Sentence::print_for_ticked)});
    return choices;
}

bool is_asked_for(const Desk& desk, const std::string& whom, const std::vector<std::string>& ticks,
                  const studio::Student& student) {
    if (whom == everybody) return true;
    if (whom == of_page) return !desk.student() || desk.student()->id == student.id;
    if (whom == ticked) return std::ranges::find(ticks, key({}, student)) != ticks.end();
    if (whom.starts_with(of_class)) return student.group == whom.substr(of_class.size());
    const auto groups = desk.file().groups();
    return std::ranges::any_of(groups, [&](const studio::Group& group) {
        return key(of_group, group) == whom && is_member(group, student, desk.today());
    });
}

}  // namespace

void ask_whom(Slip& slip, const Desk& desk, bool shown_first, Sentence all) {
    const auto students = present_students(desk);
    std::vector<SlipChoice> names;
    names.reserve(students.size());
    for (const auto& student : students)
        names.push_back({key({}, student), student.name});
    const auto& words = desk.words();
    slip.choice("for", words.say(Sentence::print_for), groups_offered(desk, students, all),
                shown_first ? of_page : everybody);
    slip.several("students", words.say(Sentence::print_students), std::move(names), {})
        .only_with("for", std::string(ticked));
    slip.must([sentence = words.say(Sentence::print_nobody_ticked)](
                  const SlipAnswers& answers) -> std::optional<SlipProblem> {
        if (answers.chosen("for") == ticked && answers.several("students").empty())
            return SlipProblem{"students", sentence};
        return std::nullopt;
    });
}

std::vector<studio::Student> students_chosen(const Desk& desk, const SlipAnswers& answers) {
    const std::string whom = answers.chosen("for");
    const auto ticks = answers.several("students");
    const auto plays_it = [&](const studio::Student& student) {
        const auto horns = studio::horns_on(desk.file().horn_uses(student.id), student.id, desk.today());
        return std::ranges::find(horns, desk.horn()->id) != horns.end();
    };
    auto students = desk.file().students();
    std::erase_if(students, [&](const studio::Student& student) {
        if (student.archived && whom != of_page) return true;
        if (whom == of_page && !desk.student()) return !plays_it(student);
        return !is_asked_for(desk, whom, ticks, student);
    });
    return students;
}

std::string group_chosen(const Desk& desk, const SlipAnswers& answers) {
    const std::string whom = answers.chosen("for");
    if (whom.starts_with(of_class)) return whom.substr(of_class.size());
    for (const auto& group : desk.file().groups())
        if (key(of_group, group) == whom) return group.name;
    return {};
}

std::vector<pages::Player> players_chosen(const Desk& desk, const SlipAnswers& answers) {
    const std::string whom = answers.chosen("for");
    const auto ticks = answers.several("students");
    std::vector<pages::Player> players;
    const auto all = desk.file().students();
    for (const auto& student : all) {
        // Whose page is open may be of the archive; a group's members are not.
        if ((student.archived && whom != of_page) || !is_asked_for(desk, whom, ticks, student)) continue;
        for (const auto id : studio::horns_on(desk.file().horn_uses(student.id), student.id, desk.today())) {
            const bool other_horn = whom == of_page && desk.horn() && desk.horn()->id != id;
            const auto horn = other_horn ? std::nullopt : desk.file().horn(id);
            if (horn) players.push_back({student, *horn, studio::kind_of(*horn)});
        }
    }
    if (players.empty())
        throw units::Refusal(desk.words().say(Sentence::print_nobody_plays,
                                              {{"date", words::date_text(desk.words(), desk.today())}}));
    return players;
}

}  // namespace lowledger::desk
