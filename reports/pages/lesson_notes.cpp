#include "reports/pages/lesson_notes.h"

#include "reports/canvas/text_block.h"
#include "reports/pages/flow.h"
#include "reports/words/book_words.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using namespace units::literals;
using words::Sentence;

constexpr auto lesson_gap = 4_mm;
constexpr auto indent = 5_mm;

std::string heading_of(const LessonNotes::OneLesson& one, const words::Words& words) {
    const std::string day = words::date_text(words, one.lesson.on);
    std::string dated = one.group_name.empty() ? day
                                               : words.say(Sentence::notes_with_group,
                                                           {{"date", day}, {"group", one.group_name}});
    const std::string not_kept = words::lesson_not_kept(words, one.lesson.state);
    if (not_kept.empty()) return dated;
    return words.say(Sentence::notes_not_kept, {{"date", dated}, {"what", not_kept}});
}

}  // namespace

canvas::Document lesson_notes(const LessonNotes& notes, const words::Words& words,
                              const canvas::Faces& faces) {
    Flow flow(words.say(Sentence::notes_of, {{"name", notes.student.name}}), notes.style, words, faces);
    flow.head_of(notes.facts, notes.student.name, words.say(Sentence::notes_title),
                 words.say(Sentence::notes_span, {{"first", words::date_text(words, notes.first)},
                                                  {"last", words::date_text(words, notes.last)}}));
    if (notes.lessons.empty()) flow.text(words.say(Sentence::notes_none), type::body, lesson_gap);
    for (const auto& one : notes.lessons) {
        flow.heading(heading_of(one, words), lesson_gap, 2.0 * canvas::leading(type::body));
        flow.text(one.lesson.done, type::body, 0.5_mm, indent);
        if (!one.lesson.next.empty())
            flow.text(words.say(Sentence::notes_next, {{"next", one.lesson.next}}), type::body, 0.8_mm,
                      indent);
    }
    return flow.finished(notes.facts, notes.last);
}

}  // namespace lowledger::pages
