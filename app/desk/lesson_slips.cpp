#include "app/desk/lesson_slips.h"

#include <algorithm>
#include <charconv>
#include <vector>

#include "app/desk/lessons.h"
#include "app/desk/slip.h"

namespace lowledger::desk {
namespace {

using studio::Lesson;
using studio::TimeOfDay;
using words::Sentence;

constexpr int shortest = 5;
constexpr int longest = 480;

std::optional<int> minutes_in(const std::string& text) {
    int minutes = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), minutes);
    if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
    if (minutes < shortest || minutes > longest) return std::nullopt;
    return minutes;
}

std::string key_of(const Whose& whose) {
    if (whose.student) return "s" + std::to_string(whose.student->number);
    return whose.group ? "g" + std::to_string(whose.group->number) : std::string();
}

}  // namespace

void ask_time(Slip& slip, const words::Words& words, TimeOfDay start) {
    slip.text("time", words.say(Sentence::slip_time), start.text(), words.say(Sentence::slip_time_hint));
    slip.must([sentence = words.say(Sentence::slip_time_refused)](
                  const SlipAnswers& answers) -> std::optional<SlipProblem> {
        if (TimeOfDay::parse(answers.text("time"))) return std::nullopt;
        return SlipProblem{"time", sentence};
    });
}

TimeOfDay time_of(const SlipAnswers& answers) {
    return *TimeOfDay::parse(answers.text("time"));
}

void ask_length(Slip& slip, const words::Words& words, std::chrono::minutes start) {
    slip.text("length", words.say(Sentence::slip_length), std::to_string(start.count()));
    slip.must([sentence = words.say(Sentence::slip_length_refused)](
                  const SlipAnswers& answers) -> std::optional<SlipProblem> {
        if (minutes_in(answers.text("length"))) return std::nullopt;
        return SlipProblem{"length", sentence};
    });
}

std::chrono::minutes length_of(const SlipAnswers& answers) {
    return std::chrono::minutes(*minutes_in(answers.text("length")));
}

void ask_whose(Slip& slip, const Desk& desk, const Whose& start) {
    std::vector<SlipChoice> choices;
    for (const auto& student : desk.file().students())
        if (!student.archived || start.student == student.id)
            choices.push_back({key_of(Whose{.student = student.id}), student.name});
    for (const auto& group : desk.file().groups())
        if (!group.archived || start.group == group.id)
            choices.push_back({key_of(Whose{.group = group.id}), group.name});
    slip.choice("who", desk.words().say(Sentence::slip_who), std::move(choices), key_of(start));
}

Whose whose(const SlipAnswers& answers) {
    const auto key = answers.chosen("who");
    const auto number = std::stoll(key.substr(1));
    if (key.front() == 's') return {.student = studio::StudentId{number}};
    return {.group = studio::GroupId{number}};
}

std::optional<When> ask_when(Desk& desk, const std::string& title, const std::string& verb,
                             studio::Date start_on, TimeOfDay start_at) {
    Slip slip(title, verb);
    slip.date("on", desk.words().say(Sentence::slip_day), start_on);
    ask_time(slip, desk.words(), start_at);
    const auto answers = desk.front().ask(slip);
    if (!answers) return std::nullopt;
    return When{answers->date("on"), time_of(*answers)};
}

bool may_have_lesson(const Desk& desk) {
    return std::ranges::any_of(desk.file().students(), [](const auto& student) { return !student.archived; });
}

std::optional<Lesson> ask_new_lesson(Desk& desk) {
    const auto& words = desk.words();
    const bool at_today = desk.view().place == Place::today;
    const auto on_page = student_on_page(desk);
    Slip slip(words.say(Sentence::slip_add_lesson), words.say(Sentence::verb_add_lesson));
    ask_whose(slip, desk, {.student = on_page});
    slip.date("on", words.say(Sentence::slip_day),
              at_today ? desk.view().day.value_or(desk.today()) : desk.today());
    ask_time(slip, words, desk.now());
    ask_length(slip, words, Lesson{.on = desk.today()}.length);
    slip.text("room", words.say(Sentence::slip_room), {});
    const auto answers = desk.front().ask(slip);
    if (!answers) return std::nullopt;
    Lesson lesson{.id = {}, .on = answers->date("on")};
    const auto of = whose(*answers);
    lesson.student = of.student;
    lesson.group = of.group;
    lesson.starts = time_of(*answers);
    lesson.length = length_of(*answers);
    lesson.room = answers->text("room");
    return lesson;
}

std::optional<studio::Date> ask_day(Desk& desk, studio::Date start) {
    Slip slip(desk.words().say(Sentence::slip_go_to_day), desk.words().say(Sentence::verb_go));
    slip.date("on", desk.words().say(Sentence::slip_day), start);
    const auto answers = desk.front().ask(slip);
    if (!answers) return std::nullopt;
    return answers->date("on");
}

}  // namespace lowledger::desk
