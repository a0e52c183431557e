#include "reports/pages/joined.h"

namespace lowledger::pages {

canvas::Document joined(std::span<const canvas::Document> documents, const std::string& title) {
    canvas::Document all;
    all.title = title;
    for (const canvas::Document& document : documents) {
        if (all.author.empty()) all.author = document.author;
        const std::size_t before = all.pages.size();
        all.pages.insert(all.pages.end(), document.pages.begin(), document.pages.end());
        for (const canvas::Bookmark& bookmark : document.bookmarks)
            all.bookmarks.push_back({bookmark.title, before + bookmark.page});
    }
    if (!documents.empty()) all.language = documents.front().language;
    return all;
}

}  // namespace lowledger::pages
