#pragma once

#include <wx/dataview.h>
#include <wx/notebook.h>
#include <wx/stattext.h>

#include "app/window/chart_panel.h"
#include "app/window/place_page.h"
#include "app/window/table_panel.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// A horn's page: what is known of it, who plays it, where its slides stand and stood, its chart, loans and
/// upkeep.
class HornPage : public PlacePage {
  public:
    HornPage(wxWindow* parent, const Tools& tools);

    [[nodiscard]] bool has_subject() const override { return tools_.desk.horn().has_value(); }
    void refresh(const desk::News& news) override;
    void focus_section() override;

  private:
    wxWindow* make_facts(wxWindow* parent);
    wxWindow* make_slides(wxWindow* parent);
    void refresh_facts();
    void refresh_slides();
    void refresh_chart();

    const Tools& tools_;
    wxStaticText* mark_;
    wxStaticText* about_;
    wxNotebook* sections_;
    wxPanel* facts_ = nullptr;
    wxDataViewListCtrl* players_ = nullptr;
    wxDataViewListCtrl* slides_ = nullptr;
    wxDataViewListCtrl* history_ = nullptr;
    ChartPanel* chart_ = nullptr;
    TablePanel* loans_ = nullptr;
    TablePanel* upkeep_ = nullptr;
};

}  // namespace lowledger::window
