#include "tests/app/window/window_harness.h"

#include <cstdlib>
#include <gdk/gdk.h>
#include <stdexcept>
#include <variant>
#include <wx/app.h>
#include <wx/control.h>
#include <wx/dataview.h>
#include <wx/evtloop.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>
#include <wx/uiaction.h>

#include "app/window/drawing.h"
#include "app/window/text.h"
#include "model/studio/questions.h"

namespace lowledger::window {
namespace {

std::filesystem::path new_folder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "lowledger-window-XXXXXX").string();
    if (mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no temporary folder");
    return pattern;
}

wxWindow* find_shown(wxWindow* under, const wxString& name) {
    if (!under->IsShown()) return nullptr;
    if (under->GetName() == name) return under;
    for (wxWindow* child : under->GetChildren())
        if (wxWindow* found = find_shown(child, name)) return found;
    return nullptr;
}

void add_rows(wxDataViewCtrl& list, std::string& text) {
    const auto* model = dynamic_cast<wxDataViewListModel*>(list.GetModel());
    if (model == nullptr) return;
    for (unsigned row = 0; row < model->GetCount(); ++row) {
        for (unsigned column = 0; column < list.GetColumnCount(); ++column) {
            wxVariant value;
            model->GetValueByRow(value, row, column);
            text += utf8(value.GetString()) + " ";
        }
        text += "\n";
    }
}

void add_text(wxWindow* under, std::string& text) {
    if (!under->IsShown()) return;
    if (const auto* drawing = dynamic_cast<Drawing*>(under)) {
        for (const auto& item : drawing->page().items)
            if (const auto* words = std::get_if<canvas::Text>(&item)) text += words->text + " ";
        text += "\n";
    } else if (const auto* field = dynamic_cast<wxTextCtrl*>(under)) {
        text += utf8(field->GetValue()) + "\n";
    } else if (auto* list = dynamic_cast<wxDataViewCtrl*>(under)) {
        add_rows(*list, text);
    } else if (dynamic_cast<wxStaticText*>(under) != nullptr) {
        text += utf8(wxControl::RemoveMnemonics(under->GetLabel())) + "\n";
    }
    for (wxWindow* child : under->GetChildren())
        add_text(child, text);
}

}  // namespace

WindowHarness::WindowHarness() : folder_(new_folder()) {
    frame_ = new MainFrame({[] { return studio::Date(2026, 11, 25); }, folder_,
                            [](const std::filesystem::path& path) {
                                studio::StudioFacts facts;
                                facts.name = "Sample";
                                store::StudioFile::create(path, facts);
                            }});
    frame_->SetSize(1280, 720);
    frame_->Show();
    frame_->Raise();
    until([this] { return frame_->IsActive(); });
    settle();
}

WindowHarness::~WindowHarness() {
    frame_->Destroy();
    wxTheApp->ProcessPendingEvents();
    wxTheApp->ProcessIdle();
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
}

void WindowHarness::settle() {
    auto* loop = wxEventLoopBase::GetActive();
    bool busy = true;
    while (busy) {
        // The display has handed over every key sent to it once it has answered this.
        gdk_display_sync(gdk_display_get_default());
        busy = false;
        while (loop->Pending()) {
            loop->Dispatch();
            busy = true;
        }
        if (wxTheApp->HasPendingEvents()) {
            wxTheApp->ProcessPendingEvents();
            busy = true;
        }
        if (!frame_->settled()) {
            desk().settle();
            busy = true;
        }
    }
}

void WindowHarness::until(const std::function<bool()>& there) {
    auto* loop = wxEventLoopBase::GetActive();
    while (!there()) {
        loop->Dispatch();
        wxTheApp->ProcessPendingEvents();
    }
}

void WindowHarness::type(std::string_view text) {
    wxUIActionSimulator simulator;
    for (const char c : text) {
        simulator.Text(std::string(1, c).c_str());
        settle();
    }
}

void WindowHarness::press(int key, int modifiers) {
    wxUIActionSimulator simulator;
    simulator.Char(key, modifiers);
    settle();
}

wxWindow* WindowHarness::find(const wxString& name) {
    return find_shown(frame_, name);
}

std::string WindowHarness::text_of(const wxString& name) {
    const auto* field = dynamic_cast<wxTextCtrl*>(find(name));
    if (field == nullptr) throw std::runtime_error("no field " + utf8(name));
    return utf8(field->GetValue());
}

std::string WindowHarness::shown_text() {
    std::string text;
    add_text(frame_, text);
    return text;
}

studio::StudentId open_ada(WindowHarness& window) {
    studio::StudioFacts facts;
    facts.name = "Test studio";
    window.desk().create({window.folder() / "test.lowledger", facts});
    studio::StudentId ada;
    window.desk().file().edit("prepare", [&](store::Edit& edit) {
        studio::Student student;
        student.name = "Ada Example";
        student.level = studio::Level::middle;
        ada = edit.add(student);
        const auto* kind = horns::find_kind(horns::built_in_kinds(), "bbb-tuba-3");
        auto horn = studio::horn_of(*kind);
        horn.mark = "T-1";
        const auto tuba = edit.add(horn);
        for (auto position : studio::designed_positions(*kind, tuba, studio::Date(2026, 9, 7))) {
            position.origin = studio::SlidePosition::Origin::measured;
            edit.add(position);
        }
        edit.add(studio::HornUse{{}, ada, tuba, studio::Date(2026, 9, 7), std::nullopt});
    });
    window.desk().go({.place = desk::Place::students, .student = ada});
    window.settle();
    return ada;
}

}  // namespace lowledger::window
