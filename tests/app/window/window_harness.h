#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <wx/string.h>

#include "app/window/frame.h"

namespace lowledger::window {

/// The whole window in this process, on a display of its own, with today fixed. One a test.
class WindowHarness {
  public:
    WindowHarness();
    ~WindowHarness();
    WindowHarness(const WindowHarness&) = delete;
    WindowHarness& operator=(const WindowHarness&) = delete;

    [[nodiscard]] MainFrame& frame() { return *frame_; }
    [[nodiscard]] desk::Desk& desk() { return frame_->desk(); }
    [[nodiscard]] const std::filesystem::path& folder() const { return folder_; }

    /// Lets everything that is under way come to its end: keys on their way, events, work, what is to be
    /// shown.
    void settle();
    /// Lets events happen until `there` is so; the runner's time limit is the only clock.
    void until(const std::function<bool()>& there);

    /// Real keys, as the toolkit's simulator sends them through the display.
    void type(std::string_view text);
    void press(int key, int modifiers = 0);

    /// The window of that name under the frame; null if there is none that is shown.
    [[nodiscard]] wxWindow* find(const wxString& name);
    /// What the field of that name says.
    [[nodiscard]] std::string text_of(const wxString& name);
    /// Every text that the window shows: labels, fields, titles, rows of lists, the words of the
    /// drawings.
    [[nodiscard]] std::string shown_text();

  private:
    std::filesystem::path folder_;
    MainFrame* frame_ = nullptr;
};

/// A studio with one student on a measured three-valve tuba, and their page open.
studio::StudentId open_ada(WindowHarness& window);

}  // namespace lowledger::window
