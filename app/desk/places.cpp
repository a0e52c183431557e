#include "app/desk/places.h"

#include <algorithm>

#include "app/desk/lists.h"
#include "app/desk/routine_lists.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

Listing students_listing(const Desk& desk, std::string_view find) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {{words.say(Sentence::column_student), false, true},
                       {words.say(Sentence::column_horn)},
                       {words.say(Sentence::column_last_sheet), false, true}};
    for (auto& row : student_rows(desk.file(), words, desk.today(), find))
        listing.rows.push_back({row.id.number, {row.name, row.horn, row.now}, row.archived});
    return listing;
}

Listing horns_listing(const Desk& desk, std::string_view find) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {{words.say(Sentence::column_horn), false, true},
                       {words.say(Sentence::column_with)},
                       {words.say(Sentence::column_now), false, true}};
    for (auto& row : horn_rows(desk.file(), words, desk.today(), find))
        listing.rows.push_back({row.id.number, {row.mark, row.players, row.now}, row.archived});
    std::ranges::stable_sort(listing.rows, [](const ListingRow& a, const ListingRow& b) {
        return a.faint != b.faint ? b.faint : stands_before(a.cells.front(), b.cells.front());
    });
    return listing;
}

std::string without_mnemonic(std::string_view text) {
    std::string title(text);
    std::erase(title, '&');
    return title;
}

PlaceList students_list() {
    return {.add = "student.add",
            .offers = {"student.add", "student.change", "student.horn", "student.return", "student.archive",
                       "student.remove"},
            .listing = students_listing,
            .opened =
                [](const View& view, std::int64_t record) {
                    View turned = view;
                    turned.student = studio::StudentId{record};
                    turned.horn.reset();
                    return turned;
                },
            .empty = Sentence::empty_students,
            .choose = Sentence::empty_choose_student,
            .open = [](const View& view) -> std::optional<std::int64_t> {
                if (!view.student) return std::nullopt;
                return view.student->number;
            }};
}

PlaceList horns_list() {
    return {.add = "horn.add",
            .offers = {"horn.add", "horn.change", "horn.measure", "loan.lend", "loan.back", "upkeep.add",
                       "horn.archive", "horn.remove"},
            .listing = horns_listing,
            .opened =
                [](const View& view, std::int64_t record) {
                    View turned = view;
                    turned.horn = studio::HornId{record};
                    return turned;
                },
            .empty = Sentence::empty_horns,
            .choose = Sentence::empty_choose_horn,
            .open = [](const View& view) -> std::optional<std::int64_t> {
                if (!view.horn) return std::nullopt;
                return view.horn->number;
            }};
}

PlaceList routines_list() {
    return {.add = "routine.add",
            .offers = {"routine.give", "routine.change", "routine.copy", "routine.archive", "routine.remove"},
            .listing = routines_listing,
            .opened =
                [](const View& view, std::int64_t record) {
                    View turned = view;
                    turned.routine = studio::RoutineId{record};
                    return turned;
                },
            .empty = Sentence::empty_routines,
            .choose = Sentence::empty_choose_routine,
            .open = [](const View& view) -> std::optional<std::int64_t> {
                if (!view.routine) return std::nullopt;
                return view.routine->number;
            }};
}

}  // namespace

const std::vector<PlaceEntry>& places() {
    static const std::vector<PlaceEntry> all = {
        {Place::students,
         "go.students",
         "&Students",
         "Alt+1",
         students_list(),
         {{Section::sheet, "go.sheet", "&Tuning sheet"},
          {Section::settings, "go.settings", "S&ettings"},
          {Section::routines, "go.given", "Rout&ines"}}},
        {Place::horns,
         "go.horns",
         "&Horns",
         "Alt+2",
         horns_list(),
         {{Section::horn, "go.facts", "&Facts"},
          {Section::slides, "go.slides", "S&lides"},
          {Section::chart, "go.chart", "&Chart"},
          {Section::loans, "go.loans", "L&oans"},
          {Section::upkeep, "go.upkeep", "&Upkeep"}}},
        {Place::routines, "go.routines", "&Routines", "Alt+3", routines_list(), {}}};
    return all;
}

const PlaceEntry& entry_of(Place place) {
    return *std::ranges::find(places(), place, &PlaceEntry::place);
}

std::string title_of(Place place) {
    return without_mnemonic(entry_of(place).text);
}

std::string title_of(const SectionEntry& section) {
    return without_mnemonic(section.text);
}

std::size_t section_number(const View& view) {
    const auto& sections = entry_of(view.place).sections;
    const auto found = std::ranges::find(sections, view.section, &SectionEntry::section);
    return found == sections.end() ? 0 : static_cast<std::size_t>(found - sections.begin());
}

Section section_of(const View& view) {
    return entry_of(view.place).sections.at(section_number(view)).section;
}

}  // namespace lowledger::desk
