#pragma once

#include <functional>
#include <wx/textctrl.h>

namespace lowledger::window {

/// A text field whose text counts when Enter is pressed (Ctrl+Enter in one of several lines) or the focus
/// leaves it. Until then Escape and undo bring back what counted before.
class CommitField : public wxTextCtrl {
  public:
    /// Why the text is handed over.
    enum class By { enter, leaving };
    using Commit = std::function<void(const wxString& text, By by)>;

    CommitField(wxWindow* parent, int width, Commit commit, long style = 0);

    /// What counts now. The text shown follows, unless the user is typing another.
    void set_counted(const wxString& text);
    /// What counts now, when the field goes on showing `text` that did not.
    void set_counted(const wxString& counted, const wxString& text);
    [[nodiscard]] bool has_uncounted() const { return GetValue() != counted_; }
    /// Back to what counts.
    void restore();
    /// Called by `restore` after the text is back.
    void on_restore(std::function<void()> listener) { restored_ = std::move(listener); }
    /// Hands the text over if it is not what was handed over last.
    void leave();

  private:
    void on_key(wxKeyEvent& event);

    Commit commit_;
    std::function<void()> restored_;
    wxString counted_;
    wxString handed_over_;
};

}  // namespace lowledger::window
