#pragma once

#include <wx/window.h>

#include "app/desk/front.h"
#include "app/desk/readers.h"
#include "app/window/tools.h"
#include "model/store/studio_file.h"
#include "reports/words/words.h"

namespace lowledger::window {

/// The dialogs behind `desk::Front`, each a form that is asked until it makes sense; empty for 'never mind'.
std::optional<desk::NewStudio> ask_new_studio(wxWindow* parent, const words::Words& words,
                                              const desk::NewStudio& start);
std::optional<studio::StudioFacts> ask_facts(wxWindow* parent, const words::Words& words,
                                             const studio::StudioFacts& start);
/// `readers` are the ways that the student's parts may be written.
std::optional<studio::Student> ask_student(wxWindow* parent, const words::Words& words,
                                           const std::vector<desk::ReaderOffer>& readers,
                                           const studio::Student& start);
std::optional<desk::NewHorn> ask_new_horn(wxWindow* parent, const Tools& tools);
/// `students` may own it.
std::optional<studio::Horn> ask_horn(wxWindow* parent, const words::Words& words,
                                     const std::vector<studio::Student>& students, const studio::Horn& start);
/// `horns` are those to choose from.
std::optional<desk::HornChoice> ask_horn_of(wxWindow* parent, const words::Words& words,
                                            const studio::Student& student,
                                            const std::vector<studio::Horn>& horns,
                                            const desk::HornChoice& start);
std::optional<desk::MeasuredSlides> ask_measured(wxWindow* parent, const words::Words& words,
                                                 const studio::Horn& horn, const desk::MeasuredSlides& start);

}  // namespace lowledger::window
