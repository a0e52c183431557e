#include "reports/words/book_words.h"

#include "reports/words/names.h"

namespace lowledger::words {

std::string work_name(const Words& words, studio::Upkeep::Work work) {
    using Work = studio::Upkeep::Work;
    switch (work) {
        case Work::checked:
            return words.say(Sentence::work_checked);
        case Work::cleaned:
            return words.say(Sentence::work_cleaned);
        case Work::disinfected:
            return words.say(Sentence::work_disinfected);
        case Work::greased:
            return words.say(Sentence::work_greased);
        case Work::repaired:
            return words.say(Sentence::work_repaired);
        case Work::other:
            break;
    }
    return words.say(Sentence::work_other);
}

std::string at_home_text(const Words& words, const std::optional<studio::AtHome>& at_home) {
    if (!at_home) return {};
    switch (*at_home) {
        case studio::AtHome::horn:
            return words.say(Sentence::at_home_horn);
        case studio::AtHome::mouthpiece_only:
            return words.say(Sentence::at_home_mouthpiece);
        case studio::AtHome::nothing:
            break;
    }
    return words.say(Sentence::at_home_nothing);
}

std::string lesson_not_kept(const Words& words, studio::Lesson::State state) {
    using State = studio::Lesson::State;
    switch (state) {
        case State::missed_with_notice:
            return words.say(Sentence::lesson_missed_with_notice);
        case State::missed_without_notice:
            return words.say(Sentence::lesson_missed);
        case State::moved:
            return words.say(Sentence::lesson_moved);
        case State::cancelled:
            return words.say(Sentence::lesson_cancelled);
        case State::planned:
        case State::kept:
            break;
    }
    return {};
}

std::string date_or_nothing(const Words& words, const std::optional<studio::Date>& date) {
    return date ? date_text(words, *date) : std::string();
}

std::string money_or_nothing(const std::optional<studio::Money>& money) {
    return money ? studio::text(*money) : std::string();
}

}  // namespace lowledger::words
