#pragma once

#include <functional>
#include <utility>
#include <wx/app.h>
#include <wx/dialog.h>
#include <wx/modalhook.h>

#include "app/window/form.h"

namespace lowledger::window {

/// While it lives: forms are taken as they stand, and what is to be done in the first other dialog is done in
/// it once it is open.
class InDialog : public wxModalDialogHook {
  public:
    explicit InDialog(std::function<void(wxDialog& dialog)> work) : work_(std::move(work)) { Register(); }
    ~InDialog() override { Unregister(); }
    InDialog(const InDialog&) = delete;
    InDialog& operator=(const InDialog&) = delete;

  protected:
    int Enter(wxDialog* dialog) override {
        if (dynamic_cast<Form*>(dialog) != nullptr) return wxID_OK;
        if (work_) dialog->CallAfter([dialog, work = std::exchange(work_, nullptr)] { work(*dialog); });
        return wxID_NONE;
    }

  private:
    std::function<void(wxDialog&)> work_;
};

}  // namespace lowledger::window
