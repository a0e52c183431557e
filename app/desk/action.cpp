#include "app/desk/action.h"

#include <algorithm>
#include <iterator>
#include <stdexcept>

namespace lowledger::desk {

const std::vector<Action>& actions() {
    static const std::vector<Action> all = [] {
        std::vector<Action> out;
        for (auto* const part : {studio_actions, edit_actions, student_actions, horn_actions, loan_actions,
                                 upkeep_actions, more_actions, sheet_actions, pass_actions, routine_actions,
                                 print_actions, book_print_actions, go_actions, help_actions})
            std::ranges::move(part(), std::back_inserter(out));
        return out;
    }();
    return all;
}

const Action& action(std::string_view id) {
    const auto found = std::ranges::find(actions(), id, &Action::id);
    if (found == actions().end()) throw std::logic_error("No action '" + std::string(id) + "'");
    return *found;
}

bool is_shown(const Action& action, const Desk& desk) {
    return !action.shown || action.shown(desk);
}

std::string menu_text(const Action& action, const Desk& desk) {
    if (action.full_text) return action.full_text(desk);
    return std::string(action.text);
}

}  // namespace lowledger::desk
