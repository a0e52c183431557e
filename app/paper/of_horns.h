#pragma once

#include <vector>

#include "app/paper/gathering.h"
#include "reports/pages/horn_card.h"
#include "reports/pages/loan_form.h"

namespace lowledger::paper {

pages::HornCard horn_card(const Gathering& from, const studio::Horn& horn);

/// Of what the student has on loan; or else of each horn played on the day, with the loan's days left open.
std::vector<pages::LoanForm> loan_forms(const Gathering& from, const studio::Student& student);

}  // namespace lowledger::paper
