#include "reports/words/check_words.h"

#include "reports/words/names.h"

namespace lowledger::words {
namespace {

std::string name_of(const Speech& speech, const std::string& slide) {
    const horns::SlideKind* kind = speech.kind.slide(slide);
    return kind == nullptr ? slide : kind->name;
}

std::string all_slides(const Words& words, const tuning::MoveCheck& check) {
    const std::string date = date_text(words, check.on);
    if (check.likeliest.what == tuning::MoveKind::nothing_moved) {
        return words.say(Sentence::check_nothing_moved,
                         {{"date", date}, {"since", date_text(words, check.since)}});
    }
    return words.say(Sentence::check_all_wrong_way, {{"date", date}});
}

std::string one_slide(const Speech& speech, const tuning::MoveCheck& check) {
    const Words& words = speech.words;
    const tuning::MoveAccount& account = check.likeliest;
    const std::string date = date_text(words, check.on);
    const std::string slide = name_of(speech, account.slide);
    switch (account.what) {
        case tuning::MoveKind::nothing_moved:
            return words.say(Sentence::check_slide_not_moved,
                             {{"date", date}, {"slide", slide}, {"since", date_text(words, check.since)}});
        case tuning::MoveKind::wrong_way:
            return words.say(Sentence::check_wrong_way, {{"date", date}, {"slide", slide}});
        case tuning::MoveKind::another_slide:
            return words.say(
                Sentence::check_another_slide,
                {{"date", date}, {"slide", slide}, {"instead", name_of(speech, account.instead)}});
        case tuning::MoveKind::as_told:
        case tuning::MoveKind::elsewhere:
            break;
    }
    const bool out = account.off.value() > 0.0;
    return words.say(out ? Sentence::check_elsewhere_out : Sentence::check_elsewhere_in,
                     {{"date", date}, {"slide", slide}, {"off", millimetres_text(units::abs(account.off))}});
}

}  // namespace

std::string move_sentence(const Speech& speech, const tuning::MoveCheck& check) {
    if (!check.told || check.likeliest.what == tuning::MoveKind::as_told) return {};
    return check.likeliest.slide.empty() ? all_slides(speech.words, check) : one_slide(speech, check);
}

std::string other_horn_sentence(const Speech& speech, const tuning::OtherHornWarning& warning) {
    return speech.words.say(warning.fits ? Sentence::check_students_other_horn : Sentence::check_other_horn,
                            {{"date", date_text(speech.words, warning.on)}});
}

std::vector<std::string> rests_on_others(const Words& words, const tuning::TuningProfile& profile) {
    std::vector<std::string> all;
    if (profile.sheets_of_other_horns > 0) {
        all.push_back(words.say_counted(Sentence::rests_on_other_horns_one,
                                        Sentence::rests_on_other_horns_many, profile.sheets_of_other_horns));
    }
    if (profile.sheets_of_other_players > 0) {
        all.push_back(words.say_counted(Sentence::rests_on_other_players_one,
                                        Sentence::rests_on_other_players_many,
                                        profile.sheets_of_other_players));
    }
    return all;
}

}  // namespace lowledger::words
