#include "app/desk/tables.h"

#include <algorithm>

#include "app/desk/lending.h"

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
         upkeep_listing}};
    return all;
}

const TableEntry& entry_of(Table table) {
    return *std::ranges::find(tables(), table, &TableEntry::table);
}

}  // namespace lowledger::desk
