#pragma once

#include <wx/scrolwin.h>
#include <wx/stattext.h>

#include "app/window/drawing.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// The live answer beside a tuning sheet and on the settings: what the teacher should know, the slide rules,
/// the lean chart, and which reading would help most.
class AnswerView : public wxScrolledWindow {
  public:
    AnswerView(wxWindow* parent, const Tools& tools, desk::ChartNotes notes);

    void refresh();

  private:
    void put(wxStaticText& line, const std::string& text);
    void on_size(wxSizeEvent& event);

    const Tools& tools_;
    desk::ChartNotes notes_;
    wxStaticText* warnings_;
    Drawing* rules_;
    Drawing* chart_;
    wxStaticText* next_;
};

}  // namespace lowledger::window
