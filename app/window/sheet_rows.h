#pragma once

#include <functional>
#include <optional>
#include <vector>
#include <wx/scrolwin.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include "app/desk/desk.h"
#include "app/window/commit_field.h"

namespace lowledger::window {

/// The rows of the tuning sheet: a field a take for every note, by keyboard alone. Enter goes down the takes,
/// the arrow keys to the neighbours.
class SheetRows : public wxScrolledWindow {
  public:
    SheetRows(wxWindow* parent, desk::Desk& desk);

    /// Brings the fields up to date with the desk; makes them anew when there are other rows or takes.
    void refresh();
    void focus(desk::Cell cell);
    /// Hands over what a field still holds.
    void leave();
    /// The row that has the focus, or had it last.
    [[nodiscard]] std::size_t row() const { return focused_.row; }
    void on_row(std::function<void()> listener) { row_changed_ = std::move(listener); }
    /// Called when a reading is being typed.
    void on_typing(std::function<void()> listener) { typing_ = std::move(listener); }

  private:
    struct Row {
        std::vector<CommitField*> takes;
        wxStaticText* mean = nullptr;
        wxStaticText* remark = nullptr;
    };
    void make_fields();
    CommitField* make_field(desk::Cell cell);
    void hand_over(desk::Cell cell, const wxString& text, CommitField::By by);
    void on_key(wxKeyEvent& event, desk::Cell cell);
    void show_remarks();
    [[nodiscard]] wxString remark_on(std::size_t row) const;

    desk::Desk& desk_;
    std::vector<desk::SheetRow> shown_rows_;
    int shown_takes_ = 0;
    std::optional<studio::HornId> shown_horn_;
    horns::NoteStyle shown_style_;
    std::vector<Row> rows_;
    desk::Cell focused_;
    bool making_ = false;
    std::function<void()> row_changed_;
    std::function<void()> typing_;
};

}  // namespace lowledger::window
