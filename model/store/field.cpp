#include "model/store/field.h"

#include "model/units/refusal.h"

namespace lowledger::store {
namespace {

template <typename Choice, typename Parse>
void take_choice(Statement& row, int& column, Choice& field, Parse parse) {
    const std::optional<Choice> value = parse(row.text(column));
    if (!value) row.damaged(column);
    field = *value;
    ++column;
}

template <typename Choice, typename Parse>
void take_choice(Statement& row, int& column, std::optional<Choice>& field, Parse parse) {
    field = row.optional(column, [&](int at) {
        const std::optional<Choice> value = parse(row.text(at));
        if (!value) row.damaged(at);
        return *value;
    });
    ++column;
}

template <typename Use>
void each_part(const std::string& text, char between, Use use) {
    for (std::size_t at = 0; at < text.size();) {
        const auto end = std::min(text.find(between, at), text.size());
        use(text.substr(at, end - at));
        at = end + 1;
    }
}

}  // namespace

std::string as_lines(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines) {
        if (line.empty() || line.find('\n') != std::string::npos) {
            throw units::Refusal(
                "The routine was not filed: each of its steps and horns is one line of text. Leave the empty "
                "ones out.");
        }
        if (!text.empty()) text += '\n';
        text += line;
    }
    return text;
}

std::vector<std::string> from_lines(const std::string& text) {
    std::vector<std::string> lines;
    each_part(text, '\n', [&](std::string line) { lines.push_back(std::move(line)); });
    return lines;
}

std::string as_words(const std::vector<studio::Level>& levels) {
    std::string text;
    for (const studio::Level level : levels) {
        if (!text.empty()) text += ' ';
        text += studio::file_word(level);
    }
    return text;
}

std::optional<std::vector<studio::Level>> levels_from_words(const std::string& text) {
    std::vector<studio::Level> levels;
    bool known = true;
    each_part(text, ' ', [&](const std::string& word) {
        if (const auto level = studio::parse_level(word)) {
            levels.push_back(*level);
        } else {
            known = false;
        }
    });
    if (!known) return std::nullopt;
    return levels;
}

void take(Statement& row, int& column, std::string& field) {
    field = row.text(column++);
}
void take(Statement& row, int& column, bool& field) {
    field = row.flag(column++);
}
void take(Statement& row, int& column, int& field) {
    field = row.small(column++);
}
void take(Statement& row, int& column, studio::Date& field) {
    field = row.date(column++);
}
void take(Statement& row, int& column, studio::TimeOfDay& field) {
    const int minutes = row.small(column);
    if (minutes < 0 || minutes >= 24 * 60) row.damaged(column);
    field = studio::TimeOfDay::from_minutes(minutes);
    ++column;
}
void take(Statement& row, int& column, std::chrono::minutes& field) {
    field = std::chrono::minutes(row.small(column++));
}
void take(Statement& row, int& column, studio::Weekdays& field) {
    field = studio::Weekdays::from_bits(row.small(column++));
}
void take(Statement& row, int& column, std::vector<std::string>& field) {
    field = from_lines(row.text(column++));
}
void take(Statement& row, int& column, std::vector<studio::Level>& field) {
    auto levels = levels_from_words(row.text(column));
    if (!levels) row.damaged(column);
    field = std::move(*levels);
    ++column;
}
void take(Statement& row, int& column, std::optional<studio::Money>& field) {
    field = row.optional(column, [&](int at) {
        return studio::Money{.cents = row.integer(at), .currency = row.text(at + 1)};
    });
    column += 2;
}
void take(Statement& row, int& column, std::optional<studio::Date>& field) {
    field = row.optional_date(column++);
}
void take(Statement& row, int& column, std::optional<std::chrono::minutes>& field) {
    field = row.optional(column++, [&](int at) { return std::chrono::minutes(row.small(at)); });
}
void take(Statement& row, int& column, std::optional<units::Cents>& field) {
    field = row.optional(column++, [&](int at) { return units::Cents(row.real(at)); });
}
void take(Statement& row, int& column, studio::Level& field) {
    take_choice(row, column, field, studio::parse_level);
}
void take(Statement& row, int& column, std::optional<units::Accidentals>& field) {
    take_choice(row, column, field, studio::parse_accidentals);
}
void take(Statement& row, int& column, std::optional<studio::AtHome>& field) {
    take_choice(row, column, field, studio::parse_at_home);
}
void take(Statement& row, int& column, studio::StudentEvent::Kind& field) {
    take_choice(row, column, field, studio::parse_event_kind);
}
void take(Statement& row, int& column, studio::Upkeep::Work& field) {
    take_choice(row, column, field, studio::parse_work);
}
void take(Statement& row, int& column, studio::Lesson::State& field) {
    take_choice(row, column, field, studio::parse_lesson_state);
}
void take(Statement& row, int& column, studio::Attendance::State& field) {
    take_choice(row, column, field, studio::parse_attendance);
}
void take(Statement& row, int& column, studio::Assignment::End& field) {
    take_choice(row, column, field, studio::parse_assignment_end);
}

}  // namespace lowledger::store
