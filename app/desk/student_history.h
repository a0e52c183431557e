#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/desk/desk.h"
#include "app/desk/listing.h"

namespace lowledger::desk {

/// Something that was, of the student whose page is open.
struct HistoryItem {
    studio::Date on;
    /// What kind of thing: "Lesson", "Tuning sheet".
    std::string what;
    std::string details;
    /// What opens; settings and events open nothing.
    std::optional<studio::LessonId> lesson{};
    std::optional<studio::TuningSheetId> sheet{};
    std::optional<studio::HornId> horn{};
};

/// Lessons up to today, sheets, settings given out, events and pieces begun; newest first.
std::vector<HistoryItem> student_history(const Desk& desk);
/// A row for each, by its place.
Listing history_listing(const std::vector<HistoryItem>& items, const words::Words& words);
/// Turns to the lesson's note or to the sheet.
void open_item(Desk& desk, const HistoryItem& item);

}  // namespace lowledger::desk
