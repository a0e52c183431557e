#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace lowledger::desk {

class Desk;

/// A stretch of the manual in one look. Line breaks are in the text.
struct ManualRun {
    enum class Look { text, strong, code, heading };
    Look look = Look::text;
    std::string text;
    bool operator==(const ManualRun&) const = default;
};

/// What stands under one heading of the manual.
struct ManualPart {
    std::string title;
    std::vector<ManualRun> runs;
};

/// A text in CommonMark by its headings of the second level; what stands before the first has the title of
/// the first level. Pictures are left out.
std::vector<ManualPart> manual_parts(std::string_view common_mark);

/// The manual that comes with the program (docs/teacher.md). Its last part, the keys, is made from the
/// registry of actions.
const std::vector<ManualPart>& manual();

/// The title of the part that tells of what the desk is turned to.
std::string_view manual_title_for(const Desk& desk);

}  // namespace lowledger::desk
