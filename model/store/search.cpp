#include "model/store/search.h"

#include <array>

#include "model/store/rows.h"
#include "model/store/search_queries.h"

namespace lowledger::store {
namespace {

using studio::Found;

/// Where the records of each kind are, in the order of `Found::Kind`: the words, and whose they are.
struct Kind {
    std::string_view follow;
    std::string_view owner;
};
constexpr auto kinds = std::to_array<Kind>({{queries::follow_student, queries::owner_of_student},
                                            {queries::follow_horn, queries::owner_of_horn},
                                            {queries::follow_mouthpiece, queries::owner_of_mouthpiece},
                                            {queries::follow_group, {}},
                                            {queries::follow_routine, {}},
                                            {queries::follow_lesson, queries::owner_of_lesson},
                                            {queries::follow_sheet, queries::owner_of_sheet},
                                            {queries::follow_piece, queries::owner_of_piece},
                                            {queries::follow_event, queries::owner_of_event},
                                            {queries::follow_upkeep, queries::owner_of_upkeep},
                                            {queries::follow_loan, queries::owner_of_loan},
                                            {queries::follow_assignment, queries::owner_of_assignment},
                                            {queries::follow_practice, queries::owner_of_practice}});

constexpr std::int64_t no_day = 131071;
constexpr std::int64_t kind_mask = 15;
constexpr std::int64_t number_mask = 0xffffffff;

const Kind& kind_of(std::int64_t number) {
    return kinds.at(static_cast<std::size_t>(number - 1));
}

Found found_in(Statement& row) {
    const std::int64_t id = row.integer(0);
    Found found;
    found.kind = static_cast<Found::Kind>((id >> 32) & kind_mask);
    found.number = id & number_mask;
    if (const std::int64_t day = id >> 36; day != no_day)
        found.on = studio::Date(1900, 1, 1) + static_cast<int>(day);
    found.excerpt = row.text(1);
    return found;
}

void add_owner(SQLite::Database& database, Found& found) {
    const std::string_view owner = kind_of(static_cast<std::int64_t>(found.kind)).owner;
    if (owner.empty()) return;
    Statement row(database, owner);
    if (!row.with(found.number).step()) return;
    int column = 0;
    take(row, column, found.student);
    take(row, column, found.horn);
}

/// A letter, a digit, or a part of one beyond ASCII: where a word has none the index finds nothing for it.
bool is_of_a_word(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte >= 0x80 || (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

}  // namespace

std::string search_question(std::string_view typed) {
    constexpr std::string_view between = " \t\r\n\"";
    std::string question;
    for (std::size_t at = typed.find_first_not_of(between); at < typed.size();
         at = typed.find_first_not_of(between, at)) {
        const std::size_t end = std::min(typed.find_first_of(between, at), typed.size());
        const std::string_view word = typed.substr(at, end - at);
        at = end;
        if (std::ranges::none_of(word, is_of_a_word)) continue;
        question += fmt::format("{}\"{}\"*", question.empty() ? "" : " ", word);
    }
    return question;
}

std::vector<Found> search_records(SQLite::Database& database, std::string_view typed, int most) {
    const std::string question = search_question(typed);
    if (question.empty()) return {};
    Statement rows(database, queries::search);
    std::vector<Found> found = every(rows.with(question, most), found_in);
    for (Found& record : found)
        add_owner(database, record);
    return found;
}

void follow_in_search(SQLite::Database& database) {
    Statement stale(database, queries::stale_kinds);
    const auto changed = every(stale, [](Statement& row) { return row.integer(0); });
    if (changed.empty()) return;
    run(database, queries::drop_stale_words);
    for (const std::int64_t kind : changed)
        run(database, kind_of(kind).follow, kind);
    run(database, queries::nothing_stale);
}

void forget_removed_words(SQLite::Database& database) {
    follow_in_search(database);
    run(database, queries::merge_words);
}

}  // namespace lowledger::store
