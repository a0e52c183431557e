#include "app/desk/pass_notes.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "app/desk/desk.h"
#include "model/units/note_names.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

constexpr std::size_t fewest_notes = 3;
constexpr std::size_t most_notes = 5;

/// What a band tunes to, its fifth and its third (common practice).
constexpr std::array<std::string_view, 3> usual_notes{"Bb2", "F2", "D3"};

std::string example(const studio::StudioFacts& facts) {
    const horns::NoteStyle style{.accidentals = facts.accidentals, .naming = facts.naming};
    std::string text;
    for (const auto note : usual_notes)
        text += (text.empty() ? "" : " ") + words::note_name_with_octave(*units::parse_pitch(note), style);
    return text;
}

std::vector<std::string> written(std::string_view text) {
    constexpr std::string_view between = " ,;\t";
    std::vector<std::string> notes;
    for (std::size_t at = text.find_first_not_of(between); at != std::string_view::npos;) {
        const auto end = std::min(text.find_first_of(between, at), text.size());
        notes.emplace_back(text.substr(at, end - at));
        at = text.find_first_not_of(between, end);
    }
    return notes;
}

std::optional<SlipProblem> problem_of(const SlipAnswers& answers, units::Naming naming,
                                      const words::Words& words, const std::string& example) {
    const auto notes = written(answers.text("notes"));
    for (const auto& note : notes)
        if (!units::parse_note(note, naming))
            return SlipProblem{
                "notes", words.say(Sentence::pass_notes_refused, {{"typed", note}, {"example", example}})};
    if (notes.size() < fewest_notes || notes.size() > most_notes)
        return SlipProblem{"notes", words.say(Sentence::pass_notes_count, {{"example", example}})};
    return std::nullopt;
}

}  // namespace

void ask_pass_notes(Slip& slip, const Desk& desk) {
    const auto facts = desk.file().facts();
    const auto& words = desk.words();
    const std::string start = example(facts);
    slip.text("notes", words.say(Sentence::pass_notes), start, words.say(Sentence::pass_notes_hint));
    slip.must([naming = facts.naming, &words, start](const SlipAnswers& answers) {
        return problem_of(answers, naming, words, start);
    });
}

std::vector<units::Pitch> pass_notes(const Desk& desk, const SlipAnswers& answers) {
    std::vector<units::Pitch> notes;
    for (const auto& note : written(answers.text("notes")))
        notes.push_back(units::pitch_of(*units::parse_note(note, desk.file().facts().naming)));
    return notes;
}

}  // namespace lowledger::desk
