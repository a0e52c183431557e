#pragma once

#include <map>
#include <string>
#include <vector>
#include <wx/checkbox.h>
#include <wx/datectrl.h>
#include <wx/panel.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include "app/desk/desk.h"
#include "app/window/commit_field.h"

namespace lowledger::window {

/// What holds for the whole sheet: date, warm or cold, mouthpiece, tuner seen, mute, room, what the tuner was
/// set to, and where the slides stood.
class SheetHead : public wxPanel {
  public:
    SheetHead(wxWindow* parent, desk::Desk& desk);

    void refresh();
    void leave();

  private:
    CommitField* labelled(wxSizer& line, const wxString& label, int width, CommitField::Commit commit,
                          const wxString& unit = {});
    void make_slide_fields();
    void change(const std::function<void(studio::TuningSheet&)>& change);
    void refuse(CommitField& field, const std::string& sentence);
    void commit_room(const wxString& text);
    void commit_a4(const wxString& text);
    void commit_slide(const std::string& slide, const wxString& text);
    [[nodiscard]] units::Millimetres travel_of(const std::string& slide) const;

    desk::Desk& desk_;
    wxDatePickerCtrl* date_;
    wxCheckBox* warm_;
    wxCheckBox* seen_;
    wxCheckBox* mute_;
    CommitField* mouthpiece_;
    CommitField* room_;
    CommitField* a4_;
    wxPanel* slides_;
    std::map<std::string, CommitField*> slide_fields_;
    std::string slides_of_;
    wxStaticText* problem_;
};

}  // namespace lowledger::window
