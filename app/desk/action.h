#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace lowledger::desk {

class Desk;

/// The menu an action stands in. `none`: only a key.
enum class Menu { studio, edit, student, horn, sheet, routine, print, go, help, none };

/// Something the user can do. The registry of these feeds menus, keys, context menus and the tests.
struct Action {
    /// Never shown; what tests and settings call it by: "student.add".
    std::string_view id;
    Menu menu = Menu::none;
    /// As the menu shows it, `&` before the mnemonic, "…" at the end when it asks for more.
    std::string_view text;
    /// "Ctrl+Shift+Z", "Alt+1", "F2"; empty for none.
    std::string_view key;
    /// It changes what the studio file holds, so that undo takes it back.
    bool edits = false;
    /// A line stands above it in the menu.
    bool starts_group = false;
    std::function<bool(const Desk&)> may_run;
    /// Throws Refusal where it cannot; the caller shows the sentence.
    std::function<void(Desk&)> run;
    /// It stands in the menu and its key works; empty: always. Actions that are never shown together may have
    /// the same key.
    std::function<bool(const Desk&)> shown = nullptr;
    /// The menu text when it says more than `text`, as "Undo …" does; empty: `text`.
    std::function<std::string(const Desk&)> full_text = nullptr;
};

/// All actions, in the order of the menus.
const std::vector<Action>& actions();
/// Throws std::logic_error for an id that none has.
const Action& action(std::string_view id);
/// Whether it stands in the menu now.
bool is_shown(const Action& action, const Desk& desk);
/// The menu text as it stands now.
std::string menu_text(const Action& action, const Desk& desk);

/// The parts of the registry.
std::vector<Action> studio_actions();
std::vector<Action> edit_actions();
std::vector<Action> student_actions();
std::vector<Action> horn_actions();
std::vector<Action> loan_actions();
std::vector<Action> upkeep_actions();
std::vector<Action> more_actions();
std::vector<Action> sheet_actions();
std::vector<Action> pass_actions();
std::vector<Action> routine_actions();
std::vector<Action> print_actions();
std::vector<Action> book_print_actions();
std::vector<Action> go_actions();
std::vector<Action> help_actions();

}  // namespace lowledger::desk
