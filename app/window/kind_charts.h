#pragma once

#include <memory>
#include <vector>
#include <wx/dialog.h>

#include "app/desk/kind_list.h"
#include "app/window/chart_panel.h"
#include "app/window/kind_picker.h"

namespace lowledger::window {

/// The chart of any kind, owned or not: the kinds at the left, the chart of the chosen one beside them.
class KindCharts : public wxDialog {
  public:
    KindCharts(wxWindow* parent, const Tools& tools);

  private:
    void show_kind(const horns::HornKind& kind);

    const Tools& tools_;
    desk::KindsOffered offered_;
    KindPicker picker_;
    std::unique_ptr<desk::NoteChart> chart_;
    ChartPanel* panel_;
};

}  // namespace lowledger::window
