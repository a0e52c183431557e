#include "app/desk/lessons.h"

#include <algorithm>
#include <array>
#include <stdexcept>

#include "model/studio/calendar.h"

namespace lowledger::desk {
namespace {

using studio::Attendance;
using studio::Lesson;
using studio::StudentId;
using words::Sentence;

/// A state and the key it is chosen by.
template <typename State>
struct Named {
    std::string_view key;
    State state;
    Sentence sentence;
};

constexpr std::array<Named<Lesson::State>, 6> lesson_states{{
    {"planned", Lesson::State::planned, Sentence::outcome_planned},
    {"kept", Lesson::State::kept, Sentence::outcome_kept},
    {"notice", Lesson::State::missed_with_notice, Sentence::outcome_missed_with_notice},
    {"no notice", Lesson::State::missed_without_notice, Sentence::outcome_missed_without_notice},
    {"cancelled", Lesson::State::cancelled, Sentence::outcome_cancelled},
    {"moved", Lesson::State::moved, Sentence::outcome_moved},
}};

constexpr std::array<Named<Attendance::State>, 4> attendance_states{{
    {"kept", Attendance::State::present, Sentence::attendance_present},
    {"late", Attendance::State::late, Sentence::attendance_late},
    {"notice", Attendance::State::missed_with_notice, Sentence::outcome_missed_with_notice},
    {"no notice", Attendance::State::missed_without_notice, Sentence::outcome_missed_without_notice},
}};

constexpr std::string_view attendance_open = "open";

bool speaks_of_one(const Lesson& lesson, std::optional<StudentId> student) {
    return lesson.group && student;
}

template <typename States>
const auto& of_key(const States& states, std::string_view key) {
    const auto found = std::ranges::find_if(states, [&](const auto& named) { return named.key == key; });
    if (found == states.end()) throw std::logic_error("no outcome " + std::string(key));
    return *found;
}

template <typename States, typename State>
const auto& of_state(const States& states, State state) {
    return *std::ranges::find_if(states, [&](const auto& named) { return named.state == state; });
}

std::string& text_of(Lesson& lesson, LessonText which) {
    switch (which) {
        case LessonText::done:
            return lesson.done;
        case LessonText::next:
            return lesson.next;
        case LessonText::remark:
            break;
    }
    return lesson.private_remark;
}

Sentence edit_name(LessonText which) {
    switch (which) {
        case LessonText::done:
            return Sentence::edit_lesson_done;
        case LessonText::next:
            return Sentence::edit_lesson_next;
        case LessonText::remark:
            break;
    }
    return Sentence::edit_lesson_remark;
}

std::string name_in(const store::StudioFile& file, std::optional<StudentId> student_id,
                    std::optional<studio::GroupId> group_id) {
    if (student_id) {
        const auto student = file.student(*student_id);
        return student ? student->name : std::string();
    }
    const auto group = group_id ? file.group(*group_id) : std::nullopt;
    return group ? group->name : std::string();
}

void file_changed(Desk& desk, const Lesson& lesson, Sentence name) {
    desk.file().edit(desk.words().say(name, {{"name", who_has(desk.file(), lesson)}}),
                     [&](store::Edit& edit) { edit.update(lesson); });
}

}  // namespace

std::optional<Lesson> lesson_at(const store::StudioFile& file, const View& view, studio::Date today) {
    const bool on_page = view.place == Place::students && view.student;
    if (view.place != Place::today && !on_page) return std::nullopt;
    const studio::Date day = on_page ? today : view.day.value_or(today);
    if (view.lesson) {
        auto chosen = file.lesson(*view.lesson);
        if (chosen && (on_page || chosen->on == day)) return chosen;
    }
    auto lessons = on_page ? file.lessons(*view.student, day, day) : file.lessons(day, day);
    std::erase_if(lessons, [](const Lesson& lesson) { return lesson.state == Lesson::State::moved; });
    if (lessons.empty()) return std::nullopt;
    std::ranges::stable_sort(lessons, {}, &Lesson::starts);
    const auto planned = std::ranges::find(lessons, Lesson::State::planned, &Lesson::state);
    return planned != lessons.end() ? *planned : lessons.back();
}

std::optional<StudentId> student_on_page(const Desk& desk) {
    if (!desk.student()) return std::nullopt;
    return desk.student()->id;
}

std::string who_has(const store::StudioFile& file, const Lesson& lesson) {
    return name_in(file, lesson.student, lesson.group);
}

std::string who_has(const store::StudioFile& file, const studio::TimetableSlot& slot) {
    return name_in(file, slot.student, slot.group);
}

std::vector<StudentId> members_of(const store::StudioFile& file, const Lesson& lesson) {
    if (!lesson.group) return {};
    const auto group = file.group(*lesson.group);
    return group ? studio::members_on(*group, lesson.on) : std::vector<StudentId>();
}

std::string span_text(const words::Words& words, const Lesson& lesson) {
    constexpr int day = 24 * 60;
    const int end = lesson.starts.minutes() + static_cast<int>(lesson.length.count());
    return words.say(Sentence::lesson_span, {{"starts", lesson.starts.text()},
                                             {"ends", studio::TimeOfDay::from_minutes(end % day).text()}});
}

std::string state_text(const words::Words& words, Lesson::State state) {
    return words.say(of_state(lesson_states, state).sentence);
}

std::vector<SlipChoice> outcomes(const words::Words& words, const Lesson& lesson,
                                 std::optional<StudentId> student) {
    std::vector<SlipChoice> choices;
    if (speaks_of_one(lesson, student)) {
        choices.push_back({std::string(attendance_open), words.say(Sentence::attendance_open)});
        for (const auto& named : attendance_states)
            choices.push_back({std::string(named.key), words.say(named.sentence)});
        return choices;
    }
    // A lesson becomes a moved one by being put on another day.
    for (const auto& named : lesson_states)
        if (named.state != Lesson::State::moved || lesson.state == Lesson::State::moved)
            choices.push_back({std::string(named.key), words.say(named.sentence)});
    return choices;
}

std::string outcome_of(const Lesson& lesson, std::optional<StudentId> student) {
    if (!speaks_of_one(lesson, student)) return std::string(of_state(lesson_states, lesson.state).key);
    const auto found = std::ranges::find(lesson.attendance, *student, &Attendance::student);
    if (found == lesson.attendance.end()) return std::string(attendance_open);
    return std::string(of_state(attendance_states, found->state).key);
}

std::string outcome_text(const words::Words& words, const Lesson& lesson, std::optional<StudentId> student) {
    // Until something is said of the student the group's lesson speaks.
    const auto of = outcome_of(lesson, student) == attendance_open ? std::nullopt : student;
    const auto choices = outcomes(words, lesson, of);
    return std::ranges::find(choices, outcome_of(lesson, of), &SlipChoice::key)->text;
}

Lesson with_outcome(Lesson lesson, std::optional<StudentId> student, std::string_view key,
                    const std::vector<StudentId>& members) {
    if (speaks_of_one(lesson, student)) {
        std::erase_if(lesson.attendance,
                      [&](const Attendance& attendance) { return attendance.student == *student; });
        if (key != attendance_open)
            lesson.attendance.push_back({*student, of_key(attendance_states, key).state});
        // Whoever was there was at a lesson that took place.
        if ((key == "kept" || key == "late") && lesson.state == Lesson::State::planned)
            lesson.state = Lesson::State::kept;
        return lesson;
    }
    const auto state = of_key(lesson_states, key).state;
    if (state == lesson.state) return lesson;
    lesson.state = state;
    lesson.make_up_owed = studio::usually_made_up(state);
    if (state != Lesson::State::kept) return lesson;
    for (const auto member : members)
        if (std::ranges::find(lesson.attendance, member, &Attendance::student) == lesson.attendance.end())
            lesson.attendance.push_back({member, Attendance::State::present});
    return lesson;
}

void file_outcome(Desk& desk, std::string_view key) {
    if (!desk.lesson()) return;
    const Lesson before = *desk.lesson();
    const auto student = student_on_page(desk);
    const Lesson after = with_outcome(before, student, key, members_of(desk.file(), before));
    if (after == before) return;
    std::string said;
    for (const auto& choice : outcomes(desk.words(), after, student))
        if (choice.key == key) said = choice.text;
    const std::string name =
        speaks_of_one(before, student) ? desk.student()->name : who_has(desk.file(), before);
    desk.file().edit(desk.words().say(Sentence::edit_lesson_outcome, {{"name", name}, {"outcome", said}}),
                     [&](store::Edit& edit) { edit.update(after); });
}

void take_attendance(Desk& desk) {
    if (!desk.lesson() || !desk.lesson()->group) return;
    const Lesson before = *desk.lesson();
    const auto members = members_of(desk.file(), before);
    const auto& words = desk.words();
    const auto name = who_has(desk.file(), before);
    if (members.empty()) throw units::Refusal(words.say(Sentence::group_is_empty, {{"name", name}}));
    Slip slip(words.say(Sentence::slip_attendance, {{"name", name}}), words.say(Sentence::verb_note));
    for (const auto member : members) {
        const auto student = desk.file().student(member);
        const auto now = outcome_of(before, member);
        // Most are there, so that only the others are work.
        slip.choice(std::to_string(member.number), student ? student->name + ":" : std::string(),
                    outcomes(words, before, member), now == attendance_open ? "kept" : now);
    }
    const auto answers = desk.front().ask(slip);
    if (!answers) return;
    Lesson after = before;
    for (const auto member : members)
        after = with_outcome(after, member, answers->chosen(std::to_string(member.number)), members);
    if (after == before) return;
    desk.file().edit(words.say(Sentence::edit_lesson_attendance, {{"name", name}}),
                     [&](store::Edit& edit) { edit.update(after); });
}

void file_text(Desk& desk, studio::LessonId id, LessonText which, const std::string& text) {
    auto lesson = desk.file().lesson(id);
    if (!lesson || text_of(*lesson, which) == text) return;
    text_of(*lesson, which) = text;
    if (which == LessonText::done && !text.empty() && lesson->state == Lesson::State::planned &&
        lesson->on <= desk.today())
        *lesson = with_outcome(*lesson, std::nullopt, "kept", members_of(desk.file(), *lesson));
    file_changed(desk, *lesson, edit_name(which));
}

void file_make_up_owed(Desk& desk, studio::LessonId id, bool owed) {
    auto lesson = desk.file().lesson(id);
    if (!lesson || lesson->make_up_owed == owed) return;
    lesson->make_up_owed = owed;
    file_changed(desk, *lesson, Sentence::edit_lesson_owed);
}

}  // namespace lowledger::desk
