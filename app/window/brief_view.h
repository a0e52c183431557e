#pragma once

#include <vector>
#include <wx/scrolwin.h>
#include <wx/stattext.h>

#include "app/desk/day.h"

namespace lowledger::window {

/// Headings with lines under them, to read before a lesson. Scrolls by keys.
class BriefView : public wxScrolledWindow {
  public:
    BriefView(wxWindow* parent, const std::string& name);

    void show(const std::vector<desk::BriefPart>& parts);

  private:
    struct Line {
        wxStaticText* field;
        wxString text;
    };
    void add(wxStaticText* line, const std::string& text, int above);
    void wrap();

    std::vector<desk::BriefPart> parts_;
    std::vector<Line> lines_;
    int wrapped_to_ = 0;
};

}  // namespace lowledger::window
