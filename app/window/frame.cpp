#include "app/window/frame.h"

#include <algorithm>
#include <utility>
#include <wx/config.h>
#include <wx/persist/toplevel.h>
#include <wx/sizer.h>

#include "app/window/access.h"
#include "app/window/commit_field.h"
#include "app/window/errors.h"
#include "app/window/preview.h"
#include "app/window/text.h"
#include "reports/pages/handout.h"

namespace lowledger::window {
namespace {

using words::Sentence;

constexpr units::Millimetres chart_staff_space{1.5};
constexpr units::Millimetres large_staff_space{2.6};
constexpr int places_width = 96;
constexpr int least_list_width = 220;

wxDEFINE_EVENT(work_done, wxThreadEvent);

enum Page : std::size_t { empty_page, student_page, horn_page };

std::string file_safe(std::string name) {
    std::ranges::replace_if(
        name, [](char c) { return c == '/' || c == '\\' || c == ':' || static_cast<unsigned char>(c) < ' '; },
        '-');
    return name;
}

}  // namespace

MainFrame::MainFrame(World world)
    : wxFrame(nullptr, wxID_ANY, "Lowledger", wxDefaultPosition, wxSize(1180, 720)),
      engraver_(faces_, chart_staff_space),
      large_engraver_(faces_, large_staff_space),
      front_(*this) {
    SetName("main");
    SetMinClientSize(wxSize(800, 480));
    Bind(work_done, [this](wxThreadEvent&) { told(this, [this] { desk_->deliver(); }); });
    desk_ = std::make_unique<desk::Desk>(
        desk::Surroundings{std::move(world.today), std::move(world.data_folder), std::move(world.make_sample),
                           [this] { wxQueueEvent(this, new wxThreadEvent(work_done)); }},
        front_);
    menus_ = std::make_unique<Menus>(*this, *desk_);
    tools_ = std::make_unique<Tools>(Tools{*desk_, *menus_, faces_, engraver_, large_engraver_});
    make_parts();
    menus_->before([this](const desk::Action& action) { return keep_field_before_undo(action); });
    // At once after an action: the next key may be waiting for the field that has the focus then.
    menus_->after([this] { show_waiting_news(); });
    desk_->on_news([this](const desk::News& news) { on_news(news); });
    // Lists of the toolkit keep Ctrl+F for a search of their own.
    Bind(wxEVT_CHAR_HOOK, [this](wxKeyEvent& event) {
        if (event.GetModifiers() == wxMOD_CONTROL && event.GetKeyCode() == 'F')
            menus_->run("edit.find");
        else
            event.Skip();
    });
    Bind(wxEVT_CLOSE_WINDOW, &MainFrame::on_close, this);
    wxPersistenceManager::Get().RegisterAndRestore(this);
    on_news({.studio = true, .records = true, .view = true, .sheet = true, .answer = true});
}

MainFrame::~MainFrame() {
    desk_->on_news(nullptr);
}

void MainFrame::make_parts() {
    auto* all = new wxBoxSizer(wxHORIZONTAL);
    wxArrayString names;
    names.Add(_("Students"));
    names.Add(_("Horns"));
    places_ = new wxListBox(this, wxID_ANY, wxDefaultPosition, wxSize(places_width, -1), names,
                            wxLB_SINGLE | wxBORDER_NONE);
    name_for_readers(places_, utf8(_("Places")));
    without_own_search(places_);
    splitter_ = new wxSplitterWindow(this, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                                     wxSP_LIVE_UPDATE | wxBORDER_NONE);
    splitter_->SetMinimumPaneSize(least_list_width);
    list_ = new ListPane(splitter_, *desk_, *menus_);
    pages_ = new wxSimplebook(splitter_);
    empty_ = new EmptyPage(pages_, *menus_);
    student_ = new StudentPage(pages_, *tools_);
    horn_ = new HornPage(pages_, *tools_);
    pages_->AddPage(empty_, {});
    pages_->AddPage(student_, {});
    pages_->AddPage(horn_, {});
    if (const auto* config = wxConfigBase::Get(false)) {
        config->Read("students_width", &students_width_);
        config->Read("horns_width", &horns_width_);
    }
    splitter_->SplitVertically(list_, pages_, list_width());
    all->Add(places_, wxSizerFlags().Expand());
    all->Add(splitter_, wxSizerFlags(1).Expand());
    SetSizer(all);

    places_->Bind(wxEVT_LISTBOX, [this](wxCommandEvent& event) {
        menus_->run(event.GetSelection() == 0 ? "go.students" : "go.horns");
        fold_list(false);
    });
    student_->on_typing([this] { fold_list(true); });
}

bool MainFrame::open_studio(const std::filesystem::path& path) {
    return told(this, [&] { desk_->open(path); });
}

void MainFrame::on_news(const desk::News& news) {
    waiting_.studio |= news.studio;
    waiting_.records |= news.records;
    waiting_.view |= news.view;
    waiting_.sheet |= news.sheet;
    waiting_.answer |= news.answer;
    if (showing_waits_) return;
    // Later, since the news may come from a field that showing them replaces.
    showing_waits_ = true;
    CallAfter([this] { show_waiting_news(); });
}

void MainFrame::show_waiting_news() {
    if (!std::exchange(showing_waits_, false)) return;
    told(this, [this] { show_news(); });
}

void MainFrame::show_news() {
    const desk::News news = std::exchange(waiting_, {});
    const bool other_place = desk_->view().place != shown_view_.place;
    const bool other_section = desk_->view().section != shown_view_.section;
    if (other_place && splitter_->IsSplit()) list_width() = splitter_->GetSashPosition();
    shown_view_ = desk_->view();
    if (other_place && splitter_->IsSplit()) splitter_->SetSashPosition(list_width());
    menus_->refresh();
    if (news.studio) {
        if (auto* config = wxConfigBase::Get(false); config != nullptr && desk_->has_studio())
            config->Write("last_studio", shown(desk_->file().path().string()));
    }
    if (news.studio || news.records) show_title();
    places_->SetSelection(desk_->view().place == desk::Place::students ? 0 : 1);
    places_->Enable(desk_->has_studio());
    if (news.records || news.view) {
        if (other_place || news.studio) fold_list(false);
        list_->refresh();
    }
    show_page();
    student_->refresh(news);
    if (news.records || news.view) horn_->refresh();
    // Whoever walks through the places themselves stays there.
    if (desk_->has_studio() && (news.studio || (other_place && wxWindow::FindFocus() != places_)))
        list_->focus();
    if (other_section && !other_place) focus_shown_section();
}

void MainFrame::focus_section() {
    // After the news that is waiting to be shown.
    CallAfter([this] { focus_shown_section(); });
}

void MainFrame::focus_shown_section() {
    if (pages_->GetSelection() == static_cast<int>(student_page)) student_->focus_section();
    if (pages_->GetSelection() == static_cast<int>(horn_page)) horn_->focus_section();
}

int& MainFrame::list_width() {
    return shown_view_.place == desk::Place::students ? students_width_ : horns_width_;
}

void MainFrame::show_title() {
    if (!desk_->has_studio()) {
        SetTitle("Lowledger");
        return;
    }
    const std::string name = desk_->file().facts().name;
    SetTitle(shown(desk_->may_write() ? desk_->words().say(Sentence::title, {{"studio", name}})
                                      : desk_->words().say(Sentence::title_read_only, {{"studio", name}})));
}

void MainFrame::show_page() {
    const auto& words = desk_->words();
    std::size_t page = empty_page;
    if (!desk_->has_studio()) {
        empty_->show(words.say(Sentence::empty_no_studio), {{"studio.new", _("&New studio…")},
                                                            {"studio.open", _("&Open studio…")},
                                                            {"studio.sample", _("Look at the s&ample")}});
    } else if (desk_->view().place == desk::Place::students) {
        if (desk_->student())
            page = student_page;
        else if (list_->rows() == 0)
            empty_->show(words.say(Sentence::empty_students), {{"student.add", _("&Add student…")}});
        else
            empty_->show(words.say(Sentence::empty_choose_student), {});
    } else {
        if (desk_->horn())
            page = horn_page;
        else if (list_->rows() == 0)
            empty_->show(words.say(Sentence::empty_horns), {{"horn.add", _("&Add horn…")}});
        else
            empty_->show(words.say(Sentence::empty_choose_horn), {});
    }
    splitter_->Show(true);
    list_->Show(desk_->has_studio() && splitter_->IsSplit());
    if (!desk_->has_studio()) fold_list(true);
    if (pages_->GetSelection() != static_cast<int>(page)) pages_->ChangeSelection(page);
}

void MainFrame::fold_list(bool fold) {
    if (fold == !splitter_->IsSplit()) return;
    if (fold) {
        list_width() = splitter_->GetSashPosition();
        splitter_->Unsplit(list_);
    } else if (desk_->has_studio()) {
        list_->Show();
        splitter_->SplitVertically(list_, pages_, list_width());
    }
}

void MainFrame::show_find_field() {
    fold_list(false);
    list_->focus_find();
}

void MainFrame::show_handout() {
    leave_fields();
    const auto& live = desk_->answer();
    if (!live.there()) return;
    const auto facts = desk_->file().facts();
    auto document = pages::handout({.facts = facts,
                                    .student = *desk_->student(),
                                    .horn = *desk_->horn(),
                                    .kind = desk_->kind(),
                                    .answer = *live.answer,
                                    .date = desk_->today(),
                                    .paper = pages::paper_of(facts)},
                                   desk_->words(), faces_);
    const std::string file_name = file_safe(desk_->student()->name + " " + desk_->today().iso()) + ".pdf";
    Preview preview(this, std::move(document), faces_, desk_->words(), file_name,
                    [this] { desk_->give_out(); });
    preview.ShowModal();
}

bool MainFrame::keep_field_before_undo(const desk::Action& action) {
    auto* field = dynamic_cast<CommitField*>(wxWindow::FindFocus());
    if (action.id == "edit.undo" && field != nullptr && field->has_uncounted()) {
        field->restore();
        return true;
    }
    if (field != nullptr) field->leave();
    return false;
}

void MainFrame::leave_fields() {
    if (auto* field = dynamic_cast<CommitField*>(wxWindow::FindFocus())) field->leave();
}

void MainFrame::on_close(wxCloseEvent& event) {
    leave_fields();
    if (auto* config = wxConfigBase::Get(false)) {
        if (splitter_->IsSplit()) list_width() = splitter_->GetSashPosition();
        config->Write("students_width", students_width_);
        config->Write("horns_width", horns_width_);
    }
    event.Skip();
}

}  // namespace lowledger::window
