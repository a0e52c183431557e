#include "reports/pages/named.h"

#include <utility>

#include "reports/canvas/pdf.h"
#include "reports/pages/file_names.h"
#include "reports/pages/joined.h"

namespace lowledger::pages {

canvas::Document as_one(std::span<const NamedDocument> documents, const std::string& title) {
    std::vector<canvas::Document> all;
    all.reserve(documents.size());
    for (const NamedDocument& named : documents)
        all.push_back(named.document);
    return joined(all, documents.size() == 1 ? documents.front().name : title);
}

std::vector<NamedDocument> taken_apart(const canvas::Document& document) {
    const auto& marks = document.bookmarks;
    if (marks.size() < 2 || marks.front().page != 0) return {{document.title, document}};
    std::vector<NamedDocument> parts;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const std::size_t first = marks[i].page;
        const std::size_t end = i + 1 < marks.size() ? marks[i + 1].page : document.pages.size();
        if (first >= end) continue;
        canvas::Document part;
        part.title = marks[i].title;
        part.author = document.author;
        part.language = document.language;
        part.pages.assign(document.pages.begin() + static_cast<std::ptrdiff_t>(first),
                          document.pages.begin() + static_cast<std::ptrdiff_t>(end));
        part.bookmarks = {{part.title, 0}};
        parts.push_back({part.title, std::move(part)});
    }
    return parts;
}

std::vector<PdfFile> as_files(std::span<const NamedDocument> documents, const canvas::Faces& faces) {
    FileNames names;
    std::vector<PdfFile> files;
    files.reserve(documents.size());
    for (const NamedDocument& named : documents)
        files.push_back({names.next(named.name) + ".pdf", canvas::pdf_bytes(named.document, faces)});
    return files;
}

}  // namespace lowledger::pages
