#pragma once

#include <functional>
#include <optional>
#include <vector>
#include <wx/textctrl.h>

#include "app/window/listing_view.h"
#include "model/horns/kind.h"
#include "reports/words/words.h"

namespace lowledger::window {

/// A field to type a few letters of a kind's name into, and the list of the kinds that have them. Both are
/// made with the same parent, field first; whoever asks lays them out.
class KindPicker {
  public:
    /// Both must outlive the controls.
    KindPicker(const std::vector<horns::HornKind>& kinds, const words::Words& words)
        : kinds_(kinds), words_(words) {}

    /// Just after its label.
    wxTextCtrl* make_field(wxWindow* parent);
    ListingView* make_list(wxWindow* parent, Menus& menus);
    /// Called when a kind is chosen.
    void on_chosen(std::function<void(const horns::HornKind&)> listener) {
        chosen_now_ = std::move(listener);
    }
    void choose(std::size_t kind);
    /// Null while none is chosen.
    [[nodiscard]] const horns::HornKind* chosen() const;

  private:
    void show_found();
    void on_key(wxKeyEvent& event);
    void take(std::int64_t row);

    const std::vector<horns::HornKind>& kinds_;
    const words::Words& words_;
    wxTextCtrl* field_ = nullptr;
    ListingView* list_ = nullptr;
    std::optional<std::size_t> chosen_;
    std::function<void(const horns::HornKind&)> chosen_now_;
};

}  // namespace lowledger::window
