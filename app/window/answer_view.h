#pragma once

#include <wx/scrolwin.h>

#include "app/window/drawing.h"
#include "app/window/paragraph.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// The live answer beside a tuning sheet and on the settings: what the teacher should know, the slide rules,
/// the lean chart, and which reading would help most.
class AnswerView : public wxScrolledWindow {
  public:
    AnswerView(wxWindow* parent, const Tools& tools, desk::ChartNotes notes);

    void refresh();

  private:
    const Tools& tools_;
    desk::ChartNotes notes_;
    Paragraph* warnings_;
    Drawing* rules_;
    Drawing* chart_;
    Paragraph* next_;
};

}  // namespace lowledger::window
