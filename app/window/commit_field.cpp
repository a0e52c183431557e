#include "app/window/commit_field.h"

#include <utility>

namespace lowledger::window {

CommitField::CommitField(wxWindow* parent, int width, Commit commit, long style)
    : wxTextCtrl(parent, wxID_ANY, {}, wxDefaultPosition, wxSize(width, -1),
                 (style & wxTE_MULTILINE) != 0 ? style : style | wxTE_PROCESS_ENTER),
      commit_(std::move(commit)) {
    Bind(wxEVT_KEY_DOWN, &CommitField::on_key, this);
    // In a field of several lines Enter begins the next one.
    if (!IsMultiLine())
        Bind(wxEVT_TEXT_ENTER, [this](wxCommandEvent&) {
            handed_over_ = GetValue();
            commit_(handed_over_, By::enter);
        });
    Bind(wxEVT_KILL_FOCUS, [this](wxFocusEvent& event) {
        leave();
        event.Skip();
    });
}

void CommitField::leave() {
    if (!has_uncounted() || GetValue() == handed_over_) return;
    handed_over_ = GetValue();
    commit_(handed_over_, By::leaving);
}

void CommitField::set_counted(const wxString& text) {
    const bool typing = HasFocus() && has_uncounted() && GetValue() != handed_over_;
    set_counted(text, typing ? GetValue() : text);
}

void CommitField::set_counted(const wxString& counted, const wxString& text) {
    counted_ = counted;
    if (GetValue() == text) return;
    ChangeValue(text);
    handed_over_ = text;
    if (HasFocus()) SelectAll();
}

void CommitField::restore() {
    ChangeValue(counted_);
    handed_over_ = counted_;
    SelectAll();
    if (restored_) restored_();
}

void CommitField::on_key(wxKeyEvent& event) {
    const int key = event.GetKeyCode();
    const bool enter = key == WXK_RETURN || key == WXK_NUMPAD_ENTER;
    if (key == WXK_ESCAPE && has_uncounted()) {
        restore();
    } else if (enter && event.ControlDown() && IsMultiLine()) {
        handed_over_ = GetValue();
        commit_(handed_over_, By::enter);
    } else {
        event.Skip();
    }
}

}  // namespace lowledger::window
