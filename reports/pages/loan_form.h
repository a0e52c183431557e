#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/studio/lending.h"
#include "model/studio/records.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/pages/page_style.h"
#include "reports/words/words.h"

namespace lowledger::pages {

/// What is signed before a horn goes home.
struct LoanForm {
    studio::StudioFacts facts;
    studio::Date date;
    studio::Student student;
    studio::Horn horn;
    std::string kind_name;
    /// As the kind has them (horns::HornKind::cautions).
    std::vector<std::string> cautions;
    /// Empty: not lent yet; its days are then written in by hand.
    std::optional<studio::Loan> loan{};
    /// Goes along; empty: none.
    std::string mouthpiece{};
    PageStyle style{};
};

/// The horn and its condition, blanks for the school's own terms, what to take care of, lines to sign.
canvas::Document loan_form(const LoanForm& form, const words::Words& words, const canvas::Faces& faces);

}  // namespace lowledger::pages
