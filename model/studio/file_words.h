#pragma once

#include <optional>
#include <string_view>

#include "model/studio/lending.h"
#include "model/studio/lessons.h"
#include "model/studio/own_words.h"
#include "model/studio/people.h"
#include "model/studio/practice.h"
#include "model/studio/records.h"

namespace lowledger::studio {

/// The words that stand for a choice in files (studio file, CSV, JSON, command line): "beginner", "letter",
/// "flats", "measured". The reading side takes exactly those; empty for any other text.
std::string_view file_word(Level level);
std::string_view file_word(StudioFacts::Paper paper);
std::string_view file_word(units::Accidentals accidentals);
std::string_view file_word(units::Naming naming);
std::string_view file_word(SlidePosition::Origin origin);
std::string_view file_word(HeadPicture::Type type);
std::string_view file_word(AtHome choice);
std::string_view file_word(StudentEvent::Kind choice);
std::string_view file_word(Upkeep::Work choice);
std::string_view file_word(Lesson::State choice);
std::string_view file_word(Attendance::State choice);
std::string_view file_word(Assignment::End choice);

std::optional<Level> parse_level(std::string_view word);
std::optional<StudioFacts::Paper> parse_paper(std::string_view word);
std::optional<units::Accidentals> parse_accidentals(std::string_view word);
std::optional<units::Naming> parse_naming(std::string_view word);
std::optional<SlidePosition::Origin> parse_origin(std::string_view word);
std::optional<HeadPicture::Type> parse_picture_type(std::string_view word);
std::optional<AtHome> parse_at_home(std::string_view word);
std::optional<StudentEvent::Kind> parse_event_kind(std::string_view word);
std::optional<Upkeep::Work> parse_work(std::string_view word);
std::optional<Lesson::State> parse_lesson_state(std::string_view word);
std::optional<Attendance::State> parse_attendance(std::string_view word);
std::optional<Assignment::End> parse_assignment_end(std::string_view word);

}  // namespace lowledger::studio
