#pragma once

#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <string_view>
#include <wx/frame.h>
#include <wx/listbox.h>
#include <wx/simplebook.h>
#include <wx/splitter.h>
#include <wx/weakref.h>

#include "app/desk/desk.h"
#include "app/window/empty_page.h"
#include "app/window/list_pane.h"
#include "app/window/manual_window.h"
#include "app/window/menus.h"
#include "app/window/place_page.h"
#include "app/window/tools.h"
#include "app/window/window_front.h"

namespace lowledger::window {

/// The window: places at the left, the place's list, and the page of what is chosen there.
class MainFrame : public wxFrame {
  public:
    /// What the frame takes from the world around it; see `desk::Surroundings`.
    struct World {
        std::function<studio::Date()> today;
        std::filesystem::path data_folder;
        std::function<void(const std::filesystem::path&)> make_sample;
        std::function<studio::TimeOfDay()> now = nullptr;
    };
    /// Throws canvas::MissingFace.
    explicit MainFrame(World world);
    ~MainFrame() override;

    [[nodiscard]] desk::Desk& desk() { return *desk_; }
    /// Opens a studio; what goes wrong is shown as a sentence. False if it did not open.
    bool open_studio(const std::filesystem::path& path);
    void show_find_field();
    void show_handout();
    void show_document(canvas::Document document, const std::string& title, std::function<void()> handed_on);
    void show_chart(const desk::NoteChart& chart);
    [[nodiscard]] const Tools& tools() const { return *tools_; }
    void show_beside_settings(int part);
    void show_manual(std::string_view title);
    /// The keys go to the section that is shown.
    void focus_section();
    /// True when no work is under way and nothing waits to be shown.
    [[nodiscard]] bool settled() const { return desk_->idle() && !showing_waits_; }

  private:
    void make_parts();
    void on_news(const desk::News& news);
    void show_waiting_news();
    void show_news();
    void focus_shown_section();
    void show_title();
    void show_page();
    void show_empty(bool nothing_yet);
    [[nodiscard]] PlacePage& page();
    /// The place that is open has a list, and there is a studio to list.
    [[nodiscard]] bool has_list() const;
    void fold_list(bool fold);
    /// Of the place that is shown.
    [[nodiscard]] int& list_width();
    bool keep_field_before_undo(const desk::Action& action);
    void on_close(wxCloseEvent& event);
    void leave_fields();

    canvas::Faces faces_;
    engraving::Engraver engraver_;
    engraving::Engraver large_engraver_;
    WindowFront front_;
    std::unique_ptr<desk::Desk> desk_;
    std::unique_ptr<Menus> menus_;
    std::unique_ptr<Tools> tools_;
    wxListBox* places_ = nullptr;
    wxSplitterWindow* splitter_ = nullptr;
    ListPane* list_ = nullptr;
    wxSimplebook* pages_ = nullptr;
    EmptyPage* empty_ = nullptr;
    wxWeakRef<ManualWindow> manual_;
    std::map<desk::Place, PlacePage*> page_of_;
    std::map<desk::Place, int> list_widths_;
    desk::News waiting_;
    bool showing_waits_ = false;
    desk::View shown_view_;
};

}  // namespace lowledger::window
