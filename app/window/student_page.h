#pragma once

#include <functional>
#include <vector>
#include <wx/choice.h>
#include <wx/notebook.h>
#include <wx/stattext.h>

#include "app/window/empty_page.h"
#include "app/window/place_page.h"
#include "app/window/routine_page.h"
#include "app/window/settings_panel.h"
#include "app/window/sheet_panel.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// A student's page: who, how far on, which horn, and the sections 'Tuning sheet' and 'Settings'.
class StudentPage : public PlacePage {
  public:
    StudentPage(wxWindow* parent, const Tools& tools);

    [[nodiscard]] bool has_subject() const override { return tools_.desk.student().has_value(); }
    void refresh(const desk::News& news) override;
    void focus_section() override;
    void show_beside_settings(int part) { settings_->show_beside(part); }
    /// Hands over what a field still holds.
    void leave() { sheet_->leave(); }
    void on_typing(std::function<void()> listener) { sheet_->on_typing(std::move(listener)); }

  private:
    void refresh_head();

    const Tools& tools_;
    wxStaticText* name_;
    wxStaticText* about_;
    wxStaticText* horn_label_;
    wxChoice* horns_;
    EmptyPage* empty_;
    wxNotebook* sections_;
    SheetPanel* sheet_;
    SettingsPanel* settings_;
    RoutinePanel* routines_;
};

}  // namespace lowledger::window
