#include "app/window/errors.h"

#include <exception>
#include <wx/msgdlg.h>

#include "app/window/text.h"
#include "model/units/refusal.h"

namespace lowledger::window {
namespace {

void show(wxWindow* parent, const wxString& sentence, const wxString& more = {}) {
    wxMessageDialog dialog(parent, sentence, "Lowledger", wxOK | wxICON_WARNING | wxCENTRE);
    if (!more.empty()) dialog.SetExtendedMessage(more);
    dialog.ShowModal();
}

}  // namespace

bool told(wxWindow* parent, const std::function<void()>& work) {
    try {
        work();
        return true;
    } catch (const units::Refusal& refusal) {
        show(parent, shown(refusal.what()));
    } catch (const std::exception& mistake) {
        show(parent,
             _("That did not work, and it is the program's mistake. Your studio is as it was before."),
             shown(mistake.what()));
    }
    return false;
}

}  // namespace lowledger::window
