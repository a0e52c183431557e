#include "app/window/list_pane.h"

#include <algorithm>
#include <wx/sizer.h>

#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/text.h"

namespace lowledger::window {
namespace {

using words::Sentence;

constexpr int cell_padding = 14;
// Titles are set bold.
constexpr int bolder_title = 10;
constexpr int least_column_width = 48;

enum Column : unsigned { title_column, beside_column, now_column };

}  // namespace

class ListPane::Model : public wxDataViewVirtualListModel {
  public:
    explicit Model(const std::vector<Row>& rows) : rows_(rows) {}

    [[nodiscard]] unsigned GetColumnCount() const override { return 3; }
    [[nodiscard]] wxString GetColumnType(unsigned /*column*/) const override { return "string"; }
    void GetValueByRow(wxVariant& value, unsigned row, unsigned column) const override {
        const Row& shown_row = rows_.at(row);
        value = column == title_column    ? shown_row.title
                : column == beside_column ? shown_row.beside
                                          : shown_row.now;
    }
    bool SetValueByRow(const wxVariant& /*value*/, unsigned /*row*/, unsigned /*column*/) override {
        return false;
    }

  private:
    const std::vector<Row>& rows_;
};

ListPane::ListPane(wxWindow* parent, desk::Desk& desk, Menus& menus)
    : wxPanel(parent), desk_(desk), menus_(menus) {
    find_label_ = new wxStaticText(this, wxID_ANY, _("F&ind:"));
    find_ = new wxTextCtrl(this, wxID_ANY);
    list_ = new wxDataViewCtrl(this, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                               wxDV_SINGLE | wxDV_ROW_LINES | wxBORDER_NONE);
    list_->SetName("list");
    model_ = new Model(rows_);
    list_->AssociateModel(model_.get());
    without_own_search(list_);
    const auto column = [&](unsigned index, int width) {
        auto* renderer = new wxDataViewTextRenderer("string", wxDATAVIEW_CELL_INERT);
        renderer->EnableEllipsize(wxELLIPSIZE_END);
        auto* made = new wxDataViewColumn(wxString(), renderer, index, width, wxALIGN_LEFT, 0);
        list_->AppendColumn(made);
    };
    column(title_column, 150);
    column(beside_column, 60);
    column(now_column, -1);
    explain_rows(list_, [this](std::size_t row) {
        if (row >= rows_.size()) return std::string();
        const auto& [id, title, beside, now] = rows_[row];
        return utf8(title + (beside.empty() ? wxString() : " · " + beside) + " · " + now);
    });
    none_ = new wxStaticText(this, wxID_ANY, {});
    add_ = new wxButton(this, wxID_ANY, {});

    auto* find_row = new wxBoxSizer(wxHORIZONTAL);
    find_row->Add(find_label_, wxSizerFlags().CentreVertical().Border(wxRIGHT, 6));
    find_row->Add(find_, wxSizerFlags(1).CentreVertical());
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(find_row, wxSizerFlags().Expand().Border(wxALL, 8));
    all->Add(none_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, 8));
    all->Add(list_, wxSizerFlags(1).Expand());
    all->Add(add_, wxSizerFlags().Expand().Border(wxALL, 8));
    SetSizer(all);

    find_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { refresh(); });
    find_->Bind(wxEVT_KEY_DOWN, &ListPane::on_find_key, this);
    list_->Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
        share_width();
        event.Skip();
    });
    list_->Bind(wxEVT_DATAVIEW_SELECTION_CHANGED, &ListPane::on_selected, this);
    list_->Bind(wxEVT_DATAVIEW_ITEM_CONTEXT_MENU, &ListPane::on_context, this);
    add_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) {
        menus_.run(desk_.view().place == desk::Place::students ? "student.add" : "horn.add");
    });
}

void ListPane::refresh() {
    const bool students = desk_.view().place == desk::Place::students;
    if (shown_place_ != desk_.view().place) {
        shown_place_ = desk_.view().place;
        find_->ChangeValue({});
    }
    list_->GetColumn(title_column)->SetTitle(students ? _("Student") : _("Horn"));
    list_->GetColumn(beside_column)->SetTitle(students ? _("Horn") : _("With"));
    list_->GetColumn(now_column)->SetTitle(students ? _("Last sheet") : _("Now"));
    name_for_readers(list_, utf8(students ? _("Students") : _("Horns")));
    add_->SetLabel(students ? _("&Add student…") : _("&Add horn…"));
    add_->Enable(desk_.may_write());
    read_rows();
    share_width();
    selecting_ = true;
    model_->Reset(rows());
    selecting_ = false;
    const bool nothing_found = rows_.empty() && !find_->IsEmpty();
    none_->SetLabel(nothing_found ? shown(desk_.words().say(Sentence::find_nothing)) : wxString());
    none_->Wrap(GetClientSize().GetWidth() - 16);
    none_->Show(nothing_found);
    select_open_row();
    Layout();
}

void ListPane::read_rows() {
    rows_.clear();
    if (!desk_.has_studio()) return;
    const std::string find = utf8(find_->GetValue());
    if (desk_.view().place == desk::Place::students) {
        for (const auto& row : desk::student_rows(desk_.file(), desk_.words(), desk_.today(), find))
            rows_.push_back({row.id.number, shown(row.name), shown(row.horn), shown(row.now)});
    } else {
        for (const auto& row : desk::horn_rows(desk_.file(), desk_.words(), desk_.today(), find))
            rows_.push_back({row.id.number, shown(row.mark), shown(row.players), shown(row.now)});
    }
}

void ListPane::share_width() {
    const auto wish = [&](wxString Row::*text, unsigned column) {
        int widest = list_->GetTextExtent(list_->GetColumn(column)->GetTitle()).GetWidth() + bolder_title;
        for (const auto& row : rows_)
            widest = std::max(widest, list_->GetTextExtent(row.*text).GetWidth());
        return widest + cell_padding;
    };
    const int width = list_->GetClientSize().GetWidth();
    const bool students = desk_.view().place == desk::Place::students;
    // What identifies a row keeps a width of its own; names share what is left and may be shortened.
    const int now = std::min(wish(&Row::now, now_column), width * 2 / 5);
    int title = 0;
    int beside = 0;
    if (students) {
        beside = std::min(wish(&Row::beside, beside_column), width * 3 / 10);
        title = width - beside - now;
    } else {
        title = std::min(wish(&Row::title, title_column), width * 2 / 5);
        beside = width - title - now;
    }
    const auto set = [&](unsigned column, int wanted) {
        const int at_least = std::max(wanted, least_column_width);
        if (list_->GetColumn(column)->GetWidth() != at_least) list_->GetColumn(column)->SetWidth(at_least);
    };
    set(title_column, title);
    set(beside_column, beside);
}

void ListPane::select_open_row() {
    const auto& view = desk_.view();
    const std::int64_t open = view.place == desk::Place::students
                                  ? view.student.value_or(studio::StudentId{}).number
                                  : view.horn.value_or(studio::HornId{}).number;
    selecting_ = true;
    list_->UnselectAll();
    for (unsigned row = 0; row < rows(); ++row) {
        if (rows_[row].id != open) continue;
        const auto item = model_->GetItem(row);
        list_->Select(item);
        list_->EnsureVisible(item);
        break;
    }
    selecting_ = false;
}

void ListPane::open_row(unsigned row) {
    desk::View view = desk_.view();
    if (view.place == desk::Place::students) {
        view.student = studio::StudentId{rows_.at(row).id};
        view.horn.reset();
    } else {
        view.horn = studio::HornId{rows_.at(row).id};
    }
    told(this, [&] { desk_.go(view); });
}

void ListPane::on_selected(wxDataViewEvent& event) {
    if (selecting_ || !event.GetItem().IsOk()) return;
    open_row(model_->GetRow(event.GetItem()));
}

void ListPane::on_context(wxDataViewEvent& event) {
    if (event.GetItem().IsOk()) open_row(model_->GetRow(event.GetItem()));
    if (desk_.view().place == desk::Place::students)
        menus_.pop_up(*list_, {"student.add", "student.change", "student.horn", "student.return",
                               "student.archive", "student.remove"});
    else
        menus_.pop_up(*list_, {"horn.add", "horn.change", "horn.measure", "horn.archive", "horn.remove"});
}

void ListPane::on_find_key(wxKeyEvent& event) {
    switch (event.GetKeyCode()) {
        case WXK_ESCAPE:
            find_->Clear();
            return;
        case WXK_DOWN:
        case WXK_RETURN:
        case WXK_NUMPAD_ENTER:
            if (rows_.empty()) return;
            if (!list_->GetSelection().IsOk()) open_row(0);
            focus_list();
            return;
        default:
            event.Skip();
    }
}

void ListPane::focus_find() {
    find_->SetFocus();
    find_->SelectAll();
}

void ListPane::focus() {
    if (list_->GetSelection().IsOk())
        focus_list();
    else
        focus_find();
}

void ListPane::focus_list() {
    list_->SetFocus();
    if (list_->GetSelection().IsOk()) list_->SetCurrentItem(list_->GetSelection());
}

}  // namespace lowledger::window
