#pragma once

#include <span>
#include <string>
#include <vector>

#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"

namespace lowledger::pages {

/// A document and what it is called in a list, as a bookmark's head and, made safe, as a file.
struct NamedDocument {
    /// "Ida Holm, T-4"
    std::string name;
    canvas::Document document;
};

/// A group as one document with every one's bookmarks; `title` names it where there are several.
canvas::Document as_one(std::span<const NamedDocument> documents, const std::string& title);

/// What was joined, taken apart again at its bookmarks and called as they are; the document itself where it
/// has fewer than two, or pages before the first.
std::vector<NamedDocument> taken_apart(const canvas::Document& document);

struct PdfFile {
    /// Safe on every usual file system, no two alike, with ".pdf".
    std::string name;
    std::string bytes;
};

/// A file each.
std::vector<PdfFile> as_files(std::span<const NamedDocument> documents, const canvas::Faces& faces);

}  // namespace lowledger::pages
