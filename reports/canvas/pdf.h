#pragma once

#include <filesystem>
#include <string>

#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"

namespace lowledger::canvas {

/// The document as PDF: fonts embedded as subsets, text extractable, language, title, bookmarks and links
/// set, the same bytes for the same document. Throws Refusal for a document without pages, a bookmark to a
/// page that is not there, or a coordinate that is not finite or far off any page.
std::string pdf_bytes(const Document& document, const Faces& faces);

/// `pdf_bytes` into `write_file_whole` (whole_file.h).
void save_pdf(const Document& document, const Faces& faces, const std::filesystem::path& path);

}  // namespace lowledger::canvas
