#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <vector>
#include <wx/dialog.h>
#include <wx/scrolwin.h>
#include <wx/stattext.h>

#include "app/window/painter.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/pages/named.h"
#include "reports/words/words.h"

namespace lowledger::window {

/// Shows a document as it will be printed: the same recorded page. From here it is saved as PDF, printed,
/// opened in the system's viewer or, where the system has a way to, put into an e-mail draft.
class Preview : public wxDialog {
  public:
    /// `given_out` is called when the document is saved, printed or handed to another program.
    Preview(wxWindow* parent, canvas::Document document, const canvas::Faces& faces,
            const words::Words& words, std::string file_name, std::function<void()> given_out);

    void save_as(const std::filesystem::path& path);
    /// A file each into the folder: all or none. Throws Refusal that names the file.
    void save_each(const std::filesystem::path& folder);

  private:
    class Sheet;
    void on_save();
    void on_save_each();
    void on_print();
    void on_open();
    void on_mail();
    /// The document as a file for another program.
    [[nodiscard]] std::filesystem::path file_to_hand_over() const;
    void show_page(std::size_t page);
    void zoom_by(double factor);
    void on_key(wxKeyEvent& event);

    canvas::Document document_;
    /// What it was joined from.
    std::vector<pages::NamedDocument> parts_;
    const canvas::Faces& faces_;
    const words::Words& words_;
    std::string file_name_;
    std::function<void()> given_out_;
    Sheet* sheet_;
    wxStaticText* which_;
    std::size_t page_ = 0;
};

}  // namespace lowledger::window
