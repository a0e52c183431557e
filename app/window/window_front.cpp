#include "app/window/window_front.h"

#include <algorithm>
#include <utility>
#include <wx/filedlg.h>
#include <wx/msgdlg.h>

#include "app/window/dialogs.h"
#include "app/window/find_dialog.h"
#include "app/window/frame.h"
#include "app/window/kind_charts.h"
#include "app/window/pass_dialog.h"
#include "app/window/progress.h"
#include "app/window/slip_dialog.h"
#include "app/window/text.h"

namespace lowledger::window {
namespace {

constexpr auto studio_files = "(*.lowledger)|*.lowledger";

std::optional<std::filesystem::path> chosen(wxFileDialog& dialog) {
    if (dialog.ShowModal() != wxID_OK) return std::nullopt;
    return std::filesystem::path(utf8(dialog.GetPath()));
}

}  // namespace

std::optional<desk::NewStudio> WindowFront::ask_new_studio(const desk::NewStudio& start) {
    return window::ask_new_studio(&frame_, frame_.desk().words(), start);
}

std::optional<std::filesystem::path> WindowFront::ask_studio_to_open() {
    wxFileDialog dialog(&frame_, _("Open studio"), shown(frame_.desk().data_folder().string()), {},
                        _("Studios") + " " + studio_files, wxFD_OPEN | wxFD_FILE_MUST_EXIST);
    return chosen(dialog);
}

std::optional<std::filesystem::path> WindowFront::ask_where_to_copy(const std::filesystem::path& start) {
    wxFileDialog dialog(&frame_, _("Save a copy"), shown(start.parent_path().string()),
                        shown(start.filename().string()), _("Studios") + " " + studio_files, wxFD_SAVE);
    return chosen(dialog);
}

std::optional<studio::StudioFacts> WindowFront::ask_facts(const studio::StudioFacts& start) {
    return window::ask_facts(&frame_, frame_.desk().words(), start);
}

std::optional<studio::Student> WindowFront::ask_student(const studio::Student& start) {
    return window::ask_student(&frame_, frame_.desk().words(), desk::readers_offered(frame_.desk(), start),
                               start);
}

std::optional<desk::NewHorn> WindowFront::ask_new_horn() {
    return window::ask_new_horn(&frame_, frame_.tools());
}

std::optional<studio::Horn> WindowFront::ask_horn(const studio::Horn& start) {
    return window::ask_horn(&frame_, frame_.desk().words(), frame_.desk().file().students(), start);
}

std::optional<desk::HornChoice> WindowFront::ask_horn_of(const studio::Student& student,
                                                         const desk::HornChoice& start) {
    auto horns = frame_.desk().file().horns();
    std::erase_if(horns, [](const studio::Horn& horn) { return horn.archived; });
    return window::ask_horn_of(&frame_, frame_.desk().words(), student, horns, start);
}

std::optional<desk::MeasuredSlides> WindowFront::ask_measured(const studio::Horn& horn,
                                                              const desk::MeasuredSlides& start) {
    return window::ask_measured(&frame_, frame_.desk().words(), horn, start);
}

bool WindowFront::type_pass(const std::string& title, desk::PassEntry& pass) {
    return PassDialog(&frame_, frame_.tools(), title, pass).type();
}

std::optional<desk::SlipAnswers> WindowFront::ask(const desk::Slip& slip) {
    return ask_slip(&frame_, slip);
}

bool WindowFront::confirm(const std::string& question, const std::string& verb) {
    wxMessageDialog dialog(&frame_, shown(question), "Lowledger", wxYES_NO | wxNO_DEFAULT | wxICON_QUESTION);
    dialog.SetYesNoLabels(shown(verb), _("Never mind"));
    return dialog.ShowModal() == wxID_YES;
}

void WindowFront::show_handout() {
    frame_.show_handout();
}

void WindowFront::show_beside_settings(int part) {
    frame_.show_beside_settings(part);
}

void WindowFront::show_section() {
    frame_.focus_section();
}

void WindowFront::show_chart(const desk::NoteChart& chart) {
    frame_.show_chart(chart);
}

const canvas::Faces& WindowFront::faces() {
    return frame_.tools().faces;
}

void WindowFront::show_document(canvas::Document document, const std::string& file_name,
                                std::function<void()> handed_on) {
    frame_.show_document(std::move(document), file_name, std::move(handed_on));
}

bool WindowFront::work_through(const std::vector<std::string>& names,
                               const std::function<void(std::size_t)>& piece) {
    return window::work_through(&frame_, names, piece);
}

void WindowFront::show_kind_charts() {
    KindCharts(&frame_, frame_.tools()).ShowModal();
}

void WindowFront::show_find_field() {
    frame_.show_find_field();
}

std::optional<studio::Found> WindowFront::ask_what_to_find() {
    return FindDialog(&frame_, frame_.tools()).find();
}

void WindowFront::show_manual(std::string_view title) {
    frame_.show_manual(title);
}

void WindowFront::say(const std::string& sentence) {
    wxMessageDialog(&frame_, shown(sentence), "Lowledger", wxOK | wxICON_INFORMATION).ShowModal();
}

void WindowFront::close() {
    frame_.Close();
}

}  // namespace lowledger::window
