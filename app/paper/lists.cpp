#include "app/paper/lists.h"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "app/paper/who_has.h"
#include "model/studio/due.h"
#include "model/studio/kind_of.h"
#include "model/studio/questions.h"
#include "reports/words/names.h"

namespace lowledger::paper {
namespace {

std::string names_of(const Holders& holders) {
    std::string names;
    for (const auto& holder : holders)
        names += (names.empty() ? "" : ", ") + holder.name;
    return names;
}

std::vector<std::string> stuck_slides(const studio::Horn& horn, const horns::HornKind& kind) {
    std::vector<std::string> names;
    for (const auto& slide : horn.slides) {
        if (!slide.stuck) continue;
        const auto known = std::ranges::find_if(
            kind.slides, [&](const horns::SlideKind& each) { return each.id == slide.slide; });
        names.push_back(known == kind.slides.end() ? slide.slide : known->name);
    }
    return names;
}

}  // namespace

pages::ClassList class_list(const Gathering& from, const std::vector<studio::Student>& students,
                            const std::string& group) {
    pages::ClassList list{
        .facts = from.facts, .date = from.day, .group = group, .members = {}, .style = from.style};
    for (const auto& student : students) {
        auto& member = list.members.emplace_back(pages::ClassList::Member{student, {}});
        for (const auto id : studio::horns_on(from.file.horn_uses(student.id), student.id, from.day))
            if (auto horn = from.file.horn(id)) member.horns.push_back(std::move(*horn));
    }
    return list;
}

pages::DayList day_list(const Gathering& from) {
    pages::DayList list{.facts = from.facts,
                        .day = from.day,
                        .lessons = from.file.day(from.day),
                        .marks = {},
                        .style = from.style};
    for (const auto& horn : from.file.horns())
        list.marks[horn.id] = horn.mark;
    return list;
}

pages::Inventory inventory(const Gathering& from) {
    pages::Inventory list{
        .facts = from.facts, .date = from.day, .horns = {}, .mouthpieces = {}, .style = from.style};
    const WhoHas who(from);
    std::map<studio::HornId, std::string> marks;
    for (auto& horn : from.file.horns()) {
        marks[horn.id] = horn.mark;
        if (horn.archived) continue;
        std::string kind = words::kind_name(studio::kind_of(horn));
        const auto id = horn.id;
        const auto owner = horn.owner;
        list.horns.push_back({std::move(horn), std::move(kind), who.name(owner), who.of(id)});
    }
    for (auto& mouthpiece : from.file.mouthpieces()) {
        if (mouthpiece.archived) continue;
        const auto id = mouthpiece.id;
        const auto owner = mouthpiece.owner;
        std::string horn = mouthpiece.horn ? marks[*mouthpiece.horn] : std::string();
        list.mouthpieces.push_back({std::move(mouthpiece), std::move(horn), who.name(owner), who.of(id)});
    }
    return list;
}

pages::RepairList repair_list(const Gathering& from) {
    pages::RepairList list{.facts = from.facts, .date = from.day, .items = {}, .style = from.style};
    const WhoHas who(from);
    for (const auto& horn : from.file.horns()) {
        if (horn.archived) continue;
        auto works = studio::due(from.file.upkeep(horn.id), from.day);
        const auto kind = studio::kind_of(horn);
        auto stuck = stuck_slides(horn, kind);
        if (works.empty() && stuck.empty()) continue;
        list.items.push_back({horn.mark, words::kind_name(kind), horn.serial_number, horn.locker,
                              names_of(who.of(horn.id)), std::move(works), std::move(stuck)});
    }
    for (const auto& mouthpiece : from.file.mouthpieces()) {
        if (mouthpiece.archived) continue;
        auto works = studio::due(from.file.upkeep(mouthpiece.id), from.day);
        if (!works.empty())
            list.items.push_back(
                {mouthpiece.mark, {}, {}, mouthpiece.kept_in, who.of(mouthpiece.id), std::move(works), {}});
    }
    return list;
}

}  // namespace lowledger::paper
