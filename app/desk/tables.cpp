#include "app/desk/tables.h"

#include <algorithm>

#include "app/desk/lending.h"
#include "app/desk/practice.h"
#include "app/desk/routine_lists.h"
#include "app/desk/term_lists.h"
#include "app/desk/year_end.h"

namespace lowledger::desk {

using words::Sentence;

const std::vector<TableEntry>& tables() {
    static const std::vector<TableEntry> all = {
        {Table::loans,
         Sentence::loans_name,
         Sentence::loans_empty,
         {"loan.lend", "loan.back", "loan.change", "loan.signed", "loan.remove"},
         "loan.change",
         loans_listing},
        {Table::upkeep,
         Sentence::upkeep_name,
         Sentence::upkeep_empty,
         {"upkeep.add", "upkeep.done", "upkeep.change", "upkeep.remove"},
         "upkeep.change",
         upkeep_listing},
        {Table::given,
         Sentence::given_heading,
         Sentence::given_none,
         {"routine.give", "routine.renew", "routine.change_given", "routine.stop"},
         "routine.change_given",
         given_listing},
        {Table::practice,
         Sentence::practice_heading,
         Sentence::practice_none,
         {"practice.week", "practice.enter"},
         "practice.week",
         practice_listing},
        {Table::pieces,
         Sentence::pieces_heading,
         Sentence::pieces_none,
         {"piece.add", "piece.change", "piece.finish", "piece.remove"},
         "piece.change",
         pieces_listing},
        {Table::timetable,
         Sentence::timetable_name,
         Sentence::timetable_empty,
         {"slot.add", "slot.change", "slot.remove", "lesson.make"},
         "slot.change",
         timetable_listing,
         timetable_summary},
        {Table::lessons,
         Sentence::term_lessons_name,
         Sentence::term_lessons_empty,
         {"lesson.make", "lesson.begin", "lesson.attendance", "lesson.move", "lesson.cancel",
          "lesson.make_up", "lesson.remove"},
         "lesson.begin",
         term_lessons_listing,
         term_lessons_summary,
         [](const Desk& desk) -> std::optional<std::int64_t> {
             if (!desk.lesson()) return std::nullopt;
             return desk.lesson()->id.number;
         }},
        {Table::holidays,
         Sentence::holidays_name,
         Sentence::holidays_empty,
         {"holiday.add", "holiday.change", "holiday.remove"},
         "holiday.change",
         holidays_listing},
        {Table::groups,
         Sentence::groups_name,
         Sentence::groups_empty,
         {"group.add", "group.change", "group.archive", "group.remove"},
         "group.change",
         groups_listing},
        {Table::years_end,
         Sentence::years_end_name,
         Sentence::years_end_empty,
         {"year.see_to", "year.all_back", "year.all_up"},
         "year.see_to",
         years_end_listing,
         years_end_summary}};
    return all;
}

const TableEntry& entry_of(Table table) {
    return *std::ranges::find(tables(), table, &TableEntry::table);
}

}  // namespace lowledger::desk
