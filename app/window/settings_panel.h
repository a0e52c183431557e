#pragma once

#include <vector>
#include <wx/button.h>
#include <wx/dataview.h>
#include <wx/notebook.h>
#include <wx/panel.h>

#include "app/window/answer_view.h"
#include "app/window/basis_panel.h"
#include "app/window/empty_page.h"
#include "app/window/hand_panel.h"
#include "app/window/paragraph.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// The section 'Settings': where each slide belongs, how the notes lean then, and what remains to do; as
/// pictures and as a table. Its two actions are 'Slides moved' and 'Print handout'.
class SettingsPanel : public wxPanel {
  public:
    SettingsPanel(wxWindow* parent, const Tools& tools);

    void refresh();
    /// What remains (0), the teacher's hand (1), what the settings rest on (2); the keys go there.
    void show_beside(int part);

  private:
    void refresh_table();
    void refresh_remains();

    const Tools& tools_;
    EmptyPage* empty_;
    wxPanel* full_;
    Paragraph* summary_;
    AnswerView* answer_;
    wxDataViewListCtrl* table_;
    wxScrolledWindow* remaining_;
    Paragraph* remains_;
    wxNotebook* beside_;
    HandPanel* hand_;
    BasisPanel* basis_;
    wxButton* moved_;
    wxButton* print_;
};

}  // namespace lowledger::window
