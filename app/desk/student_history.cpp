#include "app/desk/student_history.h"

#include <algorithm>
#include <array>

#include "app/desk/lessons.h"
#include "app/desk/sheet_history.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using studio::Date;
using words::Sentence;

const Date earliest(1900, 1, 1);

void add_lessons(const Desk& desk, studio::StudentId student, std::vector<HistoryItem>& items) {
    const auto& words = desk.words();
    for (const auto& lesson : desk.file().lessons(student, earliest, desk.today())) {
        std::string details = outcome_text(words, lesson, student);
        if (lesson.group) details.insert(0, who_has(desk.file(), lesson) + " · ");
        for (const auto& text : {lesson.done, lesson.next})
            if (!text.empty()) details.append(" · ").append(text);
        items.push_back({lesson.on, words.say(Sentence::history_lesson), std::move(details), lesson.id});
    }
}

std::string horn_mark(const Desk& desk, studio::HornId id) {
    const auto horn = desk.file().horn(id);
    return horn ? horn->mark : std::string();
}

void add_sheets(const Desk& desk, studio::StudentId student, std::vector<HistoryItem>& items) {
    const auto& words = desk.words();
    for (const auto& sheet : desk.file().sheets(student))
        items.push_back({sheet.on, words.say(Sentence::history_sheet),
                         words.say_counted(Sentence::history_readings_one, Sentence::history_readings_many,
                                           static_cast<int>(sheet.readings.size()),
                                           {{"horn", horn_mark(desk, sheet.horn)}}),
                         std::nullopt, sheet.id, sheet.horn});
    for (const auto& given : desk.file().given_settings(student)) {
        const auto horn = horn_mark(desk, given.horn);
        items.push_back({given.on, words.say(Sentence::history_settings),
                         given.moved_on
                             ? words.say(Sentence::history_moved,
                                         {{"horn", horn}, {"date", words::date_text(words, *given.moved_on)}})
                             : words.say(Sentence::history_not_moved, {{"horn", horn}})});
    }
}

void add_events(const Desk& desk, studio::StudentId student, std::vector<HistoryItem>& items) {
    static constexpr std::array names{Sentence::event_braces_on, Sentence::event_braces_off,
                                      Sentence::event_teeth,     Sentence::event_growth,
                                      Sentence::event_illness,   Sentence::event_other};
    const auto& words = desk.words();
    for (const auto& event : desk.file().student_events(student))
        items.push_back({event.on, words.say(names.at(static_cast<std::size_t>(event.kind))), event.remarks});
    for (const auto& piece : desk.file().pieces(student))
        items.push_back({piece.from, words.say(Sentence::history_piece),
                         piece.composer.empty() ? piece.title : piece.title + " · " + piece.composer});
}

}  // namespace

std::vector<HistoryItem> student_history(const Desk& desk) {
    std::vector<HistoryItem> items;
    if (!desk.student()) return items;
    const auto student = desk.student()->id;
    add_lessons(desk, student, items);
    add_sheets(desk, student, items);
    add_events(desk, student, items);
    std::ranges::stable_sort(items, std::ranges::greater{}, &HistoryItem::on);
    return items;
}

Listing history_listing(const std::vector<HistoryItem>& items, const words::Words& words) {
    Listing listing;
    listing.columns = {{words.say(Sentence::history_date), false, true},
                       {words.say(Sentence::history_what), false, true},
                       {words.say(Sentence::history_details)}};
    for (std::size_t i = 0; i < items.size(); ++i)
        listing.rows.push_back({static_cast<std::int64_t>(i),
                                {ListingCell(words::date_text(words, items[i].on), items[i].on),
                                 items[i].what, items[i].details}});
    return listing;
}

void open_item(Desk& desk, const HistoryItem& item) {
    View view = desk.view();
    if (item.lesson) {
        view.lesson = item.lesson;
        view.section = Section::lesson_note;
    } else if (item.sheet) {
        const bool plays_it = std::ranges::any_of(desk.horns_of_student(),
                                                  [&](const auto& horn) { return item.horn == horn.id; });
        if (!plays_it) {
            desk.front().say(desk.words().say(Sentence::history_horn_gone));
            return;
        }
        view.horn = item.horn;
        desk.go(view);
        open_sheet(desk, *item.sheet);
        return;
    } else {
        return;
    }
    desk.go(view);
    desk.front().show_section();
}

}  // namespace lowledger::desk
