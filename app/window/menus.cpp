#include "app/window/menus.h"

#include "app/window/errors.h"
#include "app/window/text.h"

namespace lowledger::window {
namespace {

wxString title(desk::Menu menu) {
    switch (menu) {
        case desk::Menu::studio:
            return _("&Studio");
        case desk::Menu::edit:
            return _("&Edit");
        case desk::Menu::student:
            return _("St&udent");
        case desk::Menu::horn:
            return _("&Horn");
        case desk::Menu::sheet:
            return _("&Tuning");
        case desk::Menu::routine:
            return _("&Routine");
        case desk::Menu::print:
            return _("&Print");
        case desk::Menu::go:
            return _("&Go");
        case desk::Menu::help:
            return _("He&lp");
        case desk::Menu::none:
            break;
    }
    return {};
}

/// In the form the toolkit reads after a tab: as the registry has it.
wxString item_text(const desk::Action& action, const desk::Desk& desk) {
    wxString text = shown(desk::menu_text(action, desk));
    if (!action.key.empty()) text += "\t" + shown(action.key);
    return text;
}

}  // namespace

Menus::Menus(wxFrame& frame, desk::Desk& desk) : frame_(frame), desk_(desk) {
    auto* bar = new wxMenuBar;
    for (const auto& action : desk::actions()) {
        if (action.menu == desk::Menu::none) continue;
        auto& menu = menus_[action.menu];
        if (menu == nullptr) {
            menu = new wxMenu;
            bar->Append(menu, title(action.menu));
        }
        const int id = action.id == "studio.close" ? static_cast<int>(wxID_EXIT) : wxWindow::NewControlId();
        items_[action.id] = std::make_unique<wxMenuItem>(nullptr, id, item_text(action, desk_));
        by_id_[id] = &action;
        frame_.Bind(wxEVT_MENU, &Menus::on_menu, this, id);
    }
    frame_.SetMenuBar(bar);
    refresh();
}

Menus::~Menus() {
    // The bar would delete the items that stand in it.
    for (const auto& [menu, standing] : standing_)
        take_down(menu);
}

void Menus::take_down(desk::Menu which) {
    auto& menu = *menus_.at(which);
    while (menu.GetMenuItemCount() > 0) {
        auto* item = menu.FindItemByPosition(0);
        if (item->IsSeparator())
            menu.Delete(item);
        else
            menu.Remove(item);
    }
}

void Menus::put_up(desk::Menu which, const std::vector<const desk::Action*>& shown_actions) {
    if (standing_[which] == shown_actions) return;
    take_down(which);
    auto& menu = *menus_.at(which);
    for (const auto* action : shown_actions) {
        if (action->starts_group && menu.GetMenuItemCount() > 0) menu.AppendSeparator();
        menu.Append(items_.at(action->id).get());
    }
    standing_[which] = shown_actions;
}

void Menus::refresh() {
    std::map<desk::Menu, std::vector<const desk::Action*>> shown_actions;
    for (const auto& action : desk::actions())
        if (items_.contains(action.id) && desk::is_shown(action, desk_))
            shown_actions[action.menu].push_back(&action);
    for (const auto& [menu, actions] : shown_actions) {
        put_up(menu, actions);
        for (const auto* action : actions) {
            auto& item = *items_.at(action->id);
            item.Enable(action->may_run(desk_));
            const wxString text = item_text(*action, desk_);
            if (item.GetItemLabel() != text) item.SetItemLabel(text);
        }
    }
}

void Menus::run(std::string_view id) {
    run(desk::action(id));
}

bool Menus::run_key(const wxKeyEvent& event) {
    if (!event.ControlDown()) return false;
    for (const auto& action : desk::actions()) {
        wxAcceleratorEntry key;
        if (action.key.empty() || !desk::is_shown(action, desk_) || !key.FromString(shown(action.key)))
            continue;
        if (key.GetFlags() != event.GetModifiers() || key.GetKeyCode() != event.GetKeyCode()) continue;
        run(action);
        return true;
    }
    return false;
}

void Menus::run(const desk::Action& action) {
    if (before_ && before_(action)) return;
    if (!desk::is_shown(action, desk_) || !action.may_run(desk_)) return;
    told(&frame_, [&] { action.run(desk_); });
    if (after_) after_();
    refresh();
}

void Menus::on_menu(wxCommandEvent& event) {
    run(*by_id_.at(event.GetId()));
}

void Menus::pop_up(wxWindow& over, const std::vector<std::string_view>& ids,
                   const std::vector<Extra>& extras) {
    wxMenu menu;
    for (const auto id : ids) {
        const auto& action = desk::action(id);
        const int number = items_.at(id)->GetId();
        menu.Append(number, item_text(action, desk_))->Enable(action.may_run(desk_));
    }
    if (!ids.empty() && !extras.empty()) menu.AppendSeparator();
    for (const auto& extra : extras) {
        const auto* item = menu.Append(wxID_ANY, extra.text);
        menu.Bind(
            wxEVT_MENU, [&extra](wxCommandEvent&) { extra.run(); }, item->GetId());
    }
    over.PopupMenu(&menu);
}

}  // namespace lowledger::window
