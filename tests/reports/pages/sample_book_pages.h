#pragma once

#include <string>
#include <vector>

#include "reports/canvas/faces.h"
#include "reports/pages/named.h"
#include "reports/pages/page_style.h"

namespace lowledger::pages {

/// What the invented records hold in every field that is never printed.
inline const std::string private_text = "PRIVATE";

/// Every page of the studio book: with usual records, with awkward ones (names of sixty letters, notes of two
/// thousand words, more rows than a page has), and with none.
std::vector<NamedDocument> book_pages(const PageStyle& style, const canvas::Faces& faces);

}  // namespace lowledger::pages
