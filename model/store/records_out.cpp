#include "model/store/records_out.h"

#include <algorithm>

#include "model/store/queries.h"
#include "model/store/rows.h"

namespace lowledger::store {
namespace {

using studio::GivenSettings;
using studio::Horn;
using studio::HornId;
using studio::HornUse;
using studio::HornUseId;
using studio::SlidePosition;
using studio::Student;
using studio::StudentId;
using studio::StudioFacts;
using studio::TuningSheet;
using studio::TuningSheetId;

/// The choice that a word of the file stands for.
template <typename Parse>
auto choice(Statement& row, int column, Parse parse) {
    const auto value = parse(row.text(column));
    if (!value) row.damaged(column);
    return *value;
}

units::Millimetres millimetres(Statement& row, int column) {
    return units::Millimetres(row.real(column));
}

/// Values that carry their place, in its order.
template <typename Value>
std::vector<Value> in_order(std::vector<std::pair<int, Value>> placed) {
    std::ranges::stable_sort(placed, {}, &std::pair<int, Value>::first);
    std::vector<Value> values;
    values.reserve(placed.size());
    for (auto& [place, value] : placed)
        values.push_back(std::move(value));
    return values;
}

SlidePosition slide_position_in(Statement& row) {
    return {.id = row.id<studio::SlidePositionId>(0),
            .horn = row.id<HornId>(1),
            .slide = row.text(2),
            .on = row.date(3),
            .position = millimetres(row, 4),
            .origin = choice(row, 5, studio::parse_origin)};
}

HornUse horn_use_in(Statement& row) {
    return {.id = row.id<HornUseId>(0),
            .student = row.id<StudentId>(1),
            .horn = row.id<HornId>(2),
            .from = row.date(3),
            .until = row.optional_date(4)};
}

GivenSettings given_settings_in(Statement& row) {
    return {.id = row.id<studio::GivenSettingsId>(0),
            .student = row.id<StudentId>(1),
            .horn = row.id<HornId>(2),
            .sheet = row.optional(3, [&](int column) { return row.id<TuningSheetId>(column); }),
            .on = row.date(4),
            .engine = row.text(5),
            .json = row.text(6),
            .moved_on = row.optional_date(7)};
}

studio::Reading reading_in(Statement& row) {
    const int midi = row.small(0);
    if (midi < 0 || midi > 127) row.damaged(0);
    return {.note = units::Pitch(midi),
            .fingering = {choice(row, 1, acoustics::ValveSet::parse), row.small(2)},
            .partial = row.small(3),
            .take = row.small(4),
            .cents = units::Cents(row.real(5))};
}

/// Reads horns with their slides.
class HornReader {
  public:
    explicit HornReader(SQLite::Database& database) : slides_(database, queries::horn_slides) {}

    Horn operator()(Statement& row) {
        Horn horn = record_in<Horn>(row);
        horn.slides = slides_of(horn.id);
        return horn;
    }

  private:
    std::vector<studio::HornSlide> slides_of(HornId horn) {
        slides_.with(horn);
        return in_order(every(slides_, [](Statement& row) {
            return std::pair(row.small(4), studio::HornSlide{.slide = row.text(0),
                                                             .least = millimetres(row, 1),
                                                             .travel = millimetres(row, 2),
                                                             .stuck = row.flag(3)});
        }));
    }

    Statement slides_;
};

/// Reads sheets with their positions and readings.
class SheetReader {
  public:
    explicit SheetReader(SQLite::Database& database)
        : positions_(database, queries::sheet_positions), readings_(database, queries::readings) {}

    TuningSheet operator()(Statement& row) {
        TuningSheet sheet{
            .id = row.id<TuningSheetId>(0),
            .student = row.id<StudentId>(1),
            .horn = row.id<HornId>(2),
            .on = row.date(3),
            .mouthpiece = row.text(4),
            .warm = row.flag(5),
            .tuner_seen = row.flag(6),
            .mute = row.flag(7),
            .room = row.optional(8, [&](int column) { return units::Celsius(row.real(column)); }),
            .tuner_a4 = units::Hertz(row.real(9)),
            .positions = {},
            .readings = {},
            .remarks = row.text(10)};
        for (positions_.with(sheet.id); positions_.step();)
            sheet.positions.emplace(positions_.text(0), millimetres(positions_, 1));
        readings_.with(sheet.id);
        sheet.readings = in_order(every(
            readings_, [](Statement& reading) { return std::pair(reading.small(6), reading_in(reading)); }));
        return sheet;
    }

  private:
    Statement positions_;
    Statement readings_;
};

}  // namespace

StudioFacts read_facts(SQLite::Database& database) {
    Statement row(database, queries::facts);
    if (!row.step()) row.damaged(0);
    StudioFacts facts;
    facts.name = row.text(0);
    facts.teacher = row.text(1);
    facts.school = row.text(2);
    facts.a4 = units::Hertz(row.real(3));
    facts.usual_room = units::Celsius(row.real(4));
    facts.paper = choice(row, 5, studio::parse_paper);
    facts.accidentals = choice(row, 6, studio::parse_accidentals);
    facts.naming = choice(row, 7, studio::parse_naming);
    facts.currency = row.text(8);
    return facts;
}

std::vector<studio::OwnText> read_own_texts(SQLite::Database& database) {
    Statement rows(database, queries::own_texts);
    return every(
        rows, [](Statement& row) { return studio::OwnText{.sentence = row.text(0), .text = row.text(1)}; });
}

std::optional<studio::HeadPicture> read_head_picture(SQLite::Database& database) {
    Statement rows(database, queries::head_picture);
    return at_most_one(rows, [](Statement& row) {
        return studio::HeadPicture{.type = choice(row, 0, studio::parse_picture_type), .bytes = row.bytes(1)};
    });
}

std::vector<Student> read_students(SQLite::Database& database) {
    return records<Student>(database, queries::students);
}

std::optional<Student> read_student(SQLite::Database& database, StudentId id) {
    return record<Student>(database, queries::student, id);
}

std::vector<Horn> read_horns(SQLite::Database& database) {
    Statement rows(database, queries::horns);
    return every(rows, HornReader(database));
}

std::optional<Horn> read_horn(SQLite::Database& database, HornId id) {
    Statement rows(database, queries::horn);
    return at_most_one(rows.with(id), HornReader(database));
}

std::vector<SlidePosition> read_slide_history(SQLite::Database& database, HornId id) {
    Statement rows(database, queries::slide_history);
    return every(rows.with(id), slide_position_in);
}

std::vector<HornUse> read_horn_uses(SQLite::Database& database) {
    Statement rows(database, queries::horn_uses);
    return every(rows, horn_use_in);
}

std::vector<HornUse> read_horn_uses(SQLite::Database& database, StudentId id) {
    Statement rows(database, queries::horn_uses_of_student);
    return every(rows.with(id), horn_use_in);
}

std::vector<HornUse> read_horn_uses(SQLite::Database& database, HornId id) {
    Statement rows(database, queries::horn_uses_of_horn);
    return every(rows.with(id), horn_use_in);
}

std::vector<TuningSheet> read_sheets(SQLite::Database& database, StudentId id) {
    Statement rows(database, queries::sheets_of_student);
    return every(rows.with(id), SheetReader(database));
}

std::vector<TuningSheet> read_sheets(SQLite::Database& database, HornId id) {
    Statement rows(database, queries::sheets_of_horn);
    return every(rows.with(id), SheetReader(database));
}

std::optional<TuningSheet> read_sheet(SQLite::Database& database, TuningSheetId id) {
    Statement rows(database, queries::sheet);
    return at_most_one(rows.with(id), SheetReader(database));
}

std::vector<GivenSettings> read_given_settings(SQLite::Database& database, StudentId id) {
    Statement rows(database, queries::settings_of_student);
    return every(rows.with(id), given_settings_in);
}

std::vector<GivenSettings> read_given_settings(SQLite::Database& database, HornId id) {
    Statement rows(database, queries::settings_of_horn);
    return every(rows.with(id), given_settings_in);
}

}  // namespace lowledger::store
