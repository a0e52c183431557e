#include <atk/atk.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <gtk/gtk.h>
#include <string>
#include <vector>
#include <wx/dialog.h>

#include "app/desk/action.h"
#include "app/desk/places.h"
#include "app/window/text.h"
#include "tests/app/window/in_dialog.h"
#include "tests/app/window/window_harness.h"

namespace lowledger::window {
namespace {

using testing::IsEmpty;

/// Roles of controls that a screen reader stops at and says by name.
bool speaks(AtkRole role) {
    switch (role) {
        case ATK_ROLE_PUSH_BUTTON:
        case ATK_ROLE_TOGGLE_BUTTON:
        case ATK_ROLE_CHECK_BOX:
        case ATK_ROLE_RADIO_BUTTON:
        case ATK_ROLE_COMBO_BOX:
        case ATK_ROLE_TEXT:
        case ATK_ROLE_ENTRY:
        case ATK_ROLE_SPIN_BUTTON:
        case ATK_ROLE_TREE_TABLE:
        case ATK_ROLE_TABLE:
        case ATK_ROLE_LIST_BOX:
        case ATK_ROLE_PAGE_TAB_LIST:
        case ATK_ROLE_IMAGE:
            return true;
        default:
            return false;
    }
}

bool has_state(AtkObject* object, AtkStateType state) {
    AtkStateSet* states = atk_object_ref_state_set(object);
    const bool has = atk_state_set_contains_state(states, state) != FALSE;
    g_object_unref(states);
    return has;
}

bool is_labelled(AtkObject* object) {
    AtkRelationSet* relations = atk_object_ref_relation_set(object);
    const bool labelled = atk_relation_set_contains(relations, ATK_RELATION_LABELLED_BY) != FALSE;
    g_object_unref(relations);
    return labelled;
}

std::string name_of(AtkObject* object) {
    const char* name = atk_object_get_name(object);
    return name == nullptr ? std::string() : std::string(name);
}

/// Adds the way from the window to every control in sight that has no name; counts the others.
void find_nameless(AtkObject* object, const std::string& way, std::vector<std::string>& nameless,
                   int& named) {
    const AtkRole role = atk_object_get_role(object);
    const std::string here = way + "/" + atk_role_get_name(role) + " " + name_of(object);
    if (speaks(role) && has_state(object, ATK_STATE_SHOWING)) {
        if (name_of(object).empty() && !is_labelled(object))
            nameless.push_back(here);
        else
            ++named;
        // What a control is made of is the control's own matter.
        return;
    }
    const int children = atk_object_get_n_accessible_children(object);
    for (int i = 0; i < children; ++i) {
        AtkObject* child = atk_object_ref_accessible_child(object, i);
        if (child == nullptr) continue;
        find_nameless(child, here, nameless, named);
        g_object_unref(child);
    }
}

void expect_all_named(wxWindow* window, const std::string& what) {
    std::vector<std::string> nameless;
    int named = 0;
    find_nameless(gtk_widget_get_accessible(static_cast<GtkWidget*>(window->GetHandle())), what, nameless,
                  named);
    EXPECT_THAT(nameless, IsEmpty()) << what;
    EXPECT_GT(named, 2) << what;
}

TEST(Access, EveryControlOfEverySectionHasAName) {
    WindowHarness window;
    open_ada(window);
    const auto tuba = window.desk().horn()->id;
    studio::TermId term;
    window.desk().file().edit("term", [&](store::Edit& edit) {
        term = edit.add(studio::Term{.id = {},
                                     .name = "Autumn",
                                     .first = studio::Date(2026, 8, 31),
                                     .last = studio::Date(2026, 12, 18)});
    });
    expect_all_named(&window.frame(), "a student");
    for (const auto& place : desk::places()) {
        for (const auto& section : place.sections) {
            desk::View view = window.desk().view();
            view.place = place.place;
            view.section = section.section;
            view.horn = tuba;
            view.term = term;
            window.desk().go(view);
            window.settle();
            expect_all_named(&window.frame(), std::string(section.text));
        }
    }
}

/// Runs an action that opens a dialog, looks at the dialog and closes it.
void look_at_dialog(WindowHarness& window, const char* id) {
    bool looked = false;
    window.frame().CallAfter([&] {
        for (wxWindow* top : wxTopLevelWindows) {
            auto* dialog = dynamic_cast<wxDialog*>(top);
            if (dialog == nullptr || !dialog->IsShown()) continue;
            expect_all_named(dialog, id);
            looked = true;
            dialog->EndModal(wxID_CANCEL);
        }
    });
    desk::action(id).run(window.desk());
    EXPECT_TRUE(looked) << id;
    window.settle();
}

TEST(Access, EveryControlOfEveryDialogHasAName) {
    WindowHarness window;
    open_ada(window);
    for (const char* id :
         {"student.change", "student.horn", "horn.add", "horn.change", "horn.measure", "studio.new",
          "studio.facts", "chart.kind", "print.pass", "term.add", "group.add", "pass.type"})
        look_at_dialog(window, id);
}

TEST(Access, EveryFieldOfASectionPassHasAName) {
    WindowHarness window;
    open_ada(window);
    const InDialog looking([&](wxDialog& dialog) {
        window.settle();
        expect_all_named(&dialog, "section pass");
        window.press(WXK_ESCAPE);
    });
    desk::action("pass.type").run(window.desk());
    window.settle();
}

}  // namespace
}  // namespace lowledger::window
