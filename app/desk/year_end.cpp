#include "app/desk/year_end.h"

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <map>
#include <set>

#include "app/desk/lending.h"
#include "app/desk/term_lists.h"
#include "model/studio/due.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using studio::Upkeep;
using words::Sentence;

/// Rows of several kinds of records are told apart by their last digit.
constexpr std::int64_t kinds = 10;

std::int64_t row_id(const YearsEndItem& item) {
    const auto number = std::visit([](const auto& record) { return record.id.number; }, item);
    return number * kinds + static_cast<std::int64_t>(item.index());
}

std::vector<YearsEndItem> items_of(const YearsEnd& end) {
    std::vector<YearsEndItem> items;
    items.insert(items.end(), end.out.begin(), end.out.end());
    items.insert(items.end(), end.unchecked.begin(), end.unchecked.end());
    items.insert(items.end(), end.to_repair.begin(), end.to_repair.end());
    items.insert(items.end(), end.students.begin(), end.students.end());
    return items;
}

bool checked_lately(const std::vector<Upkeep>& upkeep, studio::Date today) {
    return std::ranges::any_of(upkeep, [&](const Upkeep& work) {
        return work.work == Upkeep::Work::checked && work.done_on && today - *work.done_on < check_holds_days;
    });
}

/// Writes the rows, with the names read once.
class RowWriter {
  public:
    explicit RowWriter(const Desk& desk) : words_(desk.words()) {
        for (const auto& student : desk.file().students())
            names_[student.id] = student.name;
        for (const auto& horn : desk.file().horns())
            marks_[horn.id] = horn.mark;
    }

    [[nodiscard]] ListingRow row(const YearsEndItem& item) const {
        auto cells = std::visit([this](const auto& record) { return cells_of(record); }, item);
        cells.front().order = static_cast<double>(item.index());
        return {row_id(item), std::move(cells), false};
    }

  private:
    [[nodiscard]] std::vector<ListingCell> cells_of(const studio::Loan& loan) const {
        const auto since = words::date_text(words_, loan.from);
        std::string now = words_.say(Sentence::year_out_since, {{"date", since}});
        if (loan.due)
            now = words_.say(Sentence::year_out_due,
                             {{"date", since}, {"due", words::date_text(words_, *loan.due)}});
        return {words_.say(Sentence::year_to_come_back), marks_.at(loan.horn), names_.at(loan.student), now};
    }
    [[nodiscard]] std::vector<ListingCell> cells_of(const studio::Horn& horn) const {
        return {words_.say(Sentence::year_to_check), horn.mark, std::string(), horn.condition};
    }
    [[nodiscard]] std::vector<ListingCell> cells_of(const Upkeep& work) const {
        return {words_.say(Sentence::year_to_repair), marks_.at(*work.horn), std::string(),
                work.what.empty() ? work_name(words_, work.work) : work.what};
    }
    [[nodiscard]] std::vector<ListingCell> cells_of(const studio::Student& student) const {
        const auto level = words::level_name(words_, student.level);
        return {words_.say(Sentence::year_moves_up), std::string(), student.name,
                student.year.empty() ? level : student.year + " · " + level};
    }

    const words::Words& words_;
    std::map<studio::StudentId, std::string> names_;
    std::map<studio::HornId, std::string> marks_;
};

}  // namespace

YearsEnd years_end(const Desk& desk) {
    YearsEnd end{.out = desk.file().loans_out(), .unchecked = {}, .to_repair = {}, .students = {}};
    std::set<studio::HornId> out;
    for (const auto& loan : end.out)
        out.insert(loan.horn);
    for (const auto& horn : desk.file().horns()) {
        if (horn.archived) continue;
        const auto upkeep = desk.file().upkeep(horn.id);
        if (!horn.owner && !out.contains(horn.id) && !checked_lately(upkeep, desk.today()))
            end.unchecked.push_back(horn);
        for (const auto& work : upkeep)
            if (!work.done_on) end.to_repair.push_back(work);
    }
    for (const auto& student : desk.file().students())
        if (!student.archived) end.students.push_back(student);
    return end;
}

Listing years_end_listing(const Desk& desk) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {{words.say(Sentence::year_what), false, true},
                       {words.say(Sentence::column_horn), false, true},
                       {words.say(Sentence::column_student), false, true},
                       {words.say(Sentence::column_now)}};
    if (!desk.has_studio()) return listing;
    const RowWriter writer(desk);
    for (const auto& item : items_of(years_end(desk)))
        listing.rows.push_back(writer.row(item));
    return listing;
}

std::string years_end_summary(const Desk& desk) {
    if (!desk.has_studio()) return {};
    const auto end = years_end(desk);
    return desk.words().say(Sentence::years_end_summary, {{"out", std::to_string(end.out.size())},
                                                          {"unchecked", std::to_string(end.unchecked.size())},
                                                          {"repair", std::to_string(end.to_repair.size())},
                                                          {"students", std::to_string(end.students.size())}});
}

std::optional<YearsEndItem> chosen_item(const Desk& desk) {
    if (!at_terms(desk, Section::years_end)) return std::nullopt;
    const auto items = items_of(years_end(desk));
    const auto chosen = desk.chosen(Table::years_end);
    const auto found =
        std::ranges::find_if(items, [&](const YearsEndItem& item) { return row_id(item) == chosen; });
    if (found != items.end()) return *found;
    return items.empty() ? std::nullopt : std::optional(items.front());
}

std::string next_year(std::string_view year) {
    constexpr std::string_view digits = "0123456789";
    const auto at = year.find_first_of(digits);
    if (at == std::string_view::npos) return std::string(year);
    const auto end = std::min(year.find_first_not_of(digits, at), year.size());
    int number = 0;
    const auto [stopped, error] = std::from_chars(year.data() + at, year.data() + end, number);
    constexpr int most = 9999;
    if (error != std::errc() || stopped != year.data() + end || number > most) return std::string(year);
    return std::string(year.substr(0, at)).append(std::to_string(number + 1)).append(year.substr(end));
}

}  // namespace lowledger::desk
