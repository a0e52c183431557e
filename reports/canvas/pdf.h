#pragma once

#include <filesystem>
#include <string>

#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"

namespace lowledger::canvas {

/// The document as PDF: fonts embedded as subsets, text extractable, language, title, bookmarks and links
/// set, the same bytes for the same document. Throws Refusal for a document without pages or with a
/// coordinate that is not finite.
std::string pdf_bytes(const Document& document, const Faces& faces);

/// Writes bytes to `path` whole or not at all: a new file beside it, flushed to disk, then renamed over it.
/// Throws Refusal that names the file (folder missing, not writable, disk full); what was at `path` before is
/// then untouched.
void write_file_whole(const std::filesystem::path& path, std::string_view bytes);

/// `pdf_bytes` into `write_file_whole`.
void save_pdf(const Document& document, const Faces& faces, const std::filesystem::path& path);

}  // namespace lowledger::canvas
