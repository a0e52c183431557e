#include "app/window/horn_page.h"

#include <algorithm>
#include <map>
#include <ranges>
#include <wx/button.h>
#include <wx/sizer.h>

#include "app/desk/lending.h"
#include "app/desk/places.h"
#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "model/tuning/inputs.h"
#include "reports/words/names.h"

namespace lowledger::window {
namespace {

using studio::SlidePosition;
using words::Sentence;

// A heading and six rows: no horn has more slides.
constexpr int slides_height = 182;

Sentence origin_name(SlidePosition::Origin origin) {
    switch (origin) {
        case SlidePosition::Origin::start:
            return Sentence::origin_start;
        case SlidePosition::Origin::measured:
            return Sentence::origin_measured;
        case SlidePosition::Origin::moved:
            return Sentence::origin_moved;
        case SlidePosition::Origin::repair:
            return Sentence::origin_repair;
    }
    return Sentence::origin_measured;
}

wxDataViewListCtrl* table(wxWindow* parent, const std::string& name) {
    auto* made = new wxDataViewListCtrl(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                                        wxDV_ROW_LINES | wxDV_SINGLE);
    name_for_readers(made, name);
    return made;
}

void column(wxDataViewListCtrl& table, const words::Words& words, Sentence title, int width,
            wxAlignment align = wxALIGN_LEFT) {
    table.AppendTextColumn(shown(words.say(title)), wxDATAVIEW_CELL_INERT, width, align);
}

void append(wxDataViewListCtrl& table, std::initializer_list<std::string> cells) {
    wxVector<wxVariant> row;
    for (const auto& cell : cells)
        row.push_back(shown(cell));
    table.AppendItem(row);
}

}  // namespace

HornPage::HornPage(wxWindow* parent, const Tools& tools) : PlacePage(parent), tools_(tools) {
    mark_ = new wxStaticText(this, wxID_ANY, {});
    mark_->SetFont(mark_->GetFont().Scaled(1.6F).Bold());
    about_ = new wxStaticText(this, wxID_ANY, {});
    sections_ = new wxNotebook(this, wxID_ANY);
    chart_ = new ChartPanel(sections_, tools);
    chart_->on_player([this](std::optional<std::size_t> player) { tools_.desk.lean_as(player); });
    loans_ = new TablePanel(sections_, tools, desk::Table::loans);
    upkeep_ = new TablePanel(sections_, tools, desk::Table::upkeep);
    const std::vector<wxWindow*> pages{make_facts(sections_), make_slides(sections_), chart_, loans_,
                                       upkeep_};
    const auto& entries = desk::entry_of(desk::Place::horns).sections;
    for (std::size_t i = 0; i < entries.size(); ++i)
        sections_->AddPage(pages.at(i), shown(desk::title_of(entries[i])));
    name_for_readers(sections_, utf8(_("Sections")));
    auto* head = new wxBoxSizer(wxVERTICAL);
    head->Add(mark_);
    head->Add(about_, wxSizerFlags().Border(wxTOP, 2));
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(head, wxSizerFlags().Expand().Border(wxALL, gap + 2));
    all->Add(sections_, wxSizerFlags(1).Expand());
    SetSizer(all);
    sections_->Bind(wxEVT_NOTEBOOK_PAGE_CHANGED, [this](wxBookCtrlEvent& event) {
        desk::View view = tools_.desk.view();
        const auto& entry =
            desk::entry_of(desk::Place::horns).sections.at(static_cast<std::size_t>(event.GetSelection()));
        if (view.place == desk::Place::horns && desk::section_of(view) != entry.section) {
            view.section = entry.section;
            told(this, [&] { tools_.desk.go(view); });
        }
        event.Skip();
    });
}

wxWindow* HornPage::make_facts(wxWindow* parent) {
    const auto& words = tools_.desk.words();
    auto* page = new wxPanel(parent);
    facts_ = new wxPanel(page);
    facts_->SetSizer(new wxFlexGridSizer(2, wxSize(2 * gap, gap)));
    auto* change = new wxButton(page, wxID_ANY, _("&Change horn…"));
    change->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { tools_.menus.run("horn.change"); });
    auto* players_heading = heading(page, words.say(Sentence::players_heading));
    players_ = table(page, words.say(Sentence::players_heading));
    column(*players_, words, Sentence::players_student, 220);
    column(*players_, words, Sentence::players_from, 160);
    column(*players_, words, Sentence::players_until, 160);
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(facts_, wxSizerFlags().Expand().Border(wxALL, gap));
    all->Add(change, wxSizerFlags().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    all->Add(players_heading, wxSizerFlags().Expand().Border(wxALL, gap));
    all->Add(players_, wxSizerFlags(1).Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    page->SetSizer(all);
    return page;
}

wxWindow* HornPage::make_slides(wxWindow* parent) {
    const auto& words = tools_.desk.words();
    auto* page = new wxPanel(parent);
    slides_ = table(page, words.say(Sentence::slides_heading));
    column(*slides_, words, Sentence::slides_slide, 150);
    column(*slides_, words, Sentence::slides_now, 100, wxALIGN_RIGHT);
    column(*slides_, words, Sentence::slides_least, 100, wxALIGN_RIGHT);
    column(*slides_, words, Sentence::slides_travel, 100, wxALIGN_RIGHT);
    column(*slides_, words, Sentence::slides_remark, 170);
    auto* measure = new wxButton(page, wxID_ANY, _("&Measure slides…"));
    measure->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { tools_.menus.run("horn.measure"); });
    auto* history_heading = heading(page, words.say(Sentence::history_heading));
    history_ = table(page, words.say(Sentence::history_heading));
    column(*history_, words, Sentence::history_date, 150);
    column(*history_, words, Sentence::slides_slide, 150);
    column(*history_, words, Sentence::history_position, 100, wxALIGN_RIGHT);
    column(*history_, words, Sentence::history_origin, 240);
    auto* all = new wxBoxSizer(wxVERTICAL);
    slides_->SetMinSize(wxSize(-1, slides_height));
    all->Add(slides_, wxSizerFlags().Expand().Border(wxALL, gap));
    all->Add(measure, wxSizerFlags().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    all->Add(history_heading, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    all->Add(history_, wxSizerFlags(1).Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    page->SetSizer(all);
    return page;
}

void HornPage::refresh(const desk::News& news) {
    if (!news.records && !news.view) return;
    const auto& desk = tools_.desk;
    if (!desk.horn() || desk.view().place != desk::Place::horns) return;
    mark_->SetLabelText(shown(desk.horn()->mark));
    std::string about = words::kind_name(desk.kind());
    if (desk.horn()->archived) about += " · " + desk.words().say(Sentence::list_archived);
    if (desk.kind_has_vanished()) about += " · " + desk.words().say(Sentence::horn_kind_gone);
    about_->SetLabelText(shown(about));
    const auto section = desk::section_number(desk.view());
    if (sections_->GetSelection() != static_cast<int>(section)) sections_->ChangeSelection(section);
    refresh_facts();
    refresh_slides();
    refresh_chart();
    loans_->refresh();
    upkeep_->refresh();
    Layout();
}

void HornPage::refresh_chart() {
    // It is worked out only for whoever looks at it.
    if (desk::section_of(tools_.desk.view()) != desk::Section::chart) return;
    auto* const chart = tools_.desk.horn_chart();
    std::vector<std::string> players;
    for (const auto& player : chart->players())
        players.push_back(player.name);
    chart_->show(chart->chart(), players, chart->player());
}

void HornPage::refresh_facts() {
    const auto& desk = tools_.desk;
    const auto& words = desk.words();
    const auto& horn = *desk.horn();
    std::map<studio::StudentId, std::string> names;
    for (const auto& student : desk.file().students())
        names[student.id] = student.name;

    facts_->DestroyChildren();
    auto* grid = facts_->GetSizer();
    grid->Clear();
    const auto fact = [&](Sentence label, const std::string& value) {
        if (value.empty()) return;
        grid->Add(new wxStaticText(facts_, wxID_ANY, shown_in_label(words.say(label)) + ":"));
        grid->Add(new wxStaticText(facts_, wxID_ANY, shown_in_label(value)));
    };
    fact(Sentence::horn_owner, horn.owner ? names[*horn.owner] : words.say(Sentence::horn_of_school));
    fact(Sentence::horn_maker, horn.maker_and_model);
    fact(Sentence::horn_serial, horn.serial_number);
    fact(Sentence::horn_tag, horn.inventory_tag);
    fact(Sentence::horn_belongs_to, horn.belongs_to);
    fact(Sentence::horn_case, horn.case_text);
    fact(Sentence::horn_locker, horn.locker);
    fact(Sentence::horn_accessories, horn.accessories);
    fact(Sentence::horn_condition, horn.condition);
    fact(Sentence::horn_value, desk::money_text(horn.value));
    fact(Sentence::horn_bought_on, desk::date_or_nothing(words, horn.bought_on));
    fact(Sentence::horn_bought_for, desk::money_text(horn.bought_for));
    fact(Sentence::horn_remarks, horn.remarks);

    players_->DeleteAllItems();
    auto uses = desk.file().horn_uses();
    std::ranges::sort(uses, std::ranges::greater{}, &studio::HornUse::from);
    for (const auto& use : uses) {
        if (use.horn != horn.id) continue;
        append(*players_,
               {names[use.student], words::date_text(words, use.from),
                use.until ? words::date_text(words, *use.until) : words.say(Sentence::players_still)});
    }
    facts_->GetParent()->Layout();
}

void HornPage::refresh_slides() {
    const auto& desk = tools_.desk;
    const auto& words = desk.words();
    const auto& horn = *desk.horn();
    const auto history = desk.file().slide_history(horn.id);
    const auto known = tuning::known_positions(history, desk.file().sheets(horn.id), desk.today());
    const auto name = [&](const std::string& slide) {
        const auto* kind = desk.kind().slide(slide);
        return kind != nullptr ? kind->name : slide;
    };
    slides_->DeleteAllItems();
    for (const auto& slide : horn.slides) {
        const auto found = known.find(slide.slide);
        append(*slides_, {name(slide.slide),
                          found == known.end() ? words.say(Sentence::slides_unknown)
                                               : words::millimetres_text(found->second),
                          words::millimetres_text(slide.least), words::millimetres_text(slide.travel),
                          slide.stuck ? words.say(Sentence::slides_stuck) : std::string()});
    }
    history_->DeleteAllItems();
    for (const auto& entry : std::views::reverse(history)) {
        append(*history_, {words::date_text(words, entry.on), name(entry.slide),
                           words::millimetres_text(entry.position), words.say(origin_name(entry.origin))});
    }
}

void HornPage::focus_section() {
    const auto section = desk::section_of(tools_.desk.view());
    if (section == desk::Section::chart)
        chart_->focus_find();
    else if (section == desk::Section::loans)
        loans_->focus_rows();
    else if (section == desk::Section::upkeep)
        upkeep_->focus_rows();
    else
        (section == desk::Section::horn ? players_ : slides_)->SetFocus();
}

}  // namespace lowledger::window
