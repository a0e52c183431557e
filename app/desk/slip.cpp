#include "app/desk/slip.h"

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace lowledger::desk {
namespace {

constexpr std::string_view blanks = " \t\r\n";

std::string trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(blanks);
    if (first == std::string_view::npos) return {};
    return std::string(text.substr(first, text.find_last_not_of(blanks) - first + 1));
}

std::string by_lines(const std::vector<std::string>& keys) {
    std::string out;
    for (const auto& key : keys)
        out += (out.empty() ? "" : "\n") + key;
    return out;
}

}  // namespace

std::string SlipAnswers::text(std::string_view id) const {
    const auto found = values_.find(id);
    if (found == values_.end()) throw std::logic_error("the slip has no field " + std::string(id));
    return trimmed(found->second);
}

studio::Date SlipAnswers::date(std::string_view id) const {
    const auto day = date_or_none(id);
    if (!day) throw std::logic_error("field " + std::string(id) + " holds no date");
    return *day;
}

std::optional<studio::Date> SlipAnswers::date_or_none(std::string_view id) const {
    const std::string written = text(id);
    if (written.empty()) return std::nullopt;
    const auto day = studio::Date::parse_iso(written);
    if (!day) throw std::logic_error("field " + std::string(id) + " holds no date");
    return day;
}

std::vector<std::string> SlipAnswers::several(std::string_view id) const {
    const std::string written = text(id);
    std::vector<std::string> keys;
    for (std::size_t at = 0; at < written.size();) {
        const auto end = std::min(written.find('\n', at), written.size());
        keys.push_back(written.substr(at, end - at));
        at = end + 1;
    }
    return keys;
}

Slip& Slip::note(std::string sentence) {
    note_ = std::move(sentence);
    return *this;
}

Slip& Slip::text(std::string id, std::string label, std::string start, std::string hint) {
    fields_.push_back({std::move(id), Kind::text, std::move(label), std::move(start), std::move(hint), {}});
    return *this;
}

Slip& Slip::lines(std::string id, std::string label, std::string start) {
    fields_.push_back({std::move(id), Kind::lines, std::move(label), std::move(start), {}, {}});
    return *this;
}

Slip& Slip::date(std::string id, std::string label, studio::Date start) {
    fields_.push_back({std::move(id), Kind::date, std::move(label), start.iso(), {}, {}});
    return *this;
}

Slip& Slip::date_or_none(std::string id, std::string label, std::optional<studio::Date> start) {
    fields_.push_back(
        {std::move(id), Kind::date_or_none, std::move(label), start ? start->iso() : std::string(), {}, {}});
    return *this;
}

Slip& Slip::check(std::string id, std::string label, bool start) {
    fields_.push_back({std::move(id), Kind::check, std::move(label), start ? "yes" : "", {}, {}});
    return *this;
}

Slip& Slip::choice(std::string id, std::string label, std::vector<SlipChoice> choices,
                   std::string_view start) {
    if (choices.empty()) throw std::logic_error("field " + id + " has nothing to choose from");
    const bool is_one = std::ranges::any_of(choices, [&](const auto& choice) { return choice.key == start; });
    std::string first = is_one ? std::string(start) : choices.front().key;
    fields_.push_back(
        {std::move(id), Kind::choice, std::move(label), std::move(first), {}, std::move(choices)});
    return *this;
}

Slip& Slip::several(std::string id, std::string label, std::vector<SlipChoice> choices,
                    const std::vector<std::string>& start) {
    fields_.push_back(
        {std::move(id), Kind::several, std::move(label), by_lines(start), {}, std::move(choices)});
    return *this;
}

Slip& Slip::boxes(std::string id, std::string label, std::vector<SlipChoice> choices,
                  const std::vector<std::string>& start) {
    several(std::move(id), std::move(label), std::move(choices), start);
    fields_.back().kind = Kind::boxes;
    return *this;
}

Slip& Slip::only_with(std::string id, std::string key) {
    fields_.back().only_with_choice = std::move(id);
    fields_.back().only_with_key = std::move(key);
    return *this;
}

Slip& Slip::must(Check check) {
    checks_.push_back(std::move(check));
    return *this;
}

Slip& Slip::needs(std::string id, std::string sentence) {
    return must([id = std::move(id),
                 sentence = std::move(sentence)](const SlipAnswers& answers) -> std::optional<SlipProblem> {
        if (answers.empty(id)) return SlipProblem{id, sentence};
        return std::nullopt;
    });
}

std::optional<SlipProblem> Slip::problem(const SlipAnswers& answers) const {
    for (const auto& check : checks_)
        if (auto found = check(answers)) return found;
    return std::nullopt;
}

SlipAnswers Slip::filled_in(const std::map<std::string, std::string>& texts) const {
    std::map<std::string, std::string, std::less<>> values;
    for (const auto& field : fields_)
        values.emplace(field.id, field.start);
    for (const auto& [id, text] : texts) {
        const auto field = std::ranges::find(fields_, id, &Field::id);
        if (field == fields_.end()) throw std::logic_error("the slip has no field " + id);
        if (field->kind == Kind::choice &&
            std::ranges::find(field->choices, text, &SlipChoice::key) == field->choices.end())
            throw std::logic_error(std::string("field ").append(id).append(" has no choice ").append(text));
        values[id] = text;
    }
    return SlipAnswers(std::move(values));
}

}  // namespace lowledger::desk
