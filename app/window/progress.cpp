#include "app/window/progress.h"

#include <memory>
#include <wx/progdlg.h>
#include <wx/stopwatch.h>
#include <wx/utils.h>

#include "app/window/text.h"

namespace lowledger::window {
namespace {

constexpr long before_shown_ms = 500;

}  // namespace

bool work_through(wxWindow* parent, const std::vector<std::string>& names,
                  const std::function<void(std::size_t)>& piece) {
    const wxBusyCursor busy;
    const wxStopWatch watch;
    std::unique_ptr<wxProgressDialog> dialog;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (!dialog && i > 0 && watch.Time() > before_shown_ms)
            dialog = std::make_unique<wxProgressDialog>(
                _("Working out"), shown_in_label(names[i]), static_cast<int>(names.size()), parent,
                wxPD_APP_MODAL | wxPD_CAN_ABORT | wxPD_AUTO_HIDE | wxPD_SMOOTH);
        if (dialog && !dialog->Update(static_cast<int>(i), shown_in_label(names[i]))) return false;
        piece(i);
    }
    return true;
}

}  // namespace lowledger::window
