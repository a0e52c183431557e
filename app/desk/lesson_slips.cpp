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

void add_time(Slip& slip, const words::Words& words, TimeOfDay start) {
    slip.text("time", words.say(Sentence::slip_time), start.text(), words.say(Sentence::slip_time_hint));
    slip.must([sentence = words.say(Sentence::slip_time_refused)](
                  const SlipAnswers& answers) -> std::optional<SlipProblem> {
        if (TimeOfDay::parse(answers.text("time"))) return std::nullopt;
        return SlipProblem{"time", sentence};
    });
}

/// Students and groups that are not archived; who is on the page first to be chosen.
std::vector<SlipChoice> who_may(const Desk& desk) {
    std::vector<SlipChoice> choices;
    for (const auto& student : desk.file().students())
        if (!student.archived) choices.push_back({"s" + std::to_string(student.id.number), student.name});
    for (const auto& group : desk.file().groups())
        if (!group.archived) choices.push_back({"g" + std::to_string(group.id.number), group.name});
    return choices;
}

}  // namespace

std::optional<When> ask_when(Desk& desk, const std::string& title, const std::string& verb,
                             studio::Date start_on, TimeOfDay start_at) {
    Slip slip(title, verb);
    slip.date("on", desk.words().say(Sentence::slip_day), start_on);
    add_time(slip, desk.words(), start_at);
    const auto answers = desk.front().ask(slip);
    if (!answers) return std::nullopt;
    return When{answers->date("on"), *TimeOfDay::parse(answers->text("time"))};
}

bool may_have_lesson(const Desk& desk) {
    return std::ranges::any_of(desk.file().students(), [](const auto& student) { return !student.archived; });
}

std::optional<Lesson> ask_new_lesson(Desk& desk) {
    const auto& words = desk.words();
    const bool at_today = desk.view().place == Place::today;
    const auto on_page = student_on_page(desk);
    Slip slip(words.say(Sentence::slip_add_lesson), words.say(Sentence::verb_add_lesson));
    slip.choice("who", words.say(Sentence::slip_who), who_may(desk),
                on_page ? "s" + std::to_string(on_page->number) : std::string());
    slip.date("on", words.say(Sentence::slip_day),
              at_today ? desk.view().day.value_or(desk.today()) : desk.today());
    add_time(slip, words, desk.now());
    slip.text("length", words.say(Sentence::slip_length), "30");
    slip.text("room", words.say(Sentence::slip_room), {});
    slip.must([sentence = words.say(Sentence::slip_length_refused)](
                  const SlipAnswers& answers) -> std::optional<SlipProblem> {
        if (minutes_in(answers.text("length"))) return std::nullopt;
        return SlipProblem{"length", sentence};
    });
    const auto answers = desk.front().ask(slip);
    if (!answers) return std::nullopt;
    Lesson lesson{.id = {}, .on = answers->date("on")};
    const auto who = answers->chosen("who");
    if (who.front() == 's')
        lesson.student = studio::StudentId{std::stoll(who.substr(1))};
    else
        lesson.group = studio::GroupId{std::stoll(who.substr(1))};
    lesson.starts = *TimeOfDay::parse(answers->text("time"));
    lesson.length = std::chrono::minutes(*minutes_in(answers->text("length")));
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
