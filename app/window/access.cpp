#include "app/window/access.h"

#include <gtk/gtk.h>
#include <wx/dataview.h>
#include <wx/listbox.h>

namespace lowledger::window {
namespace {

GtkWidget* widget_of(wxWindow* control) {
    auto* widget = static_cast<GtkWidget*>(control->GetHandle());
    // The handle of a list is the pane that scrolls it.
    const bool in_pane =
        dynamic_cast<wxDataViewCtrl*>(control) != nullptr || dynamic_cast<wxListBox*>(control) != nullptr;
    if (in_pane && GTK_IS_BIN(widget)) {
        if (GtkWidget* child = gtk_bin_get_child(GTK_BIN(widget))) return child;
    }
    return widget;
}

}  // namespace

void name_for_readers(wxWindow* control, const std::string& name, const std::string& description) {
    AtkObject* object = gtk_widget_get_accessible(widget_of(control));
    atk_object_set_name(object, name.c_str());
    if (!description.empty()) atk_object_set_description(object, description.c_str());
}

void without_own_search(wxWindow* list) {
    GtkWidget* widget = widget_of(list);
    if (GTK_IS_TREE_VIEW(widget)) gtk_tree_view_set_enable_search(GTK_TREE_VIEW(widget), FALSE);
}

void name_drawing(wxWindow* panel, const std::string& name, const std::string& description) {
    atk_object_set_role(gtk_widget_get_accessible(widget_of(panel)), ATK_ROLE_IMAGE);
    name_for_readers(panel, name, description);
}

}  // namespace lowledger::window
