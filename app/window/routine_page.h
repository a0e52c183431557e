#pragma once

#include <wx/stattext.h>

#include "app/window/listing_view.h"
#include "app/window/paragraph.h"
#include "app/window/place_page.h"
#include "app/window/table_panel.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// A routine's page: what it is for, its steps, its music on a staff, and who has it now.
class RoutinePage : public PlacePage {
  public:
    RoutinePage(wxWindow* parent, const Tools& tools);

    [[nodiscard]] bool has_subject() const override;
    void refresh(const desk::News& news) override;
    void focus_section() override { who_->focus_rows(); }

  private:
    const Tools& tools_;
    wxStaticText* title_;
    Paragraph* text_;
    Drawing* music_;
    ListingView* who_;
};

/// The section 'Routines' of a student: what is given, what was practised, the pieces worked on.
class RoutinePanel : public wxPanel {
  public:
    RoutinePanel(wxWindow* parent, const Tools& tools);

    void refresh();
    void focus_rows() { given_->focus_rows(); }

  private:
    const Tools& tools_;
    TablePanel* given_;
    TablePanel* practice_;
    TablePanel* pieces_;
};

}  // namespace lowledger::window
