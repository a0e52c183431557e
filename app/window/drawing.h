#pragma once

#include <functional>
#include <string>
#include <wx/panel.h>

#include "app/window/painter.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"

namespace lowledger::window {

/// A panel that shows a drawing of the reports, laid out anew for the width it has. A screen reader is told
/// what it shows.
class Drawing : public wxPanel {
  public:
    using Layout = std::function<canvas::Page(units::Millimetres width)>;

    Drawing(wxWindow* parent, const canvas::Faces& faces, Scale scale = {});

    /// `name` says what the drawing is, `content` in words what can be seen.
    void show(Layout layout, const std::string& name, const std::string& content);
    void show_nothing();
    [[nodiscard]] const canvas::Page& page() const { return page_; }

  private:
    void lay_out();
    void on_paint(wxPaintEvent& event);
    void on_size(wxSizeEvent& event);

    const canvas::Faces& faces_;
    Scale scale_;
    Layout layout_;
    canvas::Page page_;
    int width_laid_out_ = -1;
};

}  // namespace lowledger::window
