#pragma once

#include <wx/panel.h>
#include <wx/stattext.h>

#include "app/window/listing_view.h"
#include "app/window/paragraph.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// What an answer rests on: how much was read, what is believed of every note and how much of that is
/// readings, the figures it was made with,
/// and how much better other settings can be.
class BasisPanel : public wxPanel {
  public:
    BasisPanel(wxWindow* parent, const Tools& tools);

    void refresh();

  private:
    [[nodiscard]] desk::Listing beliefs() const;
    [[nodiscard]] desk::Listing figures() const;

    const Tools& tools_;
    ListingView* beliefs_;
    ListingView* figures_;
    Paragraph* certificate_;
};

}  // namespace lowledger::window
