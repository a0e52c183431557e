#include "app/batch/sample_book.h"

#include <cmath>

#include "app/batch/sample_readers.h"
#include "app/batch/sample_table.h"
#include "model/studio/file_words.h"
#include "model/units/refusal.h"

namespace lowledger::batch {

namespace {

std::string text(const SampleTable& table, std::string_view key) {
    return table.get<std::string>(key).value_or("");
}

SampleSpan read_span(const SampleTable& table, std::string_view otherwise_last_day) {
    SampleSpan span;
    span.name = table.require<std::string>("name");
    span.first_week = table.week("first");
    span.first_day = table.weekday("first_day");
    span.last_week = table.week("last");
    span.last_day =
        1 + static_cast<int>(table.word(
                "last_day", {"Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"},
                otherwise_last_day));
    return span;
}

SampleTerm read_term(const SampleTable& table, std::string_view file) {
    SampleTerm term{read_span(table, "Saturday"), {}};
    for (const toml::table* item : table.tables("holidays"))
        term.holidays.push_back(read_span(
            SampleTable(*item, file, {"name", "first", "first_day", "last", "last_day"}), "Friday"));
    return term;
}

SampleGroup read_group(const SampleTable& table, std::string_view file) {
    SampleGroup group;
    group.name = table.require<std::string>("name");
    group.remarks = text(table, "remarks");
    group.weekday = table.weekday("day");
    group.lesson = {table.time("at"), std::chrono::minutes(table.get<std::int64_t>("minutes").value_or(30)),
                    text(table, "room"), 1};
    group.routine = text(table, "routine");
    for (const toml::table* item : table.tables("members")) {
        const SampleTable member(*item, file, {"name", "from", "until"});
        group.members.push_back(
            {member.require<std::string>("name"), member.week_if("from"), member.week_if("until")});
    }
    return group;
}

std::vector<SampleNote> read_notes(const SampleTable& top, std::string_view key, std::string_view file) {
    std::vector<SampleNote> notes;
    for (const toml::table* item : top.tables(key)) {
        const SampleTable note(*item, file, {"done", "next"});
        notes.push_back({note.texts("done"), note.require<std::string>("next")});
        if (notes.back().done.empty()) note.refuse("done", "is missing.");
    }
    return notes;
}

SampleMouthpiece read_mouthpiece(const SampleTable& table) {
    SampleMouthpiece mouthpiece;
    mouthpiece.record.mark = table.require<std::string>("mark");
    mouthpiece.record.size = text(table, "size");
    mouthpiece.record.kept_in = text(table, "kept_in");
    mouthpiece.record.condition = text(table, "condition");
    mouthpiece.owner = text(table, "owner");
    mouthpiece.horn = text(table, "horn");
    return mouthpiece;
}

SampleLoan read_loan(const SampleTable& table) {
    return {table.require<std::string>("horn"),
            table.require<std::string>("student"),
            text(table, "mouthpiece"),
            table.week("from"),
            table.week_if("until"),
            table.week_if("due"),
            table.week_if("signed"),
            text(table, "condition_out"),
            text(table, "condition_in"),
            text(table, "accessories")};
}

SampleUpkeep read_upkeep(const SampleTable& table) {
    SampleUpkeep upkeep;
    const auto work = studio::parse_work(table.require<std::string>("work"));
    if (!work) table.refuse("work", "is no kind of upkeep.");
    upkeep.work = *work;
    upkeep.what = text(table, "what");
    upkeep.by = text(table, "by");
    upkeep.disinfected = table.get<bool>("disinfected").value_or(false);
    if (const auto cost = table.get<double>("cost"))
        upkeep.cost = studio::Money{std::llround(*cost * 100.0), "EUR"};
    upkeep.mark = table.require<std::string>("on");
    upkeep.noted_week = table.week("noted");
    upkeep.done_week = table.week_if("done");
    upkeep.due_week = table.week_if("due_again");
    return upkeep;
}

void read_lending(const toml::table& root, SampleBook& book) {
    constexpr std::string_view file = "lending.toml";
    const SampleTable top(root, file, {"mouthpiece", "loan", "upkeep"});
    for (const toml::table* item : top.tables("mouthpiece"))
        book.mouthpieces.push_back(read_mouthpiece(
            SampleTable(*item, file, {"mark", "size", "horn", "owner", "kept_in", "condition"})));
    for (const toml::table* item : top.tables("loan"))
        book.loans.push_back(
            read_loan(SampleTable(*item, file,
                                  {"horn", "student", "mouthpiece", "from", "until", "due", "signed",
                                   "condition_out", "condition_in", "accessories"})));
    for (const toml::table* item : top.tables("upkeep"))
        book.upkeep.push_back(read_upkeep(SampleTable(
            *item, file, {"on", "work", "what", "by", "cost", "noted", "done", "due_again", "disinfected"})));
}

}  // namespace

const std::vector<SampleNote>& SampleNotes::of(studio::Level level) const {
    switch (level) {
        case studio::Level::beginner:
            return beginner;
        case studio::Level::middle:
            return middle;
        case studio::Level::advanced:
            break;
    }
    return advanced;
}

SampleBook read_sample_book(const toml::table& timetable, const toml::table& lending,
                            const toml::table& notes) {
    SampleBook book;
    constexpr std::string_view week = "timetable.toml";
    const SampleTable top(timetable, week, {"term", "group"});
    for (const toml::table* item : top.tables("term"))
        book.terms.push_back(read_term(
            SampleTable(*item, week, {"name", "first", "first_day", "last", "last_day", "holidays"}), week));
    for (const toml::table* item : top.tables("group"))
        book.groups.push_back(
            read_group(SampleTable(*item, week,
                                   {"name", "remarks", "day", "at", "minutes", "room", "routine", "members"}),
                       week));
    read_lending(lending, book);
    constexpr std::string_view said = "notes.toml";
    const SampleTable words(notes, said,
                            {"beginner", "middle", "advanced", "group", "private_remarks", "reasons"});
    book.notes = {read_notes(words, "beginner", said), read_notes(words, "middle", said),
                  read_notes(words, "advanced", said), read_notes(words, "group", said),
                  words.texts("private_remarks"),      words.texts("reasons")};
    return book;
}

}  // namespace lowledger::batch
