#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>
#include <wx/dataview.h>

#include "app/desk/listing.h"
#include "app/window/menus.h"

namespace lowledger::window {

/// A table of records: sorted by any column, copied for a spreadsheet by Ctrl+C, with a context menu of
/// actions.
class ListingView : public wxDataViewCtrl {
  public:
    /// `name` is what a screen reader calls it.
    ListingView(wxWindow* parent, Menus& menus, const std::string& name);
    ~ListingView() override;

    /// Shows these rows, sorted as before; the row that was selected stays so if it is still there.
    void show(desk::Listing listing);
    [[nodiscard]] unsigned rows() const { return static_cast<unsigned>(listing_.rows.size()); }
    /// Of the one row that is selected.
    [[nodiscard]] std::optional<std::int64_t> selected() const;
    /// Of every row that is selected, as they stand.
    [[nodiscard]] std::vector<std::int64_t> all_selected() const;
    /// No news come of it. An id that is not there selects nothing.
    void select(std::optional<std::int64_t> id);
    /// The first row as it is sorted now; nothing where there is none.
    void select_first();
    /// The keys go to the selected row.
    void focus_rows();

    /// One row was selected by hand.
    void on_selected(std::function<void(std::int64_t)> listener) { selected_ = std::move(listener); }
    /// Other rows were selected by hand.
    void on_changed(std::function<void()> listener) { changed_ = std::move(listener); }
    /// Enter or a double click on a row.
    void on_opened(std::function<void(std::int64_t)> listener) { opened_ = std::move(listener); }
    /// The actions of the context menu, for the row selected first.
    void offer(std::vector<std::string_view> actions) { offered_ = std::move(actions); }

  private:
    class Model;

    void make_columns();
    void show_titles();
    /// Upwards, or the other way round where it is sorted by that column already.
    void sort_by(std::size_t column);
    void put_in_order();
    void show_rows();
    void share_width();
    [[nodiscard]] int wish(std::size_t column) const;
    void on_row_selected(wxDataViewEvent& event);
    void on_row_opened(wxDataViewEvent& event);
    void on_context(wxDataViewEvent& event);
    void on_key(wxKeyEvent& event);
    void copy() const;

    Menus& menus_;
    /// As the view shows it; `as_given_` keeps the order that it came in.
    desk::Listing listing_;
    std::vector<desk::ListingRow> as_given_;
    std::optional<std::size_t> sorted_by_;
    bool downwards_ = false;
    wxObjectDataPtr<Model> model_;
    std::vector<std::string_view> offered_;
    std::function<void(std::int64_t)> selected_;
    std::function<void(std::int64_t)> opened_;
    std::function<void()> changed_;
    bool selecting_ = false;
};

}  // namespace lowledger::window
