#pragma once

#include <wx/frame.h>

#include "app/desk/front.h"

namespace lowledger::window {

class MainFrame;

/// Answers what the desk asks, by dialogs over the frame.
class WindowFront : public desk::Front {
  public:
    explicit WindowFront(MainFrame& frame) : frame_(frame) {}

    std::optional<desk::NewStudio> ask_new_studio(const desk::NewStudio& start) override;
    std::optional<std::filesystem::path> ask_studio_to_open() override;
    std::optional<std::filesystem::path> ask_where_to_copy(const std::filesystem::path& start) override;
    std::optional<studio::StudioFacts> ask_facts(const studio::StudioFacts& start) override;
    std::optional<studio::Student> ask_student(const studio::Student& start) override;
    std::optional<desk::NewHorn> ask_new_horn() override;
    std::optional<studio::Horn> ask_horn(const studio::Horn& start) override;
    std::optional<desk::HornChoice> ask_horn_of(const studio::Student& student,
                                                const desk::HornChoice& start) override;
    std::optional<desk::MeasuredSlides> ask_measured(const studio::Horn& horn,
                                                     const desk::MeasuredSlides& start) override;
    bool type_pass(const std::string& title, desk::PassEntry& pass) override;
    std::optional<desk::SlipAnswers> ask(const desk::Slip& slip) override;
    bool confirm(const std::string& question, const std::string& verb) override;
    void show_handout() override;
    void show_chart(const desk::NoteChart& chart) override;
    const canvas::Faces& faces() override;
    void show_document(canvas::Document document, const std::string& file_name,
                       std::function<void()> handed_on) override;
    bool work_through(const std::vector<std::string>& names,
                      const std::function<void(std::size_t)>& piece) override;
    void show_kind_charts() override;
    void show_find_field() override;
    std::optional<studio::Found> ask_what_to_find() override;
    void show_manual(std::string_view title) override;
    void show_beside_settings(int part) override;
    void show_section() override;
    void say(const std::string& sentence) override;
    void close() override;

  private:
    MainFrame& frame_;
};

}  // namespace lowledger::window
