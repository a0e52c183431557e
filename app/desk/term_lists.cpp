#include "app/desk/term_lists.h"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <map>
#include <set>

#include "app/desk/day.h"
#include "app/desk/lessons.h"
#include "app/desk/lists.h"
#include "app/desk/places.h"
#include "model/studio/calendar.h"
#include "reports/words/names.h"
#include "reports/words/routine_words.h"

namespace lowledger::desk {
namespace {

using studio::Lesson;
using words::Sentence;

/// Names of students and groups, read once for a list.
struct Names {
    explicit Names(const Desk& desk) {
        for (const auto& student : desk.file().students())
            students[student.id] = student.name;
        for (const auto& group : desk.file().groups())
            groups[group.id] = group.name;
    }
    template <typename Record>
    [[nodiscard]] std::string of(const Record& record) const {
        if (record.student) return students.at(*record.student);
        return record.group ? groups.at(*record.group) : std::string();
    }
    std::map<studio::StudentId, std::string> students;
    std::map<studio::GroupId, std::string> groups;
};

ListingCell day_cell(const words::Words& words, studio::Date day) {
    return {words::date_text(words, day), day};
}

ListingCell time_cell(studio::TimeOfDay time) {
    return {time.text(), static_cast<double>(time.minutes())};
}

std::string count_text(std::size_t count) {
    return std::to_string(count);
}

/// From when until when a slot stands, where that is not the whole term.
std::string span_of(const words::Words& words, const studio::TimetableSlot& slot, const studio::Term& term) {
    if (!slot.from && !slot.until) return {};
    const auto last = slot.until ? *slot.until - 1 : term.last;
    return words.say(Sentence::term_days, {{"first", words::date_text(words, slot.from.value_or(term.first))},
                                           {"last", words::date_text(words, last)}});
}

/// What is told of each slot: when it stands, and what it clashes with.
std::vector<std::vector<std::string>> remarks_of(const Desk& desk, const Names& names,
                                                 const std::vector<studio::TimetableSlot>& slots) {
    const auto& words = desk.words();
    std::vector<std::vector<std::string>> remarks(slots.size());
    for (std::size_t i = 0; i < slots.size(); ++i)
        if (auto span = span_of(words, slots[i], *desk.term()); !span.empty())
            remarks[i].push_back(std::move(span));
    const auto tell = [&](std::size_t at, std::size_t other) {
        remarks[at].push_back(words.say(
            Sentence::slot_clashes, {{"who", names.of(slots[other])}, {"time", slots[other].starts.text()}}));
    };
    for (const auto& pair : studio::clashes(std::span(slots), *desk.term())) {
        tell(pair.first, pair.second);
        tell(pair.second, pair.first);
    }
    return remarks;
}

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
    return fmt::format("{}", fmt::join(parts, between));
}

/// How it went or will go, what it stands for, what it clashes with.
struct LessonStates {
    LessonStates(const Desk& desk, const std::vector<Lesson>& lessons) : words(desk.words()) {
        for (const auto& one : studio::make_ups_owed(desk.file().lessons_to_make_up()))
            owed[one.missed] = one.arranged.has_value();
        for (const auto& pair : studio::clashes(std::span(lessons))) {
            clashing.insert(lessons[pair.first].id);
            clashing.insert(lessons[pair.second].id);
        }
    }
    [[nodiscard]] std::string of(const Lesson& lesson) const {
        std::vector<std::string> parts{state_text(words, lesson.state)};
        if (const auto found = owed.find(lesson.id); found != owed.end())
            parts.push_back(
                words.say(found->second ? Sentence::lesson_make_up_arranged : Sentence::lesson_is_owed));
        if (lesson.instead_of) parts.push_back(words.say(Sentence::lesson_stands_for_another));
        if (clashing.contains(lesson.id)) parts.push_back(words.say(Sentence::lesson_clashes));
        return joined(parts, " · ");
    }
    const words::Words& words;
    /// Whether a make-up lesson was arranged for it.
    std::map<studio::LessonId, bool> owed;
    std::set<studio::LessonId> clashing;
};

}  // namespace

bool at_terms(const Desk& desk, Section section) {
    return desk.view().place == Place::terms && desk.term() && section_of(desk.view()) == section;
}

Listing terms_listing(const Desk& desk, std::string_view find) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {{words.say(Sentence::column_term), false, true}, {words.say(Sentence::column_days)}};
    for (const auto& term : desk.file().terms()) {
        if (!found_in(term.name, find)) continue;
        listing.rows.push_back(
            {term.id.number,
             {term.name,
              ListingCell(words.say(Sentence::term_days, {{"first", words::date_text(words, term.first)},
                                                          {"last", words::date_text(words, term.last)}}),
                          term.first)},
             term.last < desk.today()});
    }
    std::ranges::reverse(listing.rows);
    return listing;
}

std::optional<studio::TermId> term_to_open(const Desk& desk) {
    const auto& open = desk.view().term;
    if (open && desk.file().term(*open)) return open;
    const auto terms = desk.file().terms();
    if (const auto now = studio::term_on(terms, desk.today())) return now->id;
    return terms.empty() ? std::nullopt : std::optional(terms.back().id);
}

Listing timetable_listing(const Desk& desk) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {{words.say(Sentence::column_weekday), false, true},
                       {words.say(Sentence::column_time), false, true},
                       {words.say(Sentence::column_minutes), true, true},
                       {words.say(Sentence::column_who)},
                       {words.say(Sentence::column_room), false, true},
                       {words.say(Sentence::column_every), false, true},
                       {words.say(Sentence::column_remark)}};
    if (!desk.term()) return listing;
    const Names names(desk);
    const auto slots = desk.file().timetable(desk.term()->id);
    const auto remarks = remarks_of(desk, names, slots);
    for (std::size_t i = 0; i < slots.size(); ++i) {
        const auto& slot = slots[i];
        listing.rows.push_back(
            {slot.id.number,
             {ListingCell(words::weekday_name(words, slot.weekday), static_cast<double>(slot.weekday)),
              time_cell(slot.starts),
              ListingCell(std::to_string(slot.length.count()), static_cast<double>(slot.length.count())),
              names.of(slot), slot.room,
              words.say(slot.every_weeks == 1 ? Sentence::every_week : Sentence::every_other_week),
              joined(remarks[i], "; ")},
             false});
    }
    return listing;
}

std::string timetable_summary(const Desk& desk) {
    if (!desk.term()) return {};
    const auto slots = desk.file().timetable(desk.term()->id);
    if (slots.empty()) return {};
    const auto clashes = studio::clashes(std::span(slots), *desk.term()).size();
    if (clashes == 0) return desk.words().say(Sentence::timetable_no_clash);
    return desk.words().say_counted(Sentence::timetable_clash_one, Sentence::timetable_clash_many,
                                    static_cast<int>(clashes));
}

Listing term_lessons_listing(const Desk& desk) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {
        {words.say(Sentence::column_date), false, true},   {words.say(Sentence::column_time), false, true},
        {words.say(Sentence::column_who), false, true},    {words.say(Sentence::column_room), false, true},
        {words.say(Sentence::column_lesson), false, true}, {words.say(Sentence::column_done)}};
    if (!desk.term()) return listing;
    const Names names(desk);
    const auto lessons = lessons_of(desk, *desk.term());
    const LessonStates states(desk, lessons);
    for (const auto& lesson : lessons)
        listing.rows.push_back({lesson.id.number,
                                {day_cell(words, lesson.on), time_cell(lesson.starts), names.of(lesson),
                                 lesson.room, states.of(lesson), lesson.done},
                                !studio::takes_place(lesson)});
    return listing;
}

std::string term_lessons_summary(const Desk& desk) {
    if (!desk.term()) return {};
    const auto& words = desk.words();
    const auto& term = *desk.term();
    const auto lessons = lessons_of(desk, term);
    const auto owed = studio::make_ups_owed(desk.file().lessons_to_make_up());
    const auto is_owed = [&](const Lesson& lesson) {
        return std::ranges::find(owed, lesson.id, &studio::OwedLesson::missed) != owed.end();
    };
    const auto kept = std::ranges::count(lessons, Lesson::State::kept, &Lesson::state);
    std::vector<std::string> parts;
    if (!lessons.empty())
        parts.push_back(words.say(Sentence::lessons_kept_and_owed,
                                  {{"kept", std::to_string(kept)},
                                   {"count", count_text(lessons.size())},
                                   {"owed", std::to_string(std::ranges::count_if(lessons, is_owed))}}));
    if (const auto clashes = studio::clashes(std::span(lessons)).size(); clashes > 0)
        parts.push_back(words.say_counted(Sentence::timetable_clash_one, Sentence::timetable_clash_many,
                                          static_cast<int>(clashes)));
    if (const auto plan = lessons_to_make(desk, term); !plan.nothing())
        parts.push_back(words.say(Sentence::lessons_to_make, {{"made", count_text(plan.made.size())},
                                                              {"gone", count_text(plan.gone.size())}}));
    return joined(parts, " ");
}

Listing holidays_listing(const Desk& desk) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {{words.say(Sentence::column_first_day), false, true},
                       {words.say(Sentence::column_last_day), false, true},
                       {words.say(Sentence::column_days_off), true, true},
                       {words.say(Sentence::column_name)}};
    if (!desk.term()) return listing;
    std::int64_t number = 0;
    for (const auto& holiday : desk.term()->holidays) {
        const int days = holiday.last - holiday.first + 1;
        listing.rows.push_back({++number,
                                {day_cell(words, holiday.first), day_cell(words, holiday.last),
                                 ListingCell(std::to_string(days), days), holiday.name},
                                holiday.last < desk.today()});
    }
    return listing;
}

Listing groups_listing(const Desk& desk) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {{words.say(Sentence::column_name), false, true},
                       {words.say(Sentence::column_members)},
                       {words.say(Sentence::column_remark), false, true}};
    const Names names(desk);
    for (const auto& group : desk.file().groups()) {
        std::vector<std::string> members;
        for (const auto id : studio::members_on(group, desk.today()))
            members.push_back(names.students.at(id));
        std::vector<std::string> remarks;
        if (group.archived) remarks.push_back(words.say(Sentence::list_archived));
        if (!group.remarks.empty()) remarks.push_back(group.remarks);
        listing.rows.push_back(
            {group.id.number, {group.name, joined(members, ", "), joined(remarks, " · ")}, group.archived});
    }
    return listing;
}

std::optional<studio::TimetableSlot> chosen_slot(const Desk& desk) {
    if (!at_terms(desk, Section::timetable)) return std::nullopt;
    const auto slots = desk.file().timetable(desk.term()->id);
    const auto chosen = desk.chosen(Table::timetable);
    const auto found =
        std::ranges::find_if(slots, [&](const auto& slot) { return slot.id.number == chosen; });
    if (found != slots.end()) return *found;
    return slots.empty() ? std::nullopt : std::optional(slots.front());
}

std::optional<studio::Group> chosen_group(const Desk& desk) {
    if (!at_terms(desk, Section::groups)) return std::nullopt;
    const auto groups = desk.file().groups();
    const auto chosen = desk.chosen(Table::groups);
    const auto found =
        std::ranges::find_if(groups, [&](const auto& group) { return group.id.number == chosen; });
    if (found != groups.end()) return *found;
    return groups.empty() ? std::nullopt : std::optional(groups.front());
}

std::optional<std::size_t> chosen_holiday(const Desk& desk) {
    if (!at_terms(desk, Section::holidays) || desk.term()->holidays.empty()) return std::nullopt;
    const auto chosen = static_cast<std::size_t>(desk.chosen(Table::holidays).value_or(1));
    return chosen <= desk.term()->holidays.size() ? chosen - 1 : 0;
}

std::optional<Lesson> chosen_lesson(const Desk& desk) {
    if (!at_terms(desk, Section::lessons)) return std::nullopt;
    const auto& term = *desk.term();
    if (const auto chosen = desk.chosen(Table::lessons)) {
        auto lesson = desk.file().lesson(studio::LessonId{*chosen});
        if (lesson && term.first <= lesson->on && lesson->on <= term.last) return lesson;
    }
    const auto lessons = lessons_of(desk, term);
    const auto ahead =
        std::ranges::find_if(lessons, [&](const Lesson& lesson) { return lesson.on >= desk.today(); });
    if (ahead != lessons.end()) return *ahead;
    return lessons.empty() ? std::nullopt : std::optional(lessons.back());
}

LessonsToMake lessons_to_make(const Desk& desk, const studio::Term& term) {
    const auto slots = desk.file().timetable(term.id);
    auto left = lessons_of(desk, term);
    const bool first_time =
        std::ranges::none_of(left, [](const Lesson& lesson) { return lesson.slot.has_value(); });
    std::map<studio::LessonId, studio::Date> days;
    for (const auto& lesson : left)
        days.emplace(lesson.id, lesson.on);
    LessonsToMake plan{.made = {}, .gone = studio::lessons_no_longer_made(term, slots, left)};
    std::erase_if(plan.gone, [&](studio::LessonId id) { return days.at(id) < desk.today(); });
    std::erase_if(left, [&](const Lesson& lesson) {
        return std::ranges::find(plan.gone, lesson.id) != plan.gone.end();
    });
    plan.made = studio::lessons_to_make(term, slots, left);
    if (!first_time) std::erase_if(plan.made, [&](const Lesson& lesson) { return lesson.on < desk.today(); });
    return plan;
}

std::vector<Lesson> lessons_of(const Desk& desk, const studio::Term& term) {
    return desk.file().lessons(term.first, term.last);
}

}  // namespace lowledger::desk
