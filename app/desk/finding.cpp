#include "app/desk/finding.h"

#include <algorithm>
#include <string>

#include "app/desk/lending.h"
#include "app/desk/term_lists.h"
#include "model/studio/kind_of.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using Kind = studio::Found::Kind;
using words::Sentence;

Sentence name_of(Kind kind) {
    switch (kind) {
        case Kind::student:
            return Sentence::found_student;
        case Kind::horn:
            return Sentence::found_horn;
        case Kind::mouthpiece:
            return Sentence::found_mouthpiece;
        case Kind::group:
            return Sentence::found_group;
        case Kind::routine:
            return Sentence::found_routine;
        case Kind::lesson:
            return Sentence::found_lesson;
        case Kind::sheet:
            return Sentence::found_sheet;
        case Kind::piece:
            return Sentence::found_piece;
        case Kind::event:
            return Sentence::found_event;
        case Kind::upkeep:
            return Sentence::found_upkeep;
        case Kind::loan:
            return Sentence::found_loan;
        case Kind::assignment:
            return Sentence::found_assignment;
        case Kind::practice:
            break;
    }
    return Sentence::found_practice;
}

std::string whose(const Desk& desk, const studio::Found& found) {
    const bool is_horn = found.kind == Kind::horn;
    std::string text = found.student && !is_horn ? name_of(desk, *found.student) : std::string();
    const auto horn = found.horn ? desk.file().horn(*found.horn) : std::nullopt;
    if (horn) text += (text.empty() ? "" : " · ") + horn->mark;
    if (horn && is_horn) text += " · " + words::kind_name(studio::kind_of(*horn));
    return text;
}

std::string on_one_line(std::string text) {
    std::ranges::replace(text, '\n', ' ');
    return text;
}

View student_view(const Desk& desk, const studio::Found& found) {
    View view = desk.view();
    view.place = Place::students;
    view.student = found.student;
    view.horn.reset();
    return view;
}

View horn_view(const Desk& desk, const studio::Found& found, Section section) {
    View view = desk.view();
    view.place = Place::horns;
    view.horn = found.horn;
    view.section = section;
    return view;
}

View section_view(const Desk& desk, const studio::Found& found, Section section) {
    View view = student_view(desk, found);
    view.section = section;
    return view;
}

/// A student's lesson at its note, a group's on its day.
View lesson_view(const Desk& desk, const studio::Found& found) {
    View view = desk.view();
    if (found.student)
        view = section_view(desk, found, Section::lesson_note);
    else
        view.place = Place::today;
    view.day = found.on;
    view.lesson = studio::LessonId{found.number};
    return view;
}

/// Groups stand beside the timetable of a term.
std::optional<View> group_view(const Desk& desk) {
    View view = desk.view();
    view.place = Place::terms;
    view.section = Section::groups;
    view.term = term_to_open(desk);
    if (!view.term) return std::nullopt;
    return view;
}

/// Where the record is in the window; empty where it is nowhere.
std::optional<View> view_of(const Desk& desk, const studio::Found& found) {
    switch (found.kind) {
        case Kind::horn:
            return horn_view(desk, found, Section::horn);
        case Kind::upkeep:
            if (found.horn) return horn_view(desk, found, Section::upkeep);
            break;
        case Kind::loan:
            return horn_view(desk, found, Section::loans);
        case Kind::mouthpiece:
            if (found.horn) return horn_view(desk, found, Section::horn);
            break;
        case Kind::sheet: {
            View view = student_view(desk, found);
            view.horn = found.horn;
            view.section = Section::sheet;
            return view;
        }
        case Kind::student:
            return student_view(desk, found);
        case Kind::lesson:
            return lesson_view(desk, found);
        case Kind::event:
            return section_view(desk, found, Section::history);
        case Kind::piece:
        case Kind::assignment:
        case Kind::practice:
            if (found.student) return section_view(desk, found, Section::routines);
            break;
        case Kind::group:
            return group_view(desk);
        case Kind::routine: {
            View view = desk.view();
            view.place = Place::routines;
            view.routine = studio::RoutineId{found.number};
            return view;
        }
    }
    return std::nullopt;
}

}  // namespace

std::vector<studio::Found> find_anything(const Desk& desk, std::string_view typed) {
    auto found = desk.file().search(typed, most_found);
    std::erase_if(found, [&](const studio::Found& record) { return !view_of(desk, record); });
    return found;
}

Listing found_listing(const Desk& desk, std::span<const studio::Found> found) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {{words.say(Sentence::column_found_kind), false, true},
                       {words.say(Sentence::column_found_whose)},
                       {words.say(Sentence::column_found_text)},
                       {words.say(Sentence::column_found_on), false, true}};
    for (std::size_t i = 0; i < found.size(); ++i) {
        const auto& record = found[i];
        const auto day =
            record.on ? ListingCell(words::date_text(words, *record.on), *record.on) : ListingCell();
        listing.rows.push_back(
            {static_cast<std::int64_t>(i),
             {words.say(name_of(record.kind)), whose(desk, record), on_one_line(record.excerpt), day}});
    }
    return listing;
}

void open_found(Desk& desk, const studio::Found& found) {
    const auto view = view_of(desk, found);
    if (!view) return;
    desk.go(*view);
    if (found.kind == Kind::loan) desk.choose(Table::loans, found.number);
    if (found.kind == Kind::group) desk.choose(Table::groups, found.number);
    if (found.kind == Kind::upkeep) desk.choose(Table::upkeep, found.number);
    const bool on_the_horn = desk.horn() && found.horn && desk.horn()->id == *found.horn;
    if (found.kind == Kind::sheet && on_the_horn) desk.show_sheet(studio::TuningSheetId{found.number});
    desk.front().show_section();
}

}  // namespace lowledger::desk
