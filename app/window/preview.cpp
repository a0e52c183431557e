#include "app/window/preview.h"

#include <algorithm>
#include <array>
#include <glib.h>
#include <memory>
#include <system_error>
#include <utility>
#include <vector>
#include <wx/button.h>
#include <wx/dcbuffer.h>
#include <wx/dirdlg.h>
#include <wx/filedlg.h>
#include <wx/filename.h>
#include <wx/msgdlg.h>
#include <wx/print.h>
#include <wx/settings.h>
#include <wx/sizer.h>
#include <wx/stdpaths.h>
#include <wx/utils.h>

#include "app/paper/output_files.h"
#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "model/units/refusal.h"
#include "reports/canvas/pdf.h"
#include "reports/canvas/undrawable.h"

namespace lowledger::window {
namespace {

using words::Sentence;

constexpr int around_page = 16;
constexpr double least_zoom = 0.4;
constexpr double most_zoom = 4.0;
constexpr double zoom_step = 1.25;
/// The desktop's own way to an e-mail draft (freedesktop.org, xdg-utils).
constexpr auto mail_program = "xdg-email";

bool can_mail() {
    const std::unique_ptr<char, decltype(&g_free)> found(g_find_program_in_path(mail_program), g_free);
    return found != nullptr;
}

/// Replays the pages on the printer's own context.
class Printout : public wxPrintout {
  public:
    Printout(const canvas::Document& document, const canvas::Faces& faces)
        : wxPrintout(shown(document.title)), document_(document), faces_(faces) {}

    bool OnPrintPage(int page) override {
        const auto& recorded = document_.pages.at(static_cast<std::size_t>(page) - 1);
        const std::unique_ptr<wxGraphicsContext> context(wxGraphicsContext::CreateFromUnknownDC(*GetDC()));
        if (!context) return false;
        int pixels = 0;
        int height = 0;
        GetPageSizePixels(&pixels, &height);
        int mm = 0;
        int mm_height = 0;
        GetPageSizeMM(&mm, &mm_height);
        paint(*context, recorded, faces_, paper_inks(), {static_cast<double>(pixels) / mm});
        return true;
    }
    bool HasPage(int page) override {
        return page >= 1 && static_cast<std::size_t>(page) <= document_.pages.size();
    }
    void GetPageInfo(int* first, int* last, int* from, int* to) override {
        *first = *from = 1;
        *last = *to = static_cast<int>(document_.pages.size());
    }

  private:
    const canvas::Document& document_;
    const canvas::Faces& faces_;
};

/// A line each for the first texts with characters that no font has, and how many more there are.
std::vector<wxString> undrawable_lines(const canvas::Document& document, const canvas::Faces& faces,
                                       const words::Words& words) {
    constexpr std::size_t most_lines = 3;
    std::vector<wxString> lines;
    const auto texts = canvas::undrawable(document, faces);
    for (const auto& [text, characters] : texts) {
        if (lines.size() == most_lines) break;
        std::string all;
        for (const std::string& character : characters)
            all += (all.empty() ? "" : " ") + character;
        lines.push_back(
            shown(words.say(Sentence::preview_undrawable, {{"characters", all}, {"text", text}})));
    }
    if (texts.size() > most_lines)
        lines.push_back(shown(words.say_counted(Sentence::preview_undrawable_more_one,
                                                Sentence::preview_undrawable_more_many,
                                                static_cast<int>(texts.size() - most_lines))));
    return lines;
}

}  // namespace

/// One page on a desk-grey ground, scrolled when it is larger than the window.
class Preview::Sheet : public wxScrolledCanvas {
  public:
    Sheet(wxWindow* parent, const canvas::Faces& faces) : wxScrolledCanvas(parent), faces_(faces) {
        SetBackgroundStyle(wxBG_STYLE_PAINT);
        SetScrollRate(12, 12);
        Bind(wxEVT_PAINT, [this](wxPaintEvent&) { draw(); });
        Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
            if (fits_) fit();
            Refresh();
            event.Skip();
        });
    }
    void show(const canvas::Page& page) {
        page_ = &page;
        fit();
    }
    void fit() {
        fits_ = true;
        if (page_ == nullptr) return;
        const auto size = GetSize();
        const double wide = (size.GetWidth() - 2 * around_page) / page_->size.width.value();
        const double high = (size.GetHeight() - 2 * around_page) / page_->size.height.value();
        set_scale(std::min(wide, high));
    }
    void zoom_by(double factor) {
        fits_ = false;
        const double one = Scale().pixels_per_mm;
        set_scale(std::clamp(scale_.pixels_per_mm * factor, least_zoom * one, most_zoom * one));
    }

  private:
    void set_scale(double pixels_per_mm) {
        scale_.pixels_per_mm = std::max(0.5, pixels_per_mm);
        SetVirtualSize(scale_.pixels(page_->size.width) + 2 * around_page,
                       scale_.pixels(page_->size.height) + 2 * around_page);
        Refresh();
    }
    void draw() {
        wxAutoBufferedPaintDC dc(this);
        dc.SetBackground(wxBrush(wxSystemSettings::GetColour(wxSYS_COLOUR_APPWORKSPACE)));
        dc.Clear();
        if (page_ == nullptr) return;
        DoPrepareDC(dc);
        const std::unique_ptr<wxGraphicsContext> context(wxGraphicsContext::Create(dc));
        if (!context) return;
        const int width = scale_.pixels(page_->size.width);
        const int height = scale_.pixels(page_->size.height);
        const int left = std::max(around_page, (GetSize().GetWidth() - width) / 2);
        context->Translate(left, around_page);
        const Inks inks = paper_inks();
        context->SetPen(wxPen(wxSystemSettings::GetColour(wxSYS_COLOUR_3DSHADOW)));
        context->SetBrush(wxBrush(inks.paper));
        context->DrawRectangle(0, 0, width, height);
        paint(*context, *page_, faces_, inks, scale_);
    }

    const canvas::Faces& faces_;
    const canvas::Page* page_ = nullptr;
    Scale scale_;
    bool fits_ = true;
};

Preview::Preview(wxWindow* parent, canvas::Document document, const canvas::Faces& faces,
                 const words::Words& words, std::string file_name, std::function<void()> given_out)
    : wxDialog(parent, wxID_ANY, shown(document.title), wxDefaultPosition, wxSize(860, 960),
               wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER | wxMAXIMIZE_BOX),
      document_(std::move(document)),
      parts_(pages::taken_apart(document_)),
      faces_(faces),
      words_(words),
      file_name_(std::move(file_name)),
      given_out_(std::move(given_out)) {
    // What is done with the pages, and under it how they are looked at: one row would be too wide.
    auto* row = new wxBoxSizer(wxHORIZONTAL);
    const auto button = [&](const wxString& label, const std::function<void()>& run) {
        auto* made = new wxButton(this, wxID_ANY, label);
        made->Bind(wxEVT_BUTTON, [this, run](wxCommandEvent&) { told(this, run); });
        row->Add(made, wxSizerFlags().CentreVertical().Border(wxRIGHT, gap));
        return made;
    };
    button(_("&Print…"), [this] { on_print(); })->SetDefault();
    button(_("&Save as PDF…"), [this] { on_save(); });
    if (parts_.size() > 1) button(_("Save a &file each…"), [this] { on_save_each(); });
    button(_("Open in &viewer"), [this] { on_open(); });
    if (can_mail()) button(_("&E-mail draft"), [this] { on_mail(); });
    row->AddStretchSpacer();
    row->Add(new wxButton(this, wxID_CANCEL, _("&Close")), wxSizerFlags().CentreVertical());
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(row, wxSizerFlags().Expand().Border(wxALL, gap));
    row = new wxBoxSizer(wxHORIZONTAL);
    button(_("Whole pa&ge"), [this] { sheet_->fit(); });
    button(_("S&maller"), [this] { zoom_by(1.0 / zoom_step); });
    button(_("&Larger"), [this] { zoom_by(zoom_step); });
    if (document_.pages.size() > 1) {
        button(_("Page &before"), [this] { show_page(page_ == 0 ? 0 : page_ - 1); });
        button(_("Page &after"), [this] { show_page(std::min(page_ + 1, document_.pages.size() - 1)); });
    }
    which_ = new wxStaticText(this, wxID_ANY, {});
    row->Add(which_, wxSizerFlags().CentreVertical());
    all->Add(row, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    sheet_ = new Sheet(this, faces);
    for (const wxString& line : undrawable_lines(document_, faces_, words_))
        all->Add(new wxStaticText(this, wxID_ANY, line, {}, {}, wxST_ELLIPSIZE_END),
                 wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    all->Add(sheet_, wxSizerFlags(1).Expand());
    SetSizer(all);
    Bind(wxEVT_CHAR_HOOK, &Preview::on_key, this);
    show_page(0);
    const wxSize room = wxGetClientDisplayRect().GetSize();
    SetSize(wxSize(std::min(860, room.GetWidth() - 40), std::min(1000, room.GetHeight() - 60)));
    CentreOnParent();
}

void Preview::show_page(std::size_t page) {
    page_ = page;
    const auto& shown_page = document_.pages.at(page);
    sheet_->show(shown_page);
    std::string content;
    for (const auto& item : shown_page.items)
        if (const auto* text = std::get_if<canvas::Text>(&item)) content += text->text + "\n";
    name_drawing(sheet_, document_.title, content);
    which_->SetLabel(
        document_.pages.size() < 2
            ? wxString()
            : shown(words_.say(Sentence::preview_page, {{"page", std::to_string(page + 1)},
                                                        {"pages", std::to_string(document_.pages.size())}})));
    Layout();
}

void Preview::zoom_by(double factor) {
    sheet_->zoom_by(factor);
}

void Preview::save_as(const std::filesystem::path& path) {
    canvas::save_pdf(document_, faces_, path);
    given_out_();
}

void Preview::on_save() {
    wxFileDialog dialog(this, _("Save as PDF"), {}, shown(file_name_), _("PDF (*.pdf)|*.pdf"),
                        wxFD_SAVE | wxFD_OVERWRITE_PROMPT);
    if (dialog.ShowModal() != wxID_OK) return;
    std::filesystem::path path(utf8(dialog.GetPath()));
    if (path.extension() != ".pdf") path += ".pdf";
    save_as(path);
}

void Preview::save_each(const std::filesystem::path& folder) {
    std::vector<paper::OutputFile> files;
    for (auto& file : pages::as_files(parts_, faces_))
        files.push_back({folder / file.name, std::move(file.bytes)});
    std::size_t there = 0;
    std::error_code ignored;
    for (const auto& file : files)
        there += std::filesystem::exists(file.path, ignored) ? 1 : 0;
    if (there > 0) {
        const auto question =
            words_.say_counted(Sentence::preview_replace_one, Sentence::preview_replace_many,
                               static_cast<int>(there), {{"folder", folder.string()}});
        wxMessageDialog dialog(this, shown(question), GetTitle(), wxYES_NO | wxNO_DEFAULT | wxICON_QUESTION);
        dialog.SetYesNoLabels(_("&Replace"), _("Never mind"));
        if (dialog.ShowModal() != wxID_YES) return;
    }
    paper::write_all(files);
    given_out_();
}

void Preview::on_save_each() {
    wxDirDialog dialog(this, _("A file each, into this folder"), {}, wxDD_DEFAULT_STYLE);
    if (dialog.ShowModal() == wxID_OK) save_each(std::filesystem::path(utf8(dialog.GetPath())));
}

void Preview::on_print() {
    wxPrintDialogData data;
    data.SetMinPage(1);
    data.SetMaxPage(static_cast<int>(document_.pages.size()));
    data.EnableSelection(false);
    wxPrintData paper;
    const bool letter = document_.pages.front().size.width > units::Millimetres(212.0);
    paper.SetPaperId(letter ? wxPAPER_LETTER : wxPAPER_A4);
    data.SetPrintData(paper);
    wxPrinter printer(&data);
    Printout printout(document_, faces_);
    if (printer.Print(this, &printout, true))
        given_out_();
    else if (wxPrinter::GetLastError() == wxPRINTER_ERROR)
        throw units::Refusal(words_.say(Sentence::print_failed));
}

std::filesystem::path Preview::file_to_hand_over() const {
    const std::filesystem::path path = std::filesystem::path(utf8(wxFileName::GetTempDir())) / file_name_;
    canvas::save_pdf(document_, faces_, path);
    return path;
}

void Preview::on_open() {
    const auto path = file_to_hand_over();
    if (!wxLaunchDefaultApplication(shown(path.string())))
        throw units::Refusal(words_.say(Sentence::no_viewer, {{"file", path.string()}}));
    given_out_();
}

void Preview::on_mail() {
    const auto path = file_to_hand_over();
    const std::array<wxString, 5> words{mail_program, "--subject", shown(document_.title), "--attach",
                                        shown(path.string())};
    std::vector<const wchar_t*> arguments;
    for (const auto& word : words)
        arguments.push_back(word.wc_str());
    arguments.push_back(nullptr);
    if (wxExecute(arguments.data(), wxEXEC_ASYNC) <= 0)
        throw units::Refusal(words_.say(Sentence::no_mail, {{"file", path.string()}}));
    given_out_();
}

void Preview::on_key(wxKeyEvent& event) {
    const bool control = event.GetModifiers() == wxMOD_CONTROL;
    switch (event.GetKeyCode()) {
        case WXK_PAGEDOWN:
            show_page(std::min(page_ + 1, document_.pages.size() - 1));
            return;
        case WXK_PAGEUP:
            show_page(page_ == 0 ? 0 : page_ - 1);
            return;
        case '+':
        case '=':
        case WXK_NUMPAD_ADD:
            zoom_by(zoom_step);
            return;
        case '-':
        case WXK_NUMPAD_SUBTRACT:
            zoom_by(1.0 / zoom_step);
            return;
        case 'P':
            if (!control) break;
            told(this, [this] { on_print(); });
            return;
        case 'S':
            if (!control) break;
            told(this, [this] { on_save(); });
            return;
        default:
            break;
    }
    event.Skip();
}

}  // namespace lowledger::window
