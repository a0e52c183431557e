#include "app/window/listing_view.h"

#include <algorithm>
#include <utility>
#include <wx/clipbrd.h>
#include <wx/dataobj.h>

#include "app/window/access.h"
#include "app/window/text.h"

namespace lowledger::window {
namespace {

constexpr int cell_padding = 16;
// Titles are set bold and have a place for the arrow of the sorting.
constexpr int title_extra = 22;
constexpr int least_column_width = 48;

}  // namespace

class ListingView::Model : public wxDataViewVirtualListModel {
  public:
    explicit Model(const desk::Listing& listing) : listing_(listing) {}

    [[nodiscard]] unsigned GetColumnCount() const override {
        return static_cast<unsigned>(listing_.columns.size());
    }
    [[nodiscard]] wxString GetColumnType(unsigned /*column*/) const override { return "string"; }
    void GetValueByRow(wxVariant& value, unsigned row, unsigned column) const override {
        const bool there = row < listing_.rows.size() && column < listing_.rows[row].cells.size();
        value = there ? shown(listing_.rows[row].cells[column].text) : wxString();
    }
    bool SetValueByRow(const wxVariant& /*value*/, unsigned /*row*/, unsigned /*column*/) override {
        return false;
    }
    bool GetAttrByRow(unsigned row, unsigned /*column*/, wxDataViewItemAttr& attr) const override {
        const bool faint = row < listing_.rows.size() && listing_.rows[row].faint;
        attr.SetItalic(faint);
        return faint;
    }

  private:
    const desk::Listing& listing_;
};

ListingView::ListingView(wxWindow* parent, Menus& menus, const std::string& name)
    : wxDataViewCtrl(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                     wxDV_MULTIPLE | wxDV_ROW_LINES | wxBORDER_NONE),
      menus_(menus),
      model_(new Model(listing_)) {
    AssociateModel(model_.get());
    without_own_search(this);
    name_for_readers(this, name);
    explain_rows(this, [this](std::size_t row) {
        std::string text;
        if (row >= listing_.rows.size()) return text;
        for (const auto& cell : listing_.rows[row].cells)
            if (!cell.text.empty()) text += (text.empty() ? "" : " · ") + cell.text;
        return text;
    });
    Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
        share_width();
        event.Skip();
    });
    Bind(wxEVT_DATAVIEW_SELECTION_CHANGED, &ListingView::on_row_selected, this);
    Bind(wxEVT_DATAVIEW_ITEM_ACTIVATED, &ListingView::on_row_opened, this);
    Bind(wxEVT_DATAVIEW_ITEM_CONTEXT_MENU, &ListingView::on_context, this);
    Bind(wxEVT_DATAVIEW_COLUMN_HEADER_CLICK,
         [this](wxDataViewEvent& event) { sort_by(static_cast<std::size_t>(event.GetColumn())); });
    Bind(wxEVT_KEY_DOWN, &ListingView::on_key, this);
}

ListingView::~ListingView() = default;

void ListingView::show(desk::Listing listing) {
    const auto before = selected();
    const bool same_columns = std::ranges::equal(listing.columns, listing_.columns, {},
                                                 &desk::ListingColumn::title, &desk::ListingColumn::title);
    listing_ = std::move(listing);
    as_given_ = listing_.rows;
    if (!same_columns) make_columns();
    put_in_order();
    show_rows();
    share_width();
    select(before);
}

void ListingView::make_columns() {
    sorted_by_.reset();
    ClearColumns();
    for (unsigned i = 0; i < listing_.columns.size(); ++i) {
        const auto align = listing_.columns[i].number ? wxALIGN_RIGHT : wxALIGN_LEFT;
        auto* renderer = new wxDataViewTextRenderer("string", wxDATAVIEW_CELL_INERT, align);
        renderer->EnableEllipsize(wxELLIPSIZE_END);
        AppendColumn(new wxDataViewColumn(wxString(), renderer, i, -1, align, 0));
    }
    show_titles();
}

void ListingView::show_titles() {
    for (unsigned i = 0; i < listing_.columns.size(); ++i) {
        wxString title = shown(listing_.columns[i].title);
        if (sorted_by_ == i) title += downwards_ ? shown(" \u25BE") : shown(" \u25B4");
        GetColumn(i)->SetTitle(title);
    }
}

void ListingView::sort_by(std::size_t column) {
    if (column >= listing_.columns.size()) return;
    downwards_ = sorted_by_ == column && !downwards_;
    sorted_by_ = column;
    const auto before = selected();
    show_titles();
    put_in_order();
    show_rows();
    select(before);
}

void ListingView::put_in_order() {
    listing_.rows = as_given_;
    if (!sorted_by_) return;
    std::ranges::stable_sort(listing_.rows, [&](const desk::ListingRow& a, const desk::ListingRow& b) {
        const auto& first = downwards_ ? b : a;
        const auto& second = downwards_ ? a : b;
        return desk::stands_before(first.cells.at(*sorted_by_), second.cells.at(*sorted_by_));
    });
}

void ListingView::show_rows() {
    selecting_ = true;
    model_->Reset(rows());
    selecting_ = false;
}

std::optional<std::int64_t> ListingView::selected() const {
    wxDataViewItemArray items;
    if (GetSelections(items) != 1) return std::nullopt;
    const unsigned row = model_->GetRow(items[0]);
    if (row >= listing_.rows.size()) return std::nullopt;
    return listing_.rows[row].id;
}

std::vector<std::int64_t> ListingView::all_selected() const {
    std::vector<std::int64_t> ids;
    for (unsigned row = 0; row < rows(); ++row)
        if (IsSelected(model_->GetItem(row))) ids.push_back(listing_.rows[row].id);
    return ids;
}

void ListingView::select(std::optional<std::int64_t> id) {
    selecting_ = true;
    UnselectAll();
    for (unsigned row = 0; row < rows(); ++row) {
        if (listing_.rows[row].id != id) continue;
        const auto item = model_->GetItem(row);
        Select(item);
        // The keys go on from here, and Enter opens this one.
        SetCurrentItem(item);
        EnsureVisible(item);
        break;
    }
    selecting_ = false;
}

void ListingView::select_first() {
    if (rows() != 0) select(listing_.rows.front().id);
}

void ListingView::focus_rows() {
    SetFocus();
    const auto id = selected();
    if (!id) return;
    wxDataViewItemArray items;
    GetSelections(items);
    SetCurrentItem(items[0]);
}

int ListingView::wish(std::size_t column) const {
    int widest = GetTextExtent(shown(listing_.columns[column].title)).GetWidth() + title_extra;
    for (const auto& row : listing_.rows)
        if (column < row.cells.size())
            widest = std::max(widest, GetTextExtent(shown(row.cells[column].text)).GetWidth());
    return widest + cell_padding;
}

void ListingView::share_width() {
    const int width = GetClientSize().GetWidth();
    if (width <= 0 || listing_.columns.empty()) return;
    std::vector<int> wishes;
    int left = width;
    std::vector<unsigned> sharing;
    for (unsigned i = 0; i < listing_.columns.size(); ++i) {
        wishes.push_back(wish(i));
        if (listing_.columns[i].keeps_width) {
            wishes[i] = std::min(wishes[i], width * (i == 0 ? 3 : 2) / 5);
            left -= wishes[i];
        } else {
            sharing.push_back(i);
        }
    }
    // The smallest wish is met first: a short mark stays whole where a long name has to give way.
    std::ranges::sort(sharing, {}, [&](unsigned i) { return wishes[i]; });
    const auto widest = sharing.empty() ? 0U : sharing.back();
    for (std::size_t met = 0; met < sharing.size(); ++met) {
        const int share = left / static_cast<int>(sharing.size() - met);
        int& wanted = wishes[sharing[met]];
        wanted = std::max(std::min(wanted, share), least_column_width);
        left -= wanted;
    }
    if (!sharing.empty()) wishes[widest] += std::max(left, 0);
    for (unsigned i = 0; i < listing_.columns.size(); ++i) {
        const int wanted = std::max(wishes[i], least_column_width);
        if (GetColumn(i)->GetWidth() != wanted) GetColumn(i)->SetWidth(wanted);
    }
}

void ListingView::on_row_selected(wxDataViewEvent& /*event*/) {
    if (selecting_) return;
    if (changed_) changed_();
    if (!selected_) return;
    if (const auto id = selected()) selected_(*id);
}

void ListingView::on_row_opened(wxDataViewEvent& event) {
    const unsigned row = model_->GetRow(event.GetItem());
    if (opened_ && row < listing_.rows.size()) opened_(listing_.rows[row].id);
}

void ListingView::on_context(wxDataViewEvent& event) {
    if (event.GetItem().IsOk()) {
        const unsigned row = model_->GetRow(event.GetItem());
        if (row < listing_.rows.size() && selected() != listing_.rows[row].id) {
            select(listing_.rows[row].id);
            if (selected_) selected_(listing_.rows[row].id);
        }
    }
    std::vector<Menus::Extra> sorts;
    for (std::size_t i = 0; i < listing_.columns.size(); ++i)
        sorts.push_back(
            {wxString::Format(_("Sort by %s"), shown(listing_.columns[i].title)), [this, i] { sort_by(i); }});
    menus_.pop_up(*this, offered_, sorts);
}

void ListingView::on_key(wxKeyEvent& event) {
    if (event.GetModifiers() == wxMOD_CONTROL && event.GetKeyCode() == 'C')
        copy();
    else
        event.Skip();
}

void ListingView::copy() const {
    wxDataViewItemArray items;
    GetSelections(items);
    std::vector<desk::ListingRow> chosen;
    for (const auto& item : items)
        if (const unsigned row = model_->GetRow(item); row < listing_.rows.size())
            chosen.push_back(listing_.rows[row]);
    if (chosen.empty() || !wxTheClipboard->Open()) return;
    wxTheClipboard->SetData(new wxTextDataObject(shown(desk::as_spreadsheet(listing_, chosen))));
    wxTheClipboard->Close();
}

}  // namespace lowledger::window
