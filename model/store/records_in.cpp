#include "model/store/records_in.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>
#include <tuple>

#include "model/store/book_in.h"
#include "model/store/book_queries.h"
#include "model/store/queries.h"
#include "model/store/records_out.h"
#include "model/store/rows.h"
#include "model/store/search.h"

namespace lowledger::store {
namespace {

using studio::GivenSettings;
using studio::GivenSettingsId;
using studio::Horn;
using studio::HornId;
using studio::HornUse;
using studio::HornUseId;
using studio::SlidePosition;
using studio::SlidePositionId;
using studio::Student;
using studio::StudentId;
using studio::StudioFacts;
using studio::TuningSheet;
using studio::TuningSheetId;

/// The id that SQLite gave to the record that was just inserted.
template <typename Id>
Id new_id(SQLite::Database& database) {
    return Id{database.getLastInsertRowid()};
}

// What only belongs to a record, taken out before it.

void drop_contents(SQLite::Database& database, TuningSheetId id) {
    run(database, queries::drop_sheet_positions, id);
    run(database, queries::drop_readings, id);
}

void drop_dependents(SQLite::Database& database, TuningSheetId id) {
    run(database, queries::forget_sheet_of_settings, id);
    drop_contents(database, id);
}

template <typename Owner>
void drop_sheets_of(SQLite::Database& database, Owner owner) {
    for (const TuningSheet& sheet : read_sheets(database, owner))
        remove(database, sheet.id);
}

void drop_slide(SQLite::Database& database, HornId horn, const std::string& slide) {
    run(database, queries::drop_slide_positions, horn, slide);
    run(database, queries::drop_slide, horn, slide);
}

void drop_owned_horns(SQLite::Database& database, StudentId owner) {
    std::vector<HornId> owned;
    Statement rows(database, queries::horns_owned_by);
    for (rows.with(owner); rows.step();)
        owned.push_back(rows.id<HornId>(0));
    for (const HornId horn : owned) {
        Statement others(database, queries::others_on_horn);
        others.with(horn, owner).step();
        Statement borrowed(database, queries::others_borrowed);
        borrowed.with(horn, owner).step();
        if (others.flag(0) || borrowed.flag(0)) {
            throw units::Refusal(
                fmt::format("The student was not removed from {}: horn {} is theirs and others have played "
                            "it. Give that horn "
                            "another owner first, or archive the student.",
                            database.getFilename(), read_horn(database, horn)->mark));
        }
        remove(database, horn);
    }
}

// What a record consists of, besides its own row.

/// Slides are kept in place, since their history refers to them; those that are gone go with theirs.
void file_slides(SQLite::Database& database, HornId id, const Horn& horn) {
    Statement file(database,
                   "INSERT INTO horn_slide (horn_id, slide, place, least_mm, travel_mm, stuck) "
                   "VALUES (?1, ?2, ?3, ?4, ?5, ?6) ON CONFLICT (horn_id, slide) DO UPDATE SET "
                   "place = ?3, least_mm = ?4, travel_mm = ?5, stuck = ?6");
    std::set<std::string> filed;
    int place = 0;
    for (const studio::HornSlide& slide : horn.slides) {
        if (!filed.insert(slide.slide).second) {
            throw units::Refusal(fmt::format("Horn {} was not filed in {}: its {} slide is listed twice.",
                                             horn.mark, database.getFilename(), slide.slide));
        }
        file.with(id, slide.slide, place++, slide.least, slide.travel, slide.stuck).run();
    }
}

void drop_slides_not_in(SQLite::Database& database, const Horn& horn) {
    const std::optional<Horn> before = read_horn(database, horn.id);
    if (!before) return;
    for (const studio::HornSlide& old : before->slides) {
        if (std::ranges::find(horn.slides, old.slide, &studio::HornSlide::slide) == horn.slides.end())
            drop_slide(database, horn.id, old.slide);
    }
}

void refuse_twice(SQLite::Database& database, const TuningSheet& sheet) {
    std::set<std::tuple<units::Pitch, horns::Fingering, int, int>> seen;
    for (const studio::Reading& reading : sheet.readings) {
        if (seen.emplace(reading.note, reading.fingering, reading.partial, reading.take).second) continue;
        throw units::Refusal(
            fmt::format("The sheet of {} was not filed in {}: {} with valves {} stands twice in "
                        "take {}. Keep one of them, or make the other the next take.",
                        sheet.on.iso(), database.getFilename(), units::file_name(reading.note),
                        reading.fingering.valves.text(), reading.take));
    }
}

void file_contents(SQLite::Database& database, TuningSheetId id, const TuningSheet& sheet) {
    refuse_twice(database, sheet);
    Statement position(database,
                       "INSERT INTO sheet_position (sheet_id, slide, position_mm) VALUES (?1, ?2, ?3)");
    for (const auto& [slide, mm] : sheet.positions)
        position.with(id, slide, mm).run();
    Statement file(
        database,
        "INSERT INTO reading (sheet_id, note_midi, valves, hand_position, partial, take, cents, place) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)");
    int place = 0;
    for (const studio::Reading& reading : sheet.readings) {
        file.with(id, reading.note.midi(), reading.fingering.valves.text(), reading.fingering.position,
                  reading.partial, reading.take, reading.cents, place++)
            .run();
    }
}

/// SQLite's json_valid is not allowed in a schema that is not trusted, so this rule is held here.
void require_whole_json(SQLite::Database& database, const GivenSettings& settings) {
    Statement valid(database, "SELECT json_valid(?1)");
    valid.with(settings.json).step();
    if (valid.flag(0)) return;
    throw units::Refusal(
        fmt::format("The settings given out on {} were not filed in {}: they are not whole JSON.",
                    settings.on.iso(), database.getFilename()));
}

}  // namespace

void write_first(SQLite::Database& database, const StudioFacts& facts) {
    run(database,
        "INSERT INTO studio (id, name, teacher, school, a4_hz, usual_room_celsius, paper, accidentals, "
        "naming, currency) "
        "VALUES (1, ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)",
        facts.name, facts.teacher, facts.school, facts.a4, facts.usual_room, studio::file_word(facts.paper),
        studio::file_word(facts.accidentals), studio::file_word(facts.naming), facts.currency);
}

void replace(SQLite::Database& database, const StudioFacts& facts) {
    run(database,
        "UPDATE studio SET name = ?1, teacher = ?2, school = ?3, a4_hz = ?4, usual_room_celsius = ?5, "
        "paper = ?6, accidentals = ?7, naming = ?8, currency = ?9 WHERE id = 1",
        facts.name, facts.teacher, facts.school, facts.a4, facts.usual_room, studio::file_word(facts.paper),
        studio::file_word(facts.accidentals), studio::file_word(facts.naming), facts.currency);
}

void put(SQLite::Database& database, const studio::OwnText& text) {
    run(database,
        "INSERT INTO studio_text (sentence, text) VALUES (?1, ?2) ON CONFLICT (sentence) DO UPDATE SET "
        "text = ?2",
        text.sentence, text.text);
}

void remove_own_text(SQLite::Database& database, std::string_view sentence) {
    run(database, "DELETE FROM studio_text WHERE sentence = ?1", sentence);
}

void put(SQLite::Database& database, const studio::HeadPicture& picture) {
    run(database,
        "INSERT INTO studio_picture (id, type, bytes) VALUES (1, ?1, ?2) ON CONFLICT (id) DO UPDATE SET "
        "type = ?1, bytes = ?2",
        studio::file_word(picture.type), picture.bytes);
}

void remove_head_picture(SQLite::Database& database) {
    run(database, "DELETE FROM studio_picture WHERE id = 1");
}

StudentId insert(SQLite::Database& database, const Student& student) {
    return insert_row(database, student);
}

void replace(SQLite::Database& database, const Student& student) {
    replace_row(database, student);
}

void remove(SQLite::Database& database, StudentId id) {
    drop_book_of(database, id);
    drop_owned_horns(database, id);
    run(database, queries::drop_uses_of_student, id);
    run(database, queries::drop_settings_of_student, id);
    drop_sheets_of(database, id);
    remove_row(database, id);
    forget_removed_words(database);
}

HornId insert(SQLite::Database& database, const Horn& horn) {
    const HornId id = insert_row(database, horn);
    file_slides(database, id, horn);
    return id;
}

void replace(SQLite::Database& database, const Horn& horn) {
    replace_row(database, horn);
    drop_slides_not_in(database, horn);
    file_slides(database, horn.id, horn);
}

void remove(SQLite::Database& database, HornId id) {
    drop_book_of(database, id);
    run(database, queries::drop_uses_of_horn, id);
    run(database, queries::drop_settings_of_horn, id);
    drop_sheets_of(database, id);
    run(database, queries::drop_all_slide_positions, id);
    run(database, queries::drop_all_slides, id);
    remove_row(database, id);
}

SlidePositionId insert(SQLite::Database& database, const SlidePosition& position) {
    run(database,
        "INSERT INTO slide_position (horn_id, slide, on_date, position_mm, origin) VALUES (?1, ?2, ?3, ?4, "
        "?5)",
        position.horn, position.slide, position.on, position.position, studio::file_word(position.origin));
    return new_id<SlidePositionId>(database);
}

void remove(SQLite::Database& database, SlidePositionId id) {
    require_found(database, run(database, "DELETE FROM slide_position WHERE id = ?1", id), "slide position");
}

HornUseId insert(SQLite::Database& database, const HornUse& use) {
    run(database, "INSERT INTO horn_use (student_id, horn_id, from_date, until_date) VALUES (?1, ?2, ?3, ?4)",
        use.student, use.horn, use.from, use.until);
    return new_id<HornUseId>(database);
}

void replace(SQLite::Database& database, const HornUse& use) {
    const int records =
        run(database,
            "UPDATE horn_use SET student_id = ?2, horn_id = ?3, from_date = ?4, until_date = ?5 "
            "WHERE id = ?1",
            use.id, use.student, use.horn, use.from, use.until);
    require_found(database, records, "entry of who plays the horn");
}

void remove(SQLite::Database& database, HornUseId id) {
    require_found(database, run(database, "DELETE FROM horn_use WHERE id = ?1", id),
                  "entry of who plays the horn");
}

TuningSheetId insert(SQLite::Database& database, const TuningSheet& sheet) {
    run(database,
        "INSERT INTO tuning_sheet (student_id, horn_id, on_date, mouthpiece, warm, tuner_seen, mute, "
        "room_celsius, "
        "tuner_a4_hz, remarks) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)",
        sheet.student, sheet.horn, sheet.on, sheet.mouthpiece, sheet.warm, sheet.tuner_seen, sheet.mute,
        sheet.room, sheet.tuner_a4, sheet.remarks);
    const auto id = new_id<TuningSheetId>(database);
    file_contents(database, id, sheet);
    return id;
}

void replace(SQLite::Database& database, const TuningSheet& sheet) {
    const int records = run(
        database,
        "UPDATE tuning_sheet SET student_id = ?2, horn_id = ?3, on_date = ?4, mouthpiece = ?5, warm = ?6, "
        "tuner_seen = ?7, mute = ?8, room_celsius = ?9, tuner_a4_hz = ?10, remarks = ?11 WHERE id = ?1",
        sheet.id, sheet.student, sheet.horn, sheet.on, sheet.mouthpiece, sheet.warm, sheet.tuner_seen,
        sheet.mute, sheet.room, sheet.tuner_a4, sheet.remarks);
    require_found(database, records, "tuning sheet");
    drop_contents(database, sheet.id);
    file_contents(database, sheet.id, sheet);
}

void remove(SQLite::Database& database, TuningSheetId id) {
    drop_dependents(database, id);
    require_found(database, run(database, "DELETE FROM tuning_sheet WHERE id = ?1", id), "tuning sheet");
}

GivenSettingsId insert(SQLite::Database& database, const GivenSettings& settings) {
    require_whole_json(database, settings);
    run(database,
        "INSERT INTO given_settings (student_id, horn_id, sheet_id, on_date, engine, json, moved_on_date) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
        settings.student, settings.horn, settings.sheet, settings.on, settings.engine, settings.json,
        settings.moved_on);
    return new_id<GivenSettingsId>(database);
}

void replace(SQLite::Database& database, const GivenSettings& settings) {
    require_whole_json(database, settings);
    const int records =
        run(database,
            "UPDATE given_settings SET student_id = ?2, horn_id = ?3, sheet_id = ?4, on_date = ?5, "
            "engine = ?6, json = ?7, moved_on_date = ?8 WHERE id = ?1",
            settings.id, settings.student, settings.horn, settings.sheet, settings.on, settings.engine,
            settings.json, settings.moved_on);
    require_found(database, records, "record of the settings given out");
}

void remove(SQLite::Database& database, GivenSettingsId id) {
    require_found(database, run(database, "DELETE FROM given_settings WHERE id = ?1", id),
                  "record of the settings given out");
}

}  // namespace lowledger::store
