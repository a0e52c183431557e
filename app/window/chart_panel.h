#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>
#include <wx/choice.h>
#include <wx/panel.h>
#include <wx/scrolwin.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include "app/desk/note_chart.h"
#include "app/window/drawing.h"
#include "app/window/listing_view.h"
#include "app/window/paragraph.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// A chart of notes on staves or as a table, a field that finds a note in it, and every way to play the note
/// looked at.
class ChartPanel : public wxPanel {
  public:
    ChartPanel(wxWindow* parent, const Tools& tools);

    /// `chart` stays with the caller until another is shown. `players` are those whose leans can be shown;
    /// without any the chart is of a kind as built.
    void show(desk::NoteChart& chart, const std::vector<std::string>& players,
              std::optional<std::size_t> player);
    /// Another player was chosen, empty for as built; the caller shows the chart anew.
    void on_player(std::function<void(std::optional<std::size_t>)> listener) {
        player_now_ = std::move(listener);
    }
    void focus_find() { find_->SetFocus(); }

  private:
    wxSizer* make_head();
    void make_body();
    void refresh();
    void refresh_note();
    void show_drawing();
    void bring_into_sight();
    void find_typed();
    void on_find_key(wxKeyEvent& event);
    void on_click(wxMouseEvent& event);

    const Tools& tools_;
    desk::NoteChart* chart_ = nullptr;
    wxTextCtrl* find_ = nullptr;
    wxChoice* readers_ = nullptr;
    wxStaticText* players_label_ = nullptr;
    wxChoice* players_ = nullptr;
    Paragraph* problem_ = nullptr;
    Paragraph* about_ = nullptr;
    wxScrolledWindow* staves_ = nullptr;
    Drawing* drawing_ = nullptr;
    ListingView* table_ = nullptr;
    wxStaticText* ways_heading_ = nullptr;
    Paragraph* why_ = nullptr;
    ListingView* ways_ = nullptr;
    std::function<void(std::optional<std::size_t>)> player_now_;
};

}  // namespace lowledger::window
