#include "app/desk/tables.h"

#include <algorithm>

#include "app/desk/lending.h"
#include "app/desk/practice.h"
#include "app/desk/routine_lists.h"

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
         pieces_listing}};
    return all;
}

const TableEntry& entry_of(Table table) {
    return *std::ranges::find(tables(), table, &TableEntry::table);
}

}  // namespace lowledger::desk
