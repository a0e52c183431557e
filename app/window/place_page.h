#pragma once

#include <wx/panel.h>

#include "app/desk/desk.h"

namespace lowledger::window {

/// What stands beside the list of a place, or fills a place that has none.
class PlacePage : public wxPanel {
  public:
    using wxPanel::wxPanel;

    /// There is something to show: a record of the place is open, or the place needs none.
    [[nodiscard]] virtual bool has_subject() const = 0;
    /// Shows what has changed; called only for the place that is open.
    virtual void refresh(const desk::News& news) = 0;
    /// The keys go to the section that is shown.
    virtual void focus_section() = 0;
};

}  // namespace lowledger::window
