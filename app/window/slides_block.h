#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>
#include <wx/checkbox.h>
#include <wx/panel.h>
#include <wx/textctrl.h>

#include "app/window/form.h"
#include "model/horns/kind.h"
#include "model/studio/records.h"
#include "reports/words/words.h"

namespace lowledger::window {

/// The slides of a horn, a line each. A field that is left empty means what the kind says, which stands in it
/// in grey.
class SlidesBlock : public wxPanel {
  public:
    /// With `positions`, where each stands can be written too; an empty field there means unknown.
    SlidesBlock(wxWindow* parent, bool positions) : wxPanel(parent), with_positions_(positions) {}

    /// Made anew when another kind is chosen.
    void show(const horns::HornKind& kind, const std::vector<studio::HornSlide>& slides);
    [[nodiscard]] std::optional<Form::Problem> problem(const words::Words& words) const;
    [[nodiscard]] std::vector<studio::HornSlide> slides() const;
    [[nodiscard]] std::map<std::string, units::Millimetres> positions() const;

  private:
    struct Line {
        studio::HornSlide as_kind;
        std::string name;
        wxTextCtrl* stands = nullptr;
        wxTextCtrl* least = nullptr;
        wxTextCtrl* travel = nullptr;
        wxCheckBox* stuck = nullptr;

        [[nodiscard]] studio::HornSlide value() const;
        [[nodiscard]] std::optional<Form::Problem> problem(const words::Words& words) const;
    };
    Line make_line(const horns::HornKind& kind, const studio::HornSlide& slide);
    wxTextCtrl* make_field(const std::string& slide, const wxString& what, const std::string& value,
                           const std::string& hint);

    bool with_positions_;
    std::vector<Line> lines_;
};

}  // namespace lowledger::window
