#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "app/batch/print_request.h"
#include "app/paper/gathering.h"
#include "reports/pages/named.h"

namespace CLI {
class App;
}

namespace lowledger::batch {

/// What some pages of the studio book are asked besides.
struct BookAsked {
    /// By name; empty: the one of the day.
    std::string term;
    /// Days; empty: from the first lesson of the term of the day, and up to the day.
    std::string first;
    std::string last;
    /// Marks; empty: all.
    std::vector<std::string> horns;
    std::string remark;
};

void add_book_options(CLI::App& verb, BookAsked& asked);

/// What the pages of the studio book are made from.
struct BookPrinting {
    const PrintRequest& request;
    const BookAsked& asked;
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
