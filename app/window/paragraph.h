#pragma once

#include <string>
#include <wx/stattext.h>

namespace lowledger::window {

/// Text in as many lines as the width it is given needs.
class Paragraph : public wxStaticText {
  public:
    explicit Paragraph(wxWindow* parent);

    /// Shows the text; hides itself when there is none.
    void say(const std::string& text);

  private:
    void wrap();
    void on_size(wxSizeEvent& event);

    wxString text_;
    int wrapped_to_ = -1;
};

}  // namespace lowledger::window
