#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>
#include <wx/checkbox.h>
#include <wx/choice.h>
#include <wx/scrolwin.h>
#include <wx/textctrl.h>

#include "app/desk/desk.h"
#include "app/window/paragraph.h"

namespace lowledger::window {

/// What the teacher says of the settings beyond the readings: slides that stay, limits, steps, weights of
/// notes. Every change is answered while it is typed. An empty field means what stands in it in grey.
class HandPanel : public wxScrolledWindow {
  public:
    HandPanel(wxWindow* parent, desk::Desk& desk);

    void refresh();

  private:
    struct Line {
        std::string slide;
        std::string name;
        wxCheckBox* stays = nullptr;
        wxTextCtrl* least = nullptr;
        wxTextCtrl* travel = nullptr;
    };
    void make_fields();
    wxSizer* make_slides();
    wxSizer* make_weights();
    wxTextCtrl* make_field(const std::string& name, const std::string& hint);
    void show_notes();
    void show_weights();
    void change();
    void change_weight();
    /// The hand as the fields say it; empty, with the problem said, where one makes no sense.
    [[nodiscard]] std::optional<tuning::TeacherHand> typed();

    desk::Desk& desk_;
    std::optional<std::pair<studio::StudentId, studio::HornId>> shown_;
    std::vector<Line> lines_;
    std::vector<units::Pitch> notes_;
    wxTextCtrl* step_ = nullptr;
    wxCheckBox* band_note_ = nullptr;
    wxChoice* note_ = nullptr;
    wxTextCtrl* weight_ = nullptr;
    Paragraph* weights_ = nullptr;
    Paragraph* problem_ = nullptr;
};

}  // namespace lowledger::window
