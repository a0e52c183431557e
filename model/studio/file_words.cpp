#include "model/studio/file_words.h"

#include <array>
#include <utility>

namespace lowledger::studio {
namespace {

template <typename Choice, std::size_t Count>
using Words = std::array<std::pair<Choice, std::string_view>, Count>;

constexpr Words<Level, 3> levels = {
    {{Level::beginner, "beginner"}, {Level::middle, "middle"}, {Level::advanced, "advanced"}}};
constexpr Words<StudioFacts::Paper, 2> papers = {
    {{StudioFacts::Paper::a4, "a4"}, {StudioFacts::Paper::letter, "letter"}}};
constexpr Words<units::Accidentals, 2> accidentals_words = {
    {{units::Accidentals::flats, "flats"}, {units::Accidentals::sharps, "sharps"}}};
constexpr Words<units::Naming, 3> namings = {{{units::Naming::english, "english"},
                                              {units::Naming::german, "german"},
                                              {units::Naming::solfege, "solfege"}}};
constexpr Words<HeadPicture::Type, 2> picture_types = {
    {{HeadPicture::Type::png, "png"}, {HeadPicture::Type::jpeg, "jpeg"}}};
constexpr Words<SlidePosition::Origin, 4> origins = {{{SlidePosition::Origin::start, "start"},
                                                      {SlidePosition::Origin::measured, "measured"},
                                                      {SlidePosition::Origin::moved, "moved"},
                                                      {SlidePosition::Origin::repair, "repair"}}};
constexpr Words<AtHome, 3> at_home_words = {
    {{AtHome::horn, "horn"}, {AtHome::mouthpiece_only, "mouthpiece only"}, {AtHome::nothing, "nothing"}}};
constexpr Words<StudentEvent::Kind, 6> event_kinds = {{{StudentEvent::Kind::braces_on, "braces on"},
                                                       {StudentEvent::Kind::braces_off, "braces off"},
                                                       {StudentEvent::Kind::teeth, "teeth"},
                                                       {StudentEvent::Kind::growth, "growth"},
                                                       {StudentEvent::Kind::illness, "illness"},
                                                       {StudentEvent::Kind::other, "other"}}};
constexpr Words<Upkeep::Work, 6> works = {{{Upkeep::Work::checked, "checked"},
                                           {Upkeep::Work::cleaned, "cleaned"},
                                           {Upkeep::Work::disinfected, "disinfected"},
                                           {Upkeep::Work::greased, "greased"},
                                           {Upkeep::Work::repaired, "repaired"},
                                           {Upkeep::Work::other, "other"}}};
constexpr Words<Lesson::State, 6> lesson_states = {
    {{Lesson::State::planned, "planned"},
     {Lesson::State::kept, "kept"},
     {Lesson::State::missed_with_notice, "missed with notice"},
     {Lesson::State::missed_without_notice, "missed without notice"},
     {Lesson::State::moved, "moved"},
     {Lesson::State::cancelled, "cancelled"}}};
constexpr Words<Attendance::State, 4> attendances = {
    {{Attendance::State::present, "present"},
     {Attendance::State::late, "late"},
     {Attendance::State::missed_with_notice, "missed with notice"},
     {Attendance::State::missed_without_notice, "missed without notice"}}};
constexpr Words<Assignment::End, 4> ends = {{{Assignment::End::at_its_time, "at its time"},
                                             {Assignment::End::renewed, "renewed"},
                                             {Assignment::End::changed, "changed"},
                                             {Assignment::End::stopped, "stopped"}}};

template <typename Choice, std::size_t Count>
std::string_view word_of(const Words<Choice, Count>& words, Choice choice) {
    for (const auto& [value, word] : words) {
        if (value == choice) return word;
    }
    return {};
}

template <typename Choice, std::size_t Count>
std::optional<Choice> choice_of(const Words<Choice, Count>& words, std::string_view text) {
    for (const auto& [value, word] : words) {
        if (word == text) return value;
    }
    return std::nullopt;
}

}  // namespace

std::string_view file_word(Level level) {
    return word_of(levels, level);
}
std::string_view file_word(StudioFacts::Paper paper) {
    return word_of(papers, paper);
}
std::string_view file_word(units::Accidentals accidentals) {
    return word_of(accidentals_words, accidentals);
}
std::string_view file_word(units::Naming naming) {
    return word_of(namings, naming);
}
std::string_view file_word(HeadPicture::Type type) {
    return word_of(picture_types, type);
}
std::string_view file_word(SlidePosition::Origin origin) {
    return word_of(origins, origin);
}
std::string_view file_word(AtHome choice) {
    return word_of(at_home_words, choice);
}
std::string_view file_word(StudentEvent::Kind choice) {
    return word_of(event_kinds, choice);
}
std::string_view file_word(Upkeep::Work choice) {
    return word_of(works, choice);
}
std::string_view file_word(Lesson::State choice) {
    return word_of(lesson_states, choice);
}
std::string_view file_word(Attendance::State choice) {
    return word_of(attendances, choice);
}
std::string_view file_word(Assignment::End choice) {
    return word_of(ends, choice);
}

std::optional<Level> parse_level(std::string_view word) {
    return choice_of(levels, word);
}
std::optional<StudioFacts::Paper> parse_paper(std::string_view word) {
    return choice_of(papers, word);
}
std::optional<units::Accidentals> parse_accidentals(std::string_view word) {
    return choice_of(accidentals_words, word);
}
std::optional<units::Naming> parse_naming(std::string_view word) {
    return choice_of(namings, word);
}
std::optional<HeadPicture::Type> parse_picture_type(std::string_view word) {
    return choice_of(picture_types, word);
}
std::optional<SlidePosition::Origin> parse_origin(std::string_view word) {
    return choice_of(origins, word);
}
std::optional<AtHome> parse_at_home(std::string_view word) {
    return choice_of(at_home_words, word);
}
std::optional<StudentEvent::Kind> parse_event_kind(std::string_view word) {
    return choice_of(event_kinds, word);
}
std::optional<Upkeep::Work> parse_work(std::string_view word) {
    return choice_of(works, word);
}
std::optional<Lesson::State> parse_lesson_state(std::string_view word) {
    return choice_of(lesson_states, word);
}
std::optional<Attendance::State> parse_attendance(std::string_view word) {
    return choice_of(attendances, word);
}
std::optional<Assignment::End> parse_assignment_end(std::string_view word) {
    return choice_of(ends, word);
}

}  // namespace lowledger::studio
