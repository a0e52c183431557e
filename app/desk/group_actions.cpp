#include <algorithm>

#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/lending.h"
#include "app/desk/lessons.h"
#include "app/desk/slip.h"
#include "app/desk/term_lists.h"
#include "model/studio/calendar.h"

namespace lowledger::desk {
namespace {

using studio::Group;
using studio::StudentId;
using words::Sentence;

bool shows_groups(const Desk& desk) {
    return at_terms(desk, Section::groups);
}

bool has_group(const Desk& desk) {
    return desk.may_write() && chosen_group(desk).has_value();
}

bool is_member(const std::vector<StudentId>& members, StudentId student) {
    return std::ranges::find(members, student) != members.end();
}

/// Those chosen belong to the group from that day; those no longer chosen left it then.
void set_members(Group& group, const std::vector<StudentId>& chosen, studio::Date from) {
    for (auto& member : group.members) {
        const bool belongs = !member.until || from < *member.until;
        if (belongs && !is_member(chosen, member.student)) member.until = from;
    }
    std::erase_if(group.members, [](const studio::GroupMember& member) {
        return member.until && *member.until <= member.from;
    });
    const auto now = studio::members_on(group, from);
    for (const auto id : chosen) {
        if (is_member(now, id)) continue;
        // Who was to come later comes then.
        std::erase_if(group.members, [&](const studio::GroupMember& member) {
            return member.student == id && from < member.from;
        });
        group.members.push_back({.student = id, .from = from});
    }
}

std::optional<Group> ask_group(Desk& desk, Sentence title, Group group) {
    const auto& words = desk.words();
    const auto now = studio::members_on(group, desk.today());
    std::vector<SlipChoice> students;
    for (const auto& student : desk.file().students())
        if (!student.archived || is_member(now, student.id))
            students.push_back({key_of(student.id), student.name});
    std::vector<std::string> members;
    members.reserve(now.size());
    for (const auto id : now)
        members.push_back(key_of(id));
    Slip slip(words.say(title), words.say(Sentence::verb_keep));
    slip.text("name", words.say(Sentence::slip_name), group.name)
        .several("members", words.say(Sentence::slip_members), students, members)
        .date("from", words.say(Sentence::slip_members_from), desk.today())
        .text("remarks", words.say(Sentence::field_remarks), group.remarks)
        .needs("name", words.say(Sentence::must_have_name));
    const auto answers = desk.front().ask(slip);
    if (!answers) return std::nullopt;
    group.name = answers->text("name");
    group.remarks = answers->text("remarks");
    std::vector<StudentId> chosen;
    for (const auto& key : answers->several("members"))
        chosen.push_back(*id_of<StudentId>(key));
    // Only a change of members takes effect on that day.
    if (chosen != now) set_members(group, chosen, answers->date("from"));
    return group;
}

void add_group(Desk& desk) {
    const auto group = ask_group(desk, Sentence::title_add_group, {});
    if (!group) return;
    studio::GroupId added;
    desk.file().edit(desk.words().say(Sentence::edit_add_group, {{"name", group->name}}),
                     [&](store::Edit& edit) { added = edit.add(*group); });
    View view = desk.view();
    if (view.place == Place::terms && desk.term()) view.section = Section::groups;
    desk.go(view);
    desk.choose(Table::groups, added.number);
}

void change_group(Desk& desk) {
    const auto group = ask_group(desk, Sentence::title_change_group, *chosen_group(desk));
    if (!group) return;
    desk.file().edit(desk.words().say(Sentence::edit_change_group, {{"name", group->name}}),
                     [&](store::Edit& edit) { edit.update(*group); });
}

void archive_group(Desk& desk) {
    Group group = *chosen_group(desk);
    group.archived = !group.archived;
    const auto name = group.archived ? Sentence::edit_archive_group : Sentence::edit_take_back_group;
    desk.file().edit(desk.words().say(name, {{"name", group.name}}),
                     [&](store::Edit& edit) { edit.update(group); });
}

void remove_group(Desk& desk) {
    const Group group = *chosen_group(desk);
    const auto& words = desk.words();
    if (!desk.front().confirm(words.say(Sentence::ask_remove_group, {{"name", group.name}}),
                              words.say(Sentence::verb_remove)))
        return;
    desk.file().edit(words.say(Sentence::edit_remove_group, {{"name", group.name}}),
                     [&](store::Edit& edit) { edit.remove(group.id); });
}

Action group_action(std::string_view id, std::string_view text, bool (*may_run)(const Desk&),
                    void (*run)(Desk&), bool starts_group = false) {
    return {.id = id,
            .menu = Menu::term,
            .text = text,
            .edits = true,
            .starts_group = starts_group,
            .may_run = may_run,
            .run = run,
            .shown = shows_groups};
}

}  // namespace

std::vector<Action> group_actions() {
    std::vector<Action> all{
        group_action(
            "group.add", "Add &group…", [](const Desk& desk) { return desk.may_write(); }, add_group, true),
        group_action("group.change", "Change grou&p and members…", has_group, change_group),
        group_action("group.archive", "Archive gro&up", has_group, archive_group),
        group_action("group.remove", "Re&move group…", has_group, remove_group),
    };
    all[0].shown = nullptr;
    all[2].full_text = [](const Desk& desk) {
        const auto group = desk.has_studio() ? chosen_group(desk) : std::nullopt;
        return std::string(group && group->archived ? "Take gro&up back" : "Archive gro&up");
    };
    return all;
}

}  // namespace lowledger::desk
