#pragma once

#include <wx/window.h>

#include "app/desk/front.h"
#include "model/store/studio_file.h"
#include "reports/words/words.h"

namespace lowledger::window {

/// The dialogs behind `desk::Front`, each a form that is asked until it makes sense; empty for 'never mind'.
std::optional<desk::NewStudio> ask_new_studio(wxWindow* parent, const words::Words& words,
                                              const desk::NewStudio& start);
std::optional<studio::StudioFacts> ask_facts(wxWindow* parent, const words::Words& words,
                                             const studio::StudioFacts& start);
std::optional<studio::Student> ask_student(wxWindow* parent, const words::Words& words,
                                           const studio::Student& start);
/// `students` may own it. A new horn is of one of `kinds`, the first of them that of `start`.
std::optional<studio::Horn> ask_horn(wxWindow* parent, const words::Words& words,
                                     const std::vector<studio::Student>& students,
                                     const std::vector<horns::HornKind>& kinds, const studio::Horn& start);
/// `horns` are those to choose from.
std::optional<desk::HornChoice> ask_horn_of(wxWindow* parent, const words::Words& words,
                                            const studio::Student& student,
                                            const std::vector<studio::Horn>& horns,
                                            const desk::HornChoice& start);
std::optional<desk::MeasuredSlides> ask_measured(wxWindow* parent, const words::Words& words,
                                                 const studio::Horn& horn, const desk::MeasuredSlides& start);

}  // namespace lowledger::window
