#include "reports/words/routine_words.h"

namespace lowledger::words {
namespace {

Sentence nth(Sentence first, int number) {
    return static_cast<Sentence>(static_cast<int>(first) + number - 1);
}

}  // namespace

std::string weekday_short(const Words& words, int weekday) {
    return words.say(nth(Sentence::weekday_short_1, weekday));
}

std::string weekday_name(const Words& words, int weekday) {
    return words.say(nth(Sentence::weekday_1, weekday));
}

std::string weekdays_text(const Words& words, studio::Weekdays days) {
    if (days == studio::Weekdays()) return words.say(Sentence::every_day);
    std::string text;
    for (int day = 1; day <= 7; ++day)
        if (days.has(day)) text += (text.empty() ? "" : ", ") + weekday_short(words, day);
    return text;
}

std::string how_much(const Words& words, const studio::Routine& routine, const std::string& amount) {
    const std::string& told = amount.empty() ? routine.dose : amount;
    if (!routine.length)
        return told.empty() ? told : words.say(Sentence::routine_sheet_amount, {{"amount", told}});
    const auto minutes = static_cast<int>(routine.length->count());
    if (told.empty())
        return words.say_counted(Sentence::routine_sheet_minutes_one, Sentence::routine_sheet_minutes_many,
                                 minutes);
    return words.say_counted(Sentence::routine_sheet_amount_minutes_one,
                             Sentence::routine_sheet_amount_minutes_many, minutes, {{"amount", told}});
}

}  // namespace lowledger::words
