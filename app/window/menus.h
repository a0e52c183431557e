#pragma once

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <wx/frame.h>
#include <wx/menu.h>

#include "app/desk/action.h"
#include "app/desk/desk.h"

namespace lowledger::window {

/// The menu bar of a frame, made from the registry of actions: texts, keys, and what may run now.
class Menus {
  public:
    Menus(wxFrame& frame, desk::Desk& desk);
    ~Menus();
    Menus(const Menus&) = delete;
    Menus& operator=(const Menus&) = delete;

    /// Brings what stands in the menus, texts and what may run up to date.
    void refresh();
    /// Called before an action runs; true when that was all there is to do.
    void before(std::function<bool(const desk::Action&)> check) { before_ = std::move(check); }
    /// Called after an action has run.
    void after(std::function<void()> show) { after_ = std::move(show); }
    /// Runs an action if it may run now; what it refuses is shown as a sentence.
    void run(std::string_view id);
    /// Runs the action that has this key with Ctrl; false if none has.
    bool run_key(const wxKeyEvent& event);
    /// An item of a context menu that is no action of the registry: it changes only how things are shown.
    struct Extra {
        wxString text;
        std::function<void()> run;
    };
    /// A menu of these actions, and under a line the extras, at the mouse or, by keyboard, at the control.
    void pop_up(wxWindow& over, const std::vector<std::string_view>& ids,
                const std::vector<Extra>& extras = {});

  private:
    void on_menu(wxCommandEvent& event);
    void run(const desk::Action& action);
    void take_down(desk::Menu which);
    void put_up(desk::Menu which, const std::vector<const desk::Action*>& shown_actions);

    wxFrame& frame_;
    desk::Desk& desk_;
    std::function<bool(const desk::Action&)> before_;
    std::function<void()> after_;
    std::map<int, const desk::Action*> by_id_;
    std::map<desk::Menu, wxMenu*> menus_;
    /// Every item, whether it stands in its menu or not.
    std::map<std::string_view, std::unique_ptr<wxMenuItem>> items_;
    std::map<desk::Menu, std::vector<const desk::Action*>> standing_;
};

}  // namespace lowledger::window
