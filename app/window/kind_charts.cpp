#include "app/window/kind_charts.h"

#include <algorithm>
#include <wx/button.h>
#include <wx/sizer.h>

#include "app/window/layout.h"
#include "app/window/text.h"
#include "model/studio/note_style.h"

namespace lowledger::window {
namespace {

constexpr int usual_width = 1200;
constexpr int usual_height = 660;

}  // namespace

KindCharts::KindCharts(wxWindow* parent, const Tools& tools)
    : wxDialog(parent, wxID_ANY, _("Chart of a kind"), wxDefaultPosition, wxSize(usual_width, usual_height),
               wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER),
      tools_(tools),
      offered_(desk::kinds_offered(tools.desk)),
      picker_(offered_.kinds, tools.desk.words()) {
    auto* left = new wxBoxSizer(wxVERTICAL);
    auto* line = new wxBoxSizer(wxHORIZONTAL);
    line->Add(new wxStaticText(this, wxID_ANY, _("&Kind:")), wxSizerFlags().CentreVertical());
    line->Add(picker_.make_field(this), wxSizerFlags(1).CentreVertical().Border(wxLEFT, gap / 2));
    left->Add(line, wxSizerFlags().Expand().Border(wxBOTTOM, gap));
    left->Add(picker_.make_list(this, tools.menus), wxSizerFlags(1).Expand());
    auto* problem = new Paragraph(this);
    left->Add(problem, wxSizerFlags().Expand().Border(wxTOP, gap));
    problem->say(offered_.problem);
    left->Add(new wxButton(this, wxID_CANCEL, _("&Close")), wxSizerFlags().Border(wxTOP, gap));
    panel_ = new ChartPanel(this, tools);
    auto* all = new wxBoxSizer(wxHORIZONTAL);
    all->Add(left, wxSizerFlags(2).Expand().Border(wxALL, gap));
    all->Add(panel_, wxSizerFlags(5).Expand());
    SetSizer(all);
    picker_.on_chosen([this](const horns::HornKind& kind) { show_kind(kind); });
    picker_.choose(0);
    CentreOnParent();
}

void KindCharts::show_kind(const horns::HornKind& kind) {
    const auto facts = tools_.desk.has_studio() ? tools_.desk.file().facts() : studio::StudioFacts{};
    auto chart = std::make_unique<desk::NoteChart>(kind, studio::note_style(facts, kind));
    panel_->show(*chart, {}, std::nullopt);
    chart_ = std::move(chart);
}

}  // namespace lowledger::window
