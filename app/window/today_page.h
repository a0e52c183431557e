#pragma once

#include <optional>
#include <wx/button.h>
#include <wx/stattext.h>

#include "app/desk/day.h"
#include "app/window/brief_view.h"
#include "app/window/empty_page.h"
#include "app/window/listing_view.h"
#include "app/window/place_page.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// The place Today: the day's lessons, what is overdue, and beside them what was said last time.
class TodayPage : public PlacePage {
  public:
    TodayPage(wxWindow* parent, const Tools& tools);

    [[nodiscard]] bool has_subject() const override { return tools_.desk.has_studio(); }
    void refresh(const desk::News& news) override;
    void focus_section() override;

  private:
    wxSizer* make_head();
    void show_day();
    void show_chosen();
    void choose(std::int64_t lesson);

    const Tools& tools_;
    desk::Day day_;
    wxStaticText* title_ = nullptr;
    wxStaticText* about_ = nullptr;
    ListingView* lessons_ = nullptr;
    EmptyPage* empty_ = nullptr;
    wxStaticText* due_heading_ = nullptr;
    ListingView* due_ = nullptr;
    BriefView* brief_ = nullptr;
};

}  // namespace lowledger::window
