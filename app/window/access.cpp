#include "app/window/access.h"

#include <exception>
#include <gtk/gtk.h>
#include <memory>
#include <utility>
#include <wx/control.h>
#include <wx/dataview.h>
#include <wx/listbox.h>
#include <wx/textctrl.h>

namespace lowledger::window {
namespace {

GtkWidget* widget_of(wxWindow* control) {
    auto* widget = static_cast<GtkWidget*>(control->GetHandle());
    // The handle of a list or of a text of several lines is the pane that scrolls it.
    const auto* const text = dynamic_cast<wxTextCtrl*>(control);
    const bool in_pane = dynamic_cast<wxDataViewCtrl*>(control) != nullptr ||
                         dynamic_cast<wxListBox*>(control) != nullptr ||
                         (text != nullptr && text->IsMultiLine());
    if (in_pane && GTK_IS_BIN(widget)) {
        if (GtkWidget* child = gtk_bin_get_child(GTK_BIN(widget))) return child;
    }
    return widget;
}

using RowText = std::function<std::string(std::size_t row)>;

/// The toolkit's question for a tooltip; nothing may be thrown through it.
gboolean on_query_tooltip(GtkWidget* widget, gint x, gint y, gboolean by_keyboard, GtkTooltip* tooltip,
                          gpointer data) noexcept {
    auto* tree = GTK_TREE_VIEW(widget);
    GtkTreePath* path = nullptr;
    if (gtk_tree_view_get_tooltip_context(tree, &x, &y, by_keyboard, nullptr, &path, nullptr) == FALSE)
        return FALSE;
    const int row = gtk_tree_path_get_indices(path)[0];
    std::string text;
    try {
        text = (*static_cast<const RowText*>(data))(static_cast<std::size_t>(row));
    } catch (const std::exception&) {
        text.clear();
    }
    if (!text.empty()) {
        gtk_tooltip_set_text(tooltip, text.c_str());
        gtk_tree_view_set_tooltip_row(tree, tooltip, path);
    }
    gtk_tree_path_free(path);
    return text.empty() ? FALSE : TRUE;
}

void forget_row_text(gpointer data, GClosure* /*closure*/) {
    delete static_cast<RowText*>(data);
}

}  // namespace

void name_for_readers(wxWindow* control, const std::string& name, const std::string& description) {
    AtkObject* object = gtk_widget_get_accessible(widget_of(control));
    atk_object_set_name(object, name.c_str());
    if (!description.empty()) atk_object_set_description(object, description.c_str());
}

void name_with_parts(wxWindow* control, const std::string& name) {
    name_for_readers(control, name);
    for (wxWindow* part : control->GetChildren())
        name_with_parts(part, name);
}

std::string name_of_label(const wxString& label) {
    wxString name = wxControl::RemoveMnemonics(label);
    if (name.EndsWith(":")) name.RemoveLast();
    return name.utf8_string();
}

void describe_for_readers(wxWindow* control, const std::string& description) {
    atk_object_set_description(gtk_widget_get_accessible(widget_of(control)), description.c_str());
}

void without_own_search(wxWindow* list) {
    GtkWidget* widget = widget_of(list);
    if (GTK_IS_TREE_VIEW(widget)) gtk_tree_view_set_enable_search(GTK_TREE_VIEW(widget), FALSE);
}

void with_steady_bars(wxWindow* scrolled) {
    auto* widget = static_cast<GtkWidget*>(scrolled->GetHandle());
    if (GTK_IS_SCROLLED_WINDOW(widget))
        gtk_scrolled_window_set_overlay_scrolling(GTK_SCROLLED_WINDOW(widget), FALSE);
}

void explain_rows(wxWindow* list, std::function<std::string(std::size_t row)> text_of) {
    GtkWidget* widget = widget_of(list);
    if (!GTK_IS_TREE_VIEW(widget)) return;
    gtk_widget_set_has_tooltip(widget, TRUE);
    g_signal_connect_data(widget, "query-tooltip", G_CALLBACK(on_query_tooltip),
                          std::make_unique<RowText>(std::move(text_of)).release(), forget_row_text,
                          GConnectFlags(0));
}

void name_drawing(wxWindow* panel, const std::string& name, const std::string& description) {
    atk_object_set_role(gtk_widget_get_accessible(widget_of(panel)), ATK_ROLE_IMAGE);
    name_for_readers(panel, name, description);
}

}  // namespace lowledger::window
