#pragma once

#include <array>
#include <optional>
#include <vector>
#include <wx/checkbox.h>
#include <wx/choice.h>
#include <wx/panel.h>
#include <wx/stattext.h>

#include "app/desk/lessons.h"
#include "app/window/commit_field.h"
#include "app/window/empty_page.h"
#include "app/window/paragraph.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// The section 'Lesson note': how the lesson went, what was done, what comes next, and a remark that is never
/// printed. A text is filed on leaving its field or by Ctrl+Enter.
class LessonNotePanel : public wxPanel {
  public:
    LessonNotePanel(wxWindow* parent, const Tools& tools);

    void refresh();
    /// To the first text that is empty, else to the first.
    void focus_typing();

  private:
    CommitField* text_field(wxSizer& under, const wxString& label, const wxString& name,
                            desk::LessonText which);
    wxSizer* make_outcome();
    void show_outcome(const studio::Lesson& lesson);
    [[nodiscard]] std::string about(const studio::Lesson& lesson) const;

    const Tools& tools_;
    /// Whose texts stand in the fields.
    std::optional<studio::LessonId> lesson_;
    std::vector<desk::SlipChoice> outcomes_;
    EmptyPage* empty_ = nullptr;
    wxPanel* note_ = nullptr;
    wxStaticText* heading_ = nullptr;
    Paragraph* about_ = nullptr;
    wxChoice* outcome_ = nullptr;
    wxCheckBox* owed_ = nullptr;
    std::array<CommitField*, 3> texts_{};
};

}  // namespace lowledger::window
