#include "app/desk/practice_week.h"

#include <algorithm>
#include <set>
#include <string>

#include "model/studio/assigned.h"
#include "model/studio/due.h"
#include "reports/words/names.h"
#include "reports/words/routine_words.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

std::string boxes_of(const studio::Assignment& given) {
    return "given " + std::to_string(given.id.number);
}

std::string field_of(const studio::PracticeEntry& entry) {
    return "entry " + std::to_string(entry.id.number);
}

/// `&` is no mnemonic in it.
std::string as_label(const std::string& text) {
    std::string label;
    for (const char letter : text)
        label += letter == '&' ? "&&" : std::string(1, letter);
    return label;
}

const studio::PracticeEntry* entry_on(const PracticeWeek& week, const studio::Assignment& given,
                                      studio::Date day) {
    const auto found = std::ranges::find_if(
        week.entries, [&](const auto& entry) { return entry.assignment == given.id && entry.on == day; });
    return found == week.entries.end() ? nullptr : &*found;
}

bool practised_in(const PracticeWeek& week, const studio::Assignment& given) {
    return std::ranges::any_of(week.entries, [&](const auto& entry) { return entry.assignment == given.id; });
}

/// Days on which it was given, whether due or not.
std::vector<studio::Date> days_of(const PracticeWeek& week, const studio::Assignment& given) {
    std::vector<studio::Date> days;
    for (auto day = week.first; day <= week.last; day = day + 1)
        if (studio::holds_on(given, day) || entry_on(week, given, day) != nullptr) days.push_back(day);
    return days;
}

std::string told(const words::Words& words, const studio::PracticeEntry& entry) {
    std::string text = words::date_text(words, entry.on);
    if (entry.length)
        text += ", " + words.say_counted(Sentence::practice_minutes_one, Sentence::practice_minutes_many,
                                         static_cast<int>(entry.length->count()));
    if (!entry.remarks.empty()) text += ": " + entry.remarks;
    return text;
}

}  // namespace

PracticeWeek practice_week(const store::StudioFile& file, studio::StudentId student, studio::Date today,
                           int weeks_ago) {
    const auto first = today - (today.weekday() - 1) - 7 * weeks_ago;
    PracticeWeek week{student, first, std::min(first + 6, today), {}, {}};
    week.entries = file.practice(student, week.first, week.last);
    const auto groups = file.groups();
    for (auto& given : file.assignments(student)) {
        bool is_in = practised_in(week, given);
        for (auto day = week.first; day <= week.last && !is_in; day = day + 1)
            is_in = !studio::assigned_on(std::vector{given}, groups, student, day).empty();
        if (is_in) week.given.push_back(std::move(given));
    }
    std::ranges::reverse(week.given);
    return week;
}

int days_due(const PracticeWeek& week, const store::StudioFile& file) {
    const auto groups = file.groups();
    int due = 0;
    for (auto day = week.first; day <= week.last; day = day + 1) {
        const auto given = studio::assigned_on(week.given, groups, week.student, day);
        due +=
            std::ranges::any_of(given, [&](const auto& each) { return studio::is_for(each, day); }) ? 1 : 0;
    }
    return due;
}

int days_practised(const PracticeWeek& week) {
    std::set<studio::Date> days;
    for (const auto& entry : week.entries)
        days.insert(entry.on);
    return static_cast<int>(days.size());
}

Slip week_slip(const PracticeWeek& week, const store::StudioFile& file, const words::Words& words) {
    Slip slip(words.say(Sentence::slip_week), words.say(Sentence::verb_enter));
    slip.note(words.say(Sentence::week_note, {{"date", words::date_text(words, week.first)}}));
    for (const auto& given : week.given) {
        std::vector<SlipChoice> days;
        std::vector<std::string> ticked;
        for (const auto day : days_of(week, given)) {
            days.push_back({day.iso(), words::weekday_short(words, day.weekday())});
            if (entry_on(week, given, day) != nullptr) ticked.push_back(day.iso());
        }
        slip.boxes(boxes_of(given), as_label(file.routine(given.routine)->title) + ":", std::move(days),
                   ticked);
    }
    for (const auto& entry : week.entries)
        if (!entry.assignment) slip.check(field_of(entry), as_label(told(words, entry)), true);
    return slip;
}

void take_week(store::Edit& edit, const PracticeWeek& week, const SlipAnswers& answers) {
    for (const auto& given : week.given) {
        const auto ticked = answers.several(boxes_of(given));
        for (const auto day : days_of(week, given)) {
            const bool wanted = std::ranges::find(ticked, day.iso()) != ticked.end();
            const auto* const there = entry_on(week, given, day);
            if (wanted && there == nullptr)
                edit.add(studio::PracticeEntry{
                    .id = {}, .student = week.student, .on = day, .assignment = given.id});
            if (!wanted && there != nullptr) edit.remove(there->id);
        }
    }
    for (const auto& entry : week.entries)
        if (!entry.assignment && !answers.checked(field_of(entry))) edit.remove(entry.id);
}

}  // namespace lowledger::desk
