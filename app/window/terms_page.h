#pragma once

#include <vector>
#include <wx/notebook.h>
#include <wx/stattext.h>

#include "app/window/place_page.h"
#include "app/window/table_panel.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// A term's page: its timetable, lessons and holidays, and the groups; each a table.
class TermsPage : public PlacePage {
  public:
    TermsPage(wxWindow* parent, const Tools& tools);

    [[nodiscard]] bool has_subject() const override { return tools_.desk.term().has_value(); }
    void refresh(const desk::News& news) override;
    void focus_section() override;

  private:
    const Tools& tools_;
    wxStaticText* name_;
    wxStaticText* days_;
    wxNotebook* sections_;
    /// In the order of the sections.
    std::vector<TablePanel*> tables_;
};

}  // namespace lowledger::window
