#include "app/window/today_page.h"

#include <algorithm>
#include <cstdlib>
#include <wx/sizer.h>

#include "app/desk/lessons.h"
#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"

namespace lowledger::window {
namespace {

using words::Sentence;

/// How far the day is from today.
std::string distance(const words::Words& words, int days) {
    if (days == 0) return words.say(Sentence::today_is_today);
    const int count = std::abs(days);
    if (count == 1) return words.say(days < 0 ? Sentence::today_was_yesterday : Sentence::today_is_tomorrow);
    return words.say(days < 0 ? Sentence::today_is_past : Sentence::today_is_ahead,
                     {{"count", std::to_string(count)}});
}

std::string how_many(const words::Words& words, int lessons) {
    if (lessons == 0) return words.say(Sentence::today_lessons_none);
    return words.say_counted(Sentence::today_lessons_one, Sentence::today_lessons_many, lessons);
}

}  // namespace

TodayPage::TodayPage(wxWindow* parent, const Tools& tools)
    : PlacePage(parent), tools_(tools), day_{.on = tools.desk.today(), .lessons = {}, .due = {}} {
    const auto& words = tools.desk.words();
    auto* head = make_head();
    lessons_ = new ListingView(this, tools.menus, words.say(Sentence::column_lesson));
    lessons_->SetName("day's lessons");
    lessons_->offer({"lesson.begin", "lesson.kept", "lesson.notice", "lesson.no_notice", "lesson.cancel",
                     "lesson.attendance", "lesson.move", "lesson.add", "lesson.remove"});
    empty_ = new EmptyPage(this, tools.menus);
    due_heading_ = heading(this, words.say(Sentence::today_due));
    due_ = new ListingView(this, tools.menus, words.say(Sentence::today_due));
    due_->SetName("overdue");
    brief_ = new BriefView(this, words.say(Sentence::today_brief));

    auto* lists = new wxBoxSizer(wxVERTICAL);
    lists->Add(lessons_, wxSizerFlags(3).Expand());
    lists->Add(empty_, wxSizerFlags(3).Expand());
    lists->Add(due_heading_, wxSizerFlags().Expand().Border(wxALL, gap));
    lists->Add(due_, wxSizerFlags(2).Expand());
    auto* body = new wxBoxSizer(wxHORIZONTAL);
    body->Add(lists, wxSizerFlags(3).Expand());
    body->Add(brief_, wxSizerFlags(2).Expand().Border(wxLEFT, 1));
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(head, wxSizerFlags().Expand().Border(wxALL, gap + 2));
    all->Add(body, wxSizerFlags(1).Expand());
    SetSizer(all);

    lessons_->on_selected([this](std::int64_t lesson) { choose(lesson); });
    lessons_->on_opened([this](std::int64_t lesson) {
        told(this, [&] { desk::open_lesson(tools_.desk, studio::LessonId{lesson}); });
    });
    due_->on_opened([this](std::int64_t item) {
        told(this, [&] { tools_.desk.go(day_.due.at(static_cast<std::size_t>(item)).opens); });
    });
}

wxSizer* TodayPage::make_head() {
    title_ = new wxStaticText(this, wxID_ANY, {});
    title_->SetFont(title_->GetFont().Scaled(1.6F).Bold());
    about_ = new wxStaticText(this, wxID_ANY, {});
    auto* texts = new wxBoxSizer(wxVERTICAL);
    texts->Add(title_);
    texts->Add(about_, wxSizerFlags().Border(wxTOP, 2));
    auto* head = new wxBoxSizer(wxHORIZONTAL);
    head->Add(texts, wxSizerFlags(1).CentreVertical());
    const auto button = [&](const wxString& label, std::string_view action) {
        auto* made = new wxButton(this, wxID_ANY, label);
        made->Bind(wxEVT_BUTTON, [this, action](wxCommandEvent&) { tools_.menus.run(action); });
        head->Add(made, wxSizerFlags().CentreVertical().Border(wxLEFT, gap));
    };
    button(_("Day &before"), "day.before");
    button(_("Day a&fter"), "day.after");
    button(_("&Add a lesson…"), "lesson.add");
    return head;
}

void TodayPage::refresh(const desk::News& news) {
    const auto& desk = tools_.desk;
    const auto on = desk.view().day.value_or(desk.today());
    if (news.records || news.studio || on != day_.on) {
        day_ = desk::day_of(desk.file(), desk.words(), on, desk.today());
        show_day();
    }
    if (news.records || news.view) show_chosen();
    Layout();
}

void TodayPage::show_day() {
    const auto& desk = tools_.desk;
    const auto& words = desk.words();
    title_->SetLabelText(shown(desk::day_title(words, day_.on)));
    about_->SetLabelText(shown(distance(words, day_.on - desk.today()) + " · " +
                               how_many(words, static_cast<int>(day_.lessons.size()))));
    lessons_->show(desk::lessons_listing(day_, words));
    const bool none = day_.lessons.empty();
    if (none) {
        const bool has_students = desk::action("lesson.add").may_run(desk);
        if (has_students || !desk.may_write())
            empty_->show(words.say(Sentence::today_empty), {{"lesson.add", _("A&dd a lesson…")}});
        else
            empty_->show(words.say(Sentence::today_empty_no_students), {{"student.add", _("&Add student…")}});
    }
    lessons_->Show(!none);
    empty_->Show(none);
    due_->show(desk::due_listing(day_, words));
    due_->Show(!day_.due.empty());
    due_heading_->SetLabelText(
        shown(words.say(day_.due.empty() ? Sentence::today_nothing_due : Sentence::today_due)));
}

void TodayPage::show_chosen() {
    const auto& chosen = tools_.desk.lesson();
    const auto found =
        chosen
            ? std::ranges::find_if(day_.lessons, [&](const auto& one) { return one.lesson.id == chosen->id; })
            : day_.lessons.end();
    const bool there = found != day_.lessons.end();
    if (there) lessons_->select(found->lesson.id.number);
    brief_->Show(there);
    brief_->show(there ? found->brief : std::vector<desk::BriefPart>());
}

void TodayPage::choose(std::int64_t lesson) {
    desk::View view = tools_.desk.view();
    view.lesson = studio::LessonId{lesson};
    told(this, [&] { tools_.desk.go(view); });
}

void TodayPage::focus_section() {
    if (lessons_->IsShown())
        lessons_->focus_rows();
    else if (due_->IsShown())
        due_->focus_rows();
    else
        empty_->SetFocus();
}

}  // namespace lowledger::window
