#include "reports/pages/repair_list.h"

#include "reports/canvas/table.h"
#include "reports/pages/flow.h"
#include "reports/pages/listed.h"
#include "reports/words/book_words.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using namespace units::literals;
using words::Sentence;

/// What is written by hand stands on it.
constexpr const char* line_to_write_on = "________________________________";

std::string what_cell(const studio::Upkeep& work, const words::Words& words) {
    std::string name = words::work_name(words, work.work);
    if (work.done_on) return words.say(Sentence::repairs_due_again, {{"work", name}});
    if (work.what.empty()) return name;
    return words.say(Sentence::repairs_work, {{"work", name}, {"what", work.what}});
}

std::string horn_cell(const RepairList::Item& item, const words::Words& words) {
    const std::string mark = item.serial_number.empty()
                                 ? item.mark
                                 : words.say(Sentence::repairs_mark_and_serial,
                                             {{"mark", item.mark}, {"serial", item.serial_number}});
    return item.kind_name.empty() ? mark : mark + "\n" + item.kind_name;
}

std::string where_cell(const RepairList::Item& item, const words::Words& words) {
    const std::string locker =
        item.locker.empty() ? item.locker : words.say(Sentence::repairs_locker, {{"locker", item.locker}});
    return listed({item.holder, locker});
}

void add_rows(canvas::Table& table, const RepairList::Item& item, const words::Words& words) {
    const auto add = [&](const std::string& what, const std::string& since, const std::string& by) {
        table.rows.push_back(
            {horn_cell(item, words), where_cell(item, words), what, since, by, line_to_write_on});
    };
    for (const auto& work : item.works)
        add(what_cell(work, words),
            words::date_text(words, work.done_on ? work.next_due.value_or(*work.done_on) : work.noted_on),
            work.by);
    if (!item.stuck_slides.empty())
        add(words.say(Sentence::repairs_stuck, {{"slides", listed(item.stuck_slides)}}), {}, {});
}

}  // namespace

canvas::Document repair_list(const RepairList& list, const words::Words& words, const canvas::Faces& faces) {
    Flow flow(words.say(Sentence::repairs_title), list.style, words, faces, Flow::Turn::across);
    flow.head(list.facts, list.date,
              words.say(list.items.empty() ? Sentence::repairs_none : Sentence::repairs_how));
    if (list.items.empty()) return flow.finished(list.facts, list.date);
    canvas::Table table{.columns = {{words.say(Sentence::repairs_horn)},
                                    {words.say(Sentence::repairs_where)},
                                    {words.say(Sentence::repairs_what), canvas::Align::left, 1.0},
                                    {words.say(Sentence::repairs_since)},
                                    {words.say(Sentence::repairs_by)},
                                    {words.say(Sentence::repairs_done)}},
                        .rows = {},
                        .head = type::strong,
                        .body = type::body};
    for (const auto& item : list.items)
        add_rows(table, item, words);
    flow.table(table, 4_mm);
    flow.text(words.say(Sentence::caution_stuck_slide), type::small, 4_mm);
    return flow.finished(list.facts, list.date);
}

}  // namespace lowledger::pages
