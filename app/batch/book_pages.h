#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "app/batch/print_request.h"
#include "app/paper/gathering.h"
#include "reports/pages/named.h"

namespace lowledger::batch {

/// What the pages of the studio book are made from.
struct BookPrinting {
    const PrintRequest& request;
    const paper::Gathering& from;
    const words::Words& words;
    const canvas::Faces& faces;
};

/// A page of the studio book as the command line calls it.
struct BookPage {
    const char* word;
    const char* title;
    const char* about;
    std::vector<pages::NamedDocument> (*make)(const BookPrinting&);
};

const std::vector<BookPage>& book_pages();

}  // namespace lowledger::batch
