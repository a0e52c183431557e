#pragma once

#include <span>
#include <string>

#include "reports/canvas/page.h"

namespace lowledger::pages {

/// Documents one behind the other as one, their bookmarks with them, so that a group prints as one.
canvas::Document joined(std::span<const canvas::Document> documents, const std::string& title);

}  // namespace lowledger::pages
