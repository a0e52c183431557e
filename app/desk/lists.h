#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "model/store/studio_file.h"
#include "reports/words/words.h"

namespace lowledger::desk {

/// A row of the list of students: who, and what matters now.
struct StudentRow {
    studio::StudentId id;
    std::string name;
    /// The marks of the horns played today, or that there is none.
    std::string horn;
    /// When the last sheet was, or that there is none.
    std::string now;
    bool archived = false;
    bool operator==(const StudentRow&) const = default;
};

/// A row of the list of horns.
struct HornRow {
    studio::HornId id;
    std::string mark;
    /// Who plays it today.
    std::string players;
    /// What kind it is, and that a slide is stuck.
    std::string now;
    bool archived = false;
    bool operator==(const HornRow&) const = default;
};

/// The students whose name, group or horn has every word of `find` in it, letters of either case; all for an
/// empty one. In the order of the file: by name, archived ones last.
std::vector<StudentRow> student_rows(const store::StudioFile& file, const words::Words& words,
                                     studio::Date today, std::string_view find);
/// The same for horns: mark, kind, players.
std::vector<HornRow> horn_rows(const store::StudioFile& file, const words::Words& words, studio::Date today,
                               std::string_view find);

/// Whether every word of `find` is somewhere in `text`, letters of either case (A to Z and the letters of
/// Latin, Greek and Cyrillic that have a simple other case).
bool found_in(std::string_view text, std::string_view find);

/// The text as code points in lower case (the letters of `found_in`); a byte that is no UTF-8 stands for
/// itself.
std::u32string folded(std::string_view text);

}  // namespace lowledger::desk
