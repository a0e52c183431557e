#pragma once

#include <map>
#include <wx/button.h>
#include <wx/dialog.h>
#include <wx/gbsizer.h>
#include <wx/scrolwin.h>

#include "app/desk/pass_entry.h"
#include "app/window/commit_field.h"
#include "app/window/paragraph.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// A section pass being typed, by keyboard alone: a row a player, a field a note. Enter goes along a player's
/// notes and on to the next player, the arrow keys to the neighbours. It ends well only when every text in a
/// field was taken.
class PassDialog : public wxDialog {
  public:
    PassDialog(wxWindow* parent, const Tools& tools, const std::string& title, desk::PassEntry& pass);

    /// True when it was ended as done, false when it was thrown away.
    bool type();

  private:
    void make_rows();
    void make_head(wxGridBagSizer& grid);
    void make_row(wxGridBagSizer& grid, std::size_t player);
    CommitField* make_field(desk::PassCell cell, const std::string& name);
    void hand_over(desk::PassCell cell, const wxString& text, CommitField::By by);
    void go_on(desk::PassCell from);
    void on_key(wxKeyEvent& event, desk::PassCell cell);
    void focus(desk::PassCell cell);
    void show_state();
    void show_question(std::size_t player);
    void leave();
    void end_well();
    void throw_away();
    void take_room();

    const Tools& tools_;
    desk::PassEntry& pass_;
    wxScrolledWindow* rows_;
    wxStaticText* so_far_;
    wxButton* done_;
    std::map<desk::PassCell, CommitField*> fields_;
    /// What was not taken and why, one a player, under the player's row.
    std::vector<wxStaticText*> questions_;
};

}  // namespace lowledger::window
