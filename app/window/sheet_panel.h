#pragma once

#include <functional>
#include <wx/choice.h>
#include <wx/panel.h>

#include "app/window/answer_view.h"
#include "app/window/drawing.h"
#include "app/window/paragraph.h"
#include "app/window/sheet_head.h"
#include "app/window/sheet_rows.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// The section 'Tuning sheet': which sheet, its head, its rows, the staff of the note that has the focus, and
/// the answer beside them as it stands.
class SheetPanel : public wxPanel {
  public:
    SheetPanel(wxWindow* parent, const Tools& tools);

    void refresh();
    void refresh_answer();
    /// To where the typing goes on.
    void focus_typing();
    /// Hands over what a field still holds.
    void leave();
    void on_typing(std::function<void()> listener) { rows_->on_typing(std::move(listener)); }

  private:
    void refresh_sheets();
    void show_note();
    /// What the row asks or refuses; else how to type.
    void say_what_to_do(const desk::SheetEntry& entry, std::size_t row);

    const Tools& tools_;
    wxChoice* sheets_;
    std::vector<studio::TuningSheetId> sheet_ids_;
    SheetHead* head_;
    SheetRows* rows_;
    Drawing* staff_;
    Paragraph* question_;
    AnswerView* answer_;
};

}  // namespace lowledger::window
