#include "reports/pages/named.h"

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

std::vector<PdfFile> as_files(std::span<const NamedDocument> documents, const canvas::Faces& faces) {
    FileNames names;
    std::vector<PdfFile> files;
    files.reserve(documents.size());
    for (const NamedDocument& named : documents)
        files.push_back({names.next(named.name) + ".pdf", canvas::pdf_bytes(named.document, faces)});
    return files;
}

}  // namespace lowledger::pages
