#include "app/window/frame.h"

#include <algorithm>
#include <utility>
#include <wx/config.h>
#include <wx/persist/toplevel.h>
#include <wx/sizer.h>

#include "app/desk/places.h"
#include "app/window/access.h"
#include "app/window/commit_field.h"
#include "app/window/errors.h"
#include "app/window/horn_page.h"
#include "app/window/preview.h"
#include "app/window/routine_page.h"
#include "app/window/student_page.h"
#include "app/window/text.h"
#include "reports/pages/chart_page.h"
#include "reports/pages/file_names.h"
#include "reports/pages/handout.h"
#include "reports/words/names.h"

namespace lowledger::window {
namespace {

using words::Sentence;

constexpr units::Millimetres chart_staff_space{1.5};
constexpr units::Millimetres large_staff_space{2.6};
constexpr int places_width = 96;
constexpr int least_list_width = 220;

wxDEFINE_EVENT(work_done, wxThreadEvent);

int usual_list_width(desk::Place place) {
    return place == desk::Place::students ? 360 : 460;
}

/// The key of a list's width among what is remembered.
wxString width_key(const desk::PlaceEntry& entry) {
    return shown(entry.go_action) + "_width";
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
    // Lists of the toolkit keep Ctrl+F, Ctrl+N and Ctrl+P for themselves.
    Bind(wxEVT_CHAR_HOOK, [this](wxKeyEvent& event) {
        const bool in_list = dynamic_cast<wxDataViewCtrl*>(wxWindow::FindFocus()) != nullptr;
        if (!in_list || !menus_->run_key(event)) event.Skip();
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
    for (const auto& entry : desk::places())
        names.Add(shown(desk::title_of(entry.place)));
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
    auto* student = new StudentPage(pages_, *tools_);
    page_of_ = {{desk::Place::students, student},
                {desk::Place::horns, new HornPage(pages_, *tools_)},
                {desk::Place::routines, new RoutinePage(pages_, *tools_)}};
    pages_->AddPage(empty_, {});
    for (const auto& entry : desk::places()) {
        pages_->AddPage(page_of_.at(entry.place), {});
        list_widths_[entry.place] = usual_list_width(entry.place);
        if (const auto* config = wxConfigBase::Get(false))
            config->Read(width_key(entry), &list_widths_[entry.place]);
    }
    splitter_->SplitVertically(list_, pages_, list_width());
    all->Add(places_, wxSizerFlags().Expand());
    all->Add(splitter_, wxSizerFlags(1).Expand());
    SetSizer(all);

    places_->Bind(wxEVT_LISTBOX, [this](wxCommandEvent& event) {
        menus_->run(desk::places().at(static_cast<std::size_t>(event.GetSelection())).go_action);
        fold_list(false);
    });
    student->on_typing([this] { fold_list(true); });
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
    if (news.studio || news.records) show_title();
    places_->SetSelection(static_cast<int>(&desk::entry_of(desk_->view().place) - desk::places().data()));
    places_->Enable(desk_->has_studio());
    if (news.records || news.view) {
        if (other_place || news.studio) fold_list(!has_list());
        if (has_list()) list_->refresh();
    }
    show_page();
    // A page that was not shown has missed what came before.
    const desk::News all{.studio = true, .records = true, .view = true, .sheet = true, .answer = true};
    if (desk_->has_studio() && page().has_subject()) page().refresh(other_place ? all : news);
    // Whoever walks through the places themselves stays there.
    if (desk_->has_studio() && (news.studio || (other_place && wxWindow::FindFocus() != places_))) {
        if (has_list())
            list_->focus();
        else
            page().focus_section();
    }
    if (other_section && !other_place) focus_shown_section();
}

void MainFrame::focus_section() {
    // After the news that is waiting to be shown.
    CallAfter([this] { focus_shown_section(); });
}

void MainFrame::focus_shown_section() {
    if (desk_->has_studio() && page().has_subject()) page().focus_section();
}

PlacePage& MainFrame::page() {
    return *page_of_.at(desk_->view().place);
}

bool MainFrame::has_list() const {
    return desk_->has_studio() && desk::entry_of(desk_->view().place).list.has_value();
}

int& MainFrame::list_width() {
    return list_widths_.at(shown_view_.place);
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
    wxWindow* wanted = empty_;
    if (!desk_->has_studio()) {
        empty_->show(desk_->words().say(Sentence::empty_no_studio),
                     {{"studio.new", _("&New studio…")},
                      {"studio.open", _("&Open studio…")},
                      {"studio.sample", _("Look at the s&ample")}});
        fold_list(true);
    } else if (page().has_subject()) {
        wanted = &page();
    } else {
        show_empty(list_->rows() == 0);
    }
    list_->Show(splitter_->IsSplit());
    const int at = pages_->FindPage(wanted);
    if (pages_->GetSelection() != at) pages_->ChangeSelection(static_cast<std::size_t>(at));
}

void MainFrame::show_empty(bool nothing_yet) {
    const auto& list = desk::entry_of(desk_->view().place).list;
    if (!list) return;
    if (!nothing_yet) {
        empty_->show(desk_->words().say(list->choose), {});
        return;
    }
    const auto& add = desk::action(list->add);
    empty_->show(desk_->words().say(list->empty), {{list->add, shown(desk::menu_text(add, *desk_))}});
}

void MainFrame::fold_list(bool fold) {
    if (fold == !splitter_->IsSplit()) return;
    if (fold) {
        list_width() = splitter_->GetSashPosition();
        splitter_->Unsplit(list_);
    } else if (has_list()) {
        list_->Show();
        splitter_->SplitVertically(list_, pages_, list_width());
    }
}

void MainFrame::show_find_field() {
    if (!has_list()) return;
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
    show_document(std::move(document), desk_->student()->name + " " + desk_->today().iso(),
                  [this] { desk_->give_out(); });
}

void MainFrame::show_document(canvas::Document document, const std::string& title,
                              std::function<void()> handed_on) {
    wxWindow* const over = wxGetActiveWindow() != nullptr ? wxGetActiveWindow() : this;
    Preview preview(over, std::move(document), faces_, desk_->words(), pages::safe_file_name(title) + ".pdf",
                    std::move(handed_on));
    preview.ShowModal();
}

void MainFrame::show_chart(const desk::NoteChart& chart) {
    const auto& words = desk_->words();
    const auto paper = desk_->has_studio() ? pages::paper_of(desk_->file().facts()) : canvas::Paper::a4;
    auto document = pages::chart_page(chart.printed(paper), words, faces_);
    const std::string horn = chart.horn() ? chart.horn()->mark : words::kind_name(chart.kind());
    show_document(std::move(document), words.say(Sentence::chart_file_name, {{"horn", horn}}), [] {});
}

void MainFrame::show_beside_settings(int part) {
    auto* const student = dynamic_cast<StudentPage*>(page_of_.at(desk::Place::students));
    CallAfter([student, part] { student->show_beside_settings(part); });
}

void MainFrame::show_manual(std::string_view title) {
    if (!manual_) manual_ = new ManualWindow(this);
    manual_->turn_to(title);
    manual_->Show();
    manual_->Raise();
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
        for (const auto& entry : desk::places())
            config->Write(width_key(entry), list_widths_.at(entry.place));
    }
    event.Skip();
}

}  // namespace lowledger::window
