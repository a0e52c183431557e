#include "app/window/sheet_rows.h"

#include <algorithm>

#include "app/desk/note_names.h"
#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "reports/words/names.h"
#include "reports/words/tuning_words.h"

namespace lowledger::window {
namespace {

using words::Sentence;

constexpr int field_width = 64;
constexpr int row_gap = 4;
constexpr int column_gap = 10;

Sentence heading_of_take(int take) {
    switch (take) {
        case 1:
            return Sentence::sheet_take_1;
        case 2:
            return Sentence::sheet_take_2;
        case 3:
            return Sentence::sheet_take_3;
        default:
            return Sentence::sheet_take_more;
    }
}

}  // namespace

SheetRows::SheetRows(wxWindow* parent, desk::Desk& desk) : wxScrolledWindow(parent), desk_(desk) {
    SetScrollRate(0, 12);
}

void SheetRows::refresh() {
    const auto* entry = desk_.entry();
    if (entry == nullptr) return;
    if (entry->rows() != shown_rows_ || entry->takes() != shown_takes_ ||
        shown_horn_ != entry->sheet().horn || shown_style_ != desk::note_style(desk_)) {
        make_fields();
    }
    for (std::size_t row = 0; row < rows_.size(); ++row) {
        for (std::size_t i = 0; i < rows_[row].takes.size(); ++i) {
            const desk::Cell cell{row, static_cast<int>(i) + 1};
            CommitField* field = rows_[row].takes[i];
            const auto reading = entry->reading(cell);
            const wxString text = shown(entry->text(cell));
            const bool pending = entry->is_pending(cell);
            if (pending)
                field->set_counted(reading ? shown(entry->reading_text(cell)) : wxString(), text);
            else
                field->set_counted(text);
            field->SetEditable(desk_.may_write());
        }
        const auto mean = entry->mean(row);
        rows_[row].mean->SetLabel(mean ? shown(words::cents_text(*mean)) : wxString());
    }
    show_remarks();
}

void SheetRows::make_fields() {
    const auto* entry = desk_.entry();
    const bool had_focus = std::ranges::any_of(rows_, [](const Row& row) {
        return std::ranges::any_of(row.takes, [](const CommitField* field) { return field->HasFocus(); });
    });
    making_ = true;
    Freeze();
    rows_.clear();
    DestroyChildren();
    shown_rows_ = entry->rows();
    shown_takes_ = entry->takes();
    shown_horn_ = entry->sheet().horn;
    shown_style_ = desk::note_style(desk_);

    auto* grid = new wxFlexGridSizer(shown_takes_ + 4, wxSize(column_gap, row_gap));
    grid->AddGrowableCol(static_cast<std::size_t>(shown_takes_) + 3);
    const auto heading = [&](Sentence text, std::initializer_list<words::Filling> fillings = {},
                             bool right = false) {
        auto* label = new wxStaticText(this, wxID_ANY, shown(desk_.words().say(text, fillings)));
        grid->Add(label, right ? wxSizerFlags().Right() : wxSizerFlags());
    };
    heading(Sentence::sheet_note);
    heading(Sentence::sheet_fingering);
    for (int take = 1; take <= shown_takes_; ++take) {
        if (take <= 3)
            heading(heading_of_take(take), {}, true);
        else
            heading(heading_of_take(take), {{"take", std::to_string(take)}}, true);
    }
    heading(Sentence::sheet_mean, {}, true);
    grid->AddSpacer(0);

    for (std::size_t row = 0; row < shown_rows_.size(); ++row) {
        const auto& note = shown_rows_[row];
        auto* name = new wxStaticText(
            this, wxID_ANY,
            shown_in_label(words::note_and_tuner_name(desk_.words(), note.note, desk::note_style(desk_))));
        name->SetFont(name->GetFont().Bold());
        grid->Add(name, wxSizerFlags().CentreVertical());
        grid->Add(
            new wxStaticText(this, wxID_ANY, shown(words::fingering_label(desk_.kind(), note.fingering))),
            wxSizerFlags().CentreVertical());
        Row made;
        for (int take = 1; take <= shown_takes_; ++take) {
            made.takes.push_back(make_field({row, take}));
            grid->Add(made.takes.back(), wxSizerFlags().CentreVertical());
        }
        made.mean = new wxStaticText(this, wxID_ANY, "+00", wxDefaultPosition, wxDefaultSize, wxALIGN_RIGHT);
        made.remark = new wxStaticText(this, wxID_ANY, {});
        grid->Add(made.mean, wxSizerFlags().Right().CentreVertical());
        grid->Add(made.remark, wxSizerFlags(1).Expand().CentreVertical());
        rows_.push_back(made);
    }
    SetSizer(grid);
    FitInside();
    Layout();
    Thaw();
    making_ = false;
    focused_.row = std::min(focused_.row, rows_.empty() ? 0 : rows_.size() - 1);
    if (had_focus) focus(focused_);
}

CommitField* SheetRows::make_field(desk::Cell cell) {
    auto* field = new CommitField(
        this, field_width,
        [this, cell](const wxString& text, CommitField::By by) { hand_over(cell, text, by); }, wxTE_RIGHT);
    const auto& row = shown_rows_.at(cell.row);
    const auto& words = desk_.words();
    const words::Speech speech{words, desk_.kind(), desk::note_style(desk_)};
    name_for_readers(field, words.say(Sentence::sheet_field,
                                      {{"played", words::played_and_tuner(speech, row.note, row.fingering)},
                                       {"take", std::to_string(cell.take)}}));
    field->SetName("reading " + std::to_string(cell.row) + " " + std::to_string(cell.take));
    field->on_restore([this, cell] { desk_.restore(cell); });
    field->Bind(wxEVT_SET_FOCUS, [this, cell](wxFocusEvent& event) {
        const bool other_row = focused_.row != cell.row;
        focused_ = cell;
        if (other_row && row_changed_) row_changed_();
        event.Skip();
    });
    field->Bind(wxEVT_CHAR_HOOK, [this, cell](wxKeyEvent& event) { on_key(event, cell); });
    field->Bind(wxEVT_TEXT, [this](wxCommandEvent& event) {
        if (!making_ && typing_) typing_();
        event.Skip();
    });
    return field;
}

void SheetRows::hand_over(desk::Cell cell, const wxString& text, CommitField::By by) {
    if (making_ || !desk_.may_write()) return;
    told(this, [&] {
        const desk::Cell next = desk_.entry()->after(cell);
        const auto outcome = desk_.type(cell, utf8(text.Strip(wxString::both)));
        using Kind = desk::SheetEntry::Outcome::Kind;
        const bool stays = outcome.kind == Kind::asks || outcome.kind == Kind::refused;
        if (by == CommitField::By::leaving || stays) return;
        if (next != cell) {
            // At once: the next key may be waiting already.
            focus(next);
            return;
        }
        // The last field may have opened another take, whose fields are still to be made.
        CallAfter([this, cell] { focus(desk_.entry()->after(cell)); });
    });
}

void SheetRows::on_key(wxKeyEvent& event, desk::Cell cell) {
    const bool plain = !event.HasAnyModifiers();
    if (plain && event.GetKeyCode() == WXK_DOWN && cell.row + 1 < rows_.size())
        focus({cell.row + 1, cell.take});
    else if (plain && event.GetKeyCode() == WXK_UP && cell.row > 0)
        focus({cell.row - 1, cell.take});
    else
        event.Skip();
}

void SheetRows::focus(desk::Cell cell) {
    if (cell.row >= rows_.size() || cell.take < 1) return;
    const auto& takes = rows_[cell.row].takes;
    if (static_cast<std::size_t>(cell.take) > takes.size()) return;
    takes[static_cast<std::size_t>(cell.take) - 1]->SetFocus();
}

void SheetRows::leave() {
    for (auto& row : rows_)
        for (auto* field : row.takes)
            if (field->HasFocus()) field->leave();
}

wxString SheetRows::remark_on(std::size_t row) const {
    const auto take = desk_.outlying_take(row);
    if (!take) return {};
    return shown(desk_.words().say(Sentence::sheet_take_apart, {{"take", std::to_string(*take)}}));
}

void SheetRows::show_remarks() {
    for (std::size_t row = 0; row < rows_.size(); ++row) {
        const wxString remark = remark_on(row);
        if (rows_[row].remark->GetLabel() != remark) rows_[row].remark->SetLabel(remark);
    }
    FitInside();
    Layout();
}

}  // namespace lowledger::window
