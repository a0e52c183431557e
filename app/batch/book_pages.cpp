#include "app/batch/book_pages.h"

#include "app/paper/lists.h"

namespace lowledger::batch {
namespace {

using Documents = std::vector<pages::NamedDocument>;

Documents class_list(const BookPrinting& printing) {
    const auto list = paper::class_list(
        printing.from, students_asked(printing.from.file, printing.request, printing.from.day),
        printing.request.group);
    return {{"Class list", pages::class_list(list, printing.words, printing.faces)}};
}

Documents day_list(const BookPrinting& printing) {
    return {{"Lessons of a day",
             pages::day_list(paper::day_list(printing.from), printing.words, printing.faces)}};
}

Documents inventory(const BookPrinting& printing) {
    return {{"Inventory", pages::inventory(paper::inventory(printing.from), printing.words, printing.faces)}};
}

Documents repair_list(const BookPrinting& printing) {
    return {{"Repair list",
             pages::repair_list(paper::repair_list(printing.from), printing.words, printing.faces)}};
}

}  // namespace

const std::vector<BookPage>& book_pages() {
    static const std::vector<BookPage> all = {
        {"class", "Class list", "class (names, horns, whom to call)", class_list},
        {"day", "Lessons of the day", "day (the lessons of --on)", day_list},
        {"inventory", "Inventory", "inventory (all horns and mouthpieces)", inventory},
        {"repairs", "Repair list", "repairs (what waits for a technician)", repair_list}};
    return all;
}

}  // namespace lowledger::batch
