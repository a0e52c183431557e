#include "app/window/answer_view.h"

#include <wx/settings.h>
#include <wx/sizer.h>

#include "app/window/layout.h"
#include "app/window/text.h"
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
    SetBackgroundColour(wxSystemSettings::GetColour(wxSYS_COLOUR_LISTBOX));
    warnings_ = new wxStaticText(this, wxID_ANY, {});
    rules_ = new Drawing(this, tools.faces);
    chart_ = new Drawing(this, tools.faces);
    next_ = new wxStaticText(this, wxID_ANY, {});
    auto* all = new wxBoxSizer(wxVERTICAL);
    for (wxWindow* part : std::initializer_list<wxWindow*>{warnings_, rules_, chart_, next_})
        all->Add(part, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxTOP, gap));
    SetSizer(all);
    Bind(wxEVT_SIZE, &AnswerView::on_size, this);
}

void AnswerView::put(wxStaticText& line, const std::string& text) {
    line.SetLabelText(shown(text));
    line.Wrap(GetClientSize().GetWidth() - 2 * gap);
    line.Show(!text.empty());
}

void AnswerView::refresh() {
    auto& desk = tools_.desk;
    const auto live = desk.answer();
    if (!live.there()) {
        put(*warnings_, live.refusal);
        if (live.refusal.empty() && live.inputs) return;
        rules_->Hide();
        chart_->Hide();
        put(*next_, {});
        Layout();
        FitInside();
        return;
    }
    const words::Speech speech{desk.words(), live.inputs->kind, desk.file().facts().accidentals};
    put(*warnings_, paragraphs(words::warnings(speech, *live.answer)));
    put(*next_, words::next_note_sentence(speech, *live.answer));
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

void AnswerView::on_size(wxSizeEvent& event) {
    for (auto* line : {warnings_, next_})
        line->Wrap(GetClientSize().GetWidth() - 2 * gap);
    event.Skip();
}

}  // namespace lowledger::window
