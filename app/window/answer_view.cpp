#include "app/window/answer_view.h"

#include <wx/settings.h>
#include <wx/sizer.h>

#include "app/window/access.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "reports/words/settings_words.h"
#include "reports/words/tuning_words.h"

namespace lowledger::window {
namespace {

using words::Sentence;

std::string paragraphs(const std::vector<std::string>& sentences) {
    std::string text;
    for (const auto& sentence : sentences)
        text += (text.empty() ? "" : "\n") + sentence;
    return text;
}

}  // namespace

AnswerView::AnswerView(wxWindow* parent, const Tools& tools, desk::ChartNotes notes)
    : wxScrolledWindow(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL),
      tools_(tools),
      notes_(notes) {
    SetScrollRate(0, 12);
    with_steady_bars(this);
    SetBackgroundColour(wxSystemSettings::GetColour(wxSYS_COLOUR_LISTBOX));
    warnings_ = new Paragraph(this);
    rules_ = new Drawing(this, tools.faces);
    chart_ = new Drawing(this, tools.faces);
    next_ = new Paragraph(this);
    auto* all = new wxBoxSizer(wxVERTICAL);
    for (wxWindow* part : std::initializer_list<wxWindow*>{warnings_, rules_, chart_, next_})
        all->Add(part, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxTOP, gap));
    SetSizer(all);
}

void AnswerView::refresh() {
    auto& desk = tools_.desk;
    const auto live = desk.answer();
    if (!live.there()) {
        warnings_->say(live.refusal);
        if (live.refusal.empty() && live.inputs) return;
        rules_->Hide();
        chart_->Hide();
        next_->say({});
        Layout();
        FitInside();
        return;
    }
    const words::Speech speech{desk.words(), live.inputs->kind, desk::note_style(desk)};
    warnings_->say(paragraphs(words::warnings(speech, *live.answer)));
    auto beside = words::beside_settings(speech, *live.answer);
    if (const auto next = words::next_note_sentence(speech, *live.answer); !next.empty())
        beside.push_back(next);
    next_->say(paragraphs(beside));
    const auto pictures = tools_.pictures();
    const auto probe = units::Millimetres(100.0);
    rules_->Show();
    rules_->show(
        [live, pictures](units::Millimetres width) { return desk::slide_rules(pictures, live, width).page; },
        desk.words().say(Sentence::rules_name), desk::slide_rules(pictures, live, probe).content);
    const auto chart = desk::lean_picture(pictures, live, notes_, units::Millimetres(300.0));
    chart_->Show(!chart.page.items.empty());
    if (chart_->IsShown())
        chart_->show(
            [live, pictures, notes = notes_](units::Millimetres width) {
                return desk::lean_picture(pictures, live, notes, width).page;
            },
            desk.words().say(Sentence::chart_name), chart.content);
    Layout();
    FitInside();
}

}  // namespace lowledger::window
