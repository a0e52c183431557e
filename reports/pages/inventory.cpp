#include "reports/pages/inventory.h"

#include <map>
#include <optional>

#include "reports/canvas/table.h"
#include "reports/pages/flow.h"
#include "reports/pages/listed.h"
#include "reports/words/book_words.h"

namespace lowledger::pages {
namespace {

using canvas::Align;
using namespace units::literals;
using words::Sentence;

constexpr auto table_gap = 3_mm;
constexpr auto heading_gap = 6_mm;
constexpr auto column_gap = 3_mm;

std::string holders_cell(const Inventory::OneHorn& row, const words::Words& words) {
    std::vector<std::string> names;
    for (const auto& holder : row.holders)
        names.push_back(holder.at_home ? words.say(Sentence::inventory_taken_home, {{"name", holder.name}})
                                       : holder.name);
    return listed(names);
}

std::string owner_cell(const std::string& owner, const std::string& belongs_to, const words::Words& words) {
    if (!owner.empty()) return owner;
    return belongs_to.empty() ? words.say(Sentence::inventory_the_school) : belongs_to;
}

canvas::Table horns_table(const Inventory& inventory, const words::Words& words) {
    canvas::Table table{.columns = {{words.say(Sentence::inventory_mark)},
                                    {words.say(Sentence::inventory_kind)},
                                    {words.say(Sentence::inventory_maker)},
                                    {words.say(Sentence::inventory_serial)},
                                    {words.say(Sentence::inventory_tag)},
                                    {words.say(Sentence::inventory_owner)},
                                    {words.say(Sentence::inventory_case)},
                                    {words.say(Sentence::inventory_locker)},
                                    {words.say(Sentence::inventory_condition), Align::left, 1.0},
                                    {words.say(Sentence::inventory_value), Align::right},
                                    {words.say(Sentence::inventory_with)}},
                        .rows = {},
                        .head = type::small_strong,
                        .body = type::small,
                        .gap = column_gap};
    for (const auto& row : inventory.horns) {
        const auto& horn = row.horn;
        table.rows.push_back({horn.mark, row.kind_name, horn.maker_and_model, horn.serial_number,
                              horn.inventory_tag, owner_cell(row.owner, horn.belongs_to, words),
                              horn.case_text, horn.locker, horn.condition,
                              words::money_or_nothing(horn.value), holders_cell(row, words)});
    }
    return table;
}

canvas::Table mouthpieces_table(const Inventory& inventory, const words::Words& words) {
    canvas::Table table{.columns = {{words.say(Sentence::inventory_mark)},
                                    {words.say(Sentence::inventory_size)},
                                    {words.say(Sentence::inventory_goes_with)},
                                    {words.say(Sentence::inventory_owner)},
                                    {words.say(Sentence::inventory_kept_in)},
                                    {words.say(Sentence::inventory_condition), Align::left, 1.0},
                                    {words.say(Sentence::inventory_value), Align::right},
                                    {words.say(Sentence::inventory_with)}},
                        .rows = {},
                        .head = type::small_strong,
                        .body = type::small,
                        .gap = column_gap};
    for (const auto& row : inventory.mouthpieces) {
        const auto& mouthpiece = row.mouthpiece;
        table.rows.push_back({mouthpiece.mark, mouthpiece.size, row.horn_mark,
                              owner_cell(row.owner, {}, words), mouthpiece.kept_in, mouthpiece.condition,
                              words::money_or_nothing(mouthpiece.value), row.holder});
    }
    return table;
}

/// "12 500.00 EUR, 300.00 $"; empty where nothing has a value.
std::string worth(const Inventory& inventory) {
    std::map<std::string, std::int64_t> sums;
    const auto add = [&](const std::optional<studio::Money>& value) {
        if (value) sums[value->currency] += value->cents;
    };
    for (const auto& row : inventory.horns)
        add(row.horn.value);
    for (const auto& row : inventory.mouthpieces)
        add(row.mouthpiece.value);
    std::vector<std::string> texts;
    texts.reserve(sums.size());
    for (const auto& [currency, cents] : sums)
        texts.push_back(studio::text({cents, currency}));
    return listed(texts);
}

}  // namespace

canvas::Document inventory(const Inventory& inventory, const words::Words& words,
                           const canvas::Faces& faces) {
    Flow flow(words.say(Sentence::inventory_title), inventory.style, words, faces, Flow::Turn::across);
    flow.head(inventory.facts, inventory.date,
              inventory.horns.empty()
                  ? words.say(Sentence::inventory_none)
                  : words.say_counted(Sentence::inventory_how_one, Sentence::inventory_how_many,
                                      static_cast<int>(inventory.horns.size())));
    if (!inventory.horns.empty()) flow.table(horns_table(inventory, words), table_gap);
    if (!inventory.mouthpieces.empty()) {
        flow.heading(words.say(Sentence::inventory_mouthpieces), heading_gap, 15_mm);
        flow.table(mouthpieces_table(inventory, words), 1_mm);
    }
    const std::string sum = worth(inventory);
    if (!sum.empty()) flow.block(words.say(Sentence::inventory_worth, {{"sum", sum}}), type::body, 4_mm);
    return flow.finished(inventory.facts, inventory.date);
}

}  // namespace lowledger::pages
