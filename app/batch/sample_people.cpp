#include "app/batch/sample_readers.h"
#include "app/batch/sample_table.h"
#include "model/studio/file_words.h"

namespace lowledger::batch {

namespace {

using studio::Level;

SampleSheet read_sheet(const SampleTable& table, const SampleStudent& student) {
    SampleSheet sheet;
    sheet.week = table.week("week");
    sheet.on = table.get<std::string>("on").value_or("");
    if (sheet.on.empty())
        for (const SamplePlays& plays : student.plays)
            if (plays.from_week <= sheet.week && (!plays.until_week || sheet.week < *plays.until_week))
                sheet.on = plays.horn;
    if (sheet.on.empty()) table.refuse("week", "is one in which the student plays no horn.");
    sheet.wide = table.word("notes", {"tuning", "wide"}, "tuning") == 1;
    sheet.takes = static_cast<int>(table.get<std::int64_t>("takes").value_or(2));
    if (sheet.takes < 1 || sheet.takes > 9) table.refuse("takes", "is not from 1 to 9.");
    sheet.cold = table.get<bool>("cold").value_or(false);
    sheet.mute = table.get<bool>("mute").value_or(false);
    sheet.tuner_seen = table.get<bool>("tuner_seen").value_or(false);
    sheet.positions_known = table.get<bool>("positions").value_or(true);
    sheet.tuner_a4 = units::Hertz(table.get<double>("tuner_a4_hertz").value_or(440.0));
    if (const auto room = table.get<double>("room_celsius")) sheet.room = units::Celsius(*room);
    sheet.remarks = table.get<std::string>("remarks").value_or("");
    sheet.settings =
        static_cast<SampleSheet::Settings>(table.word("settings", {"none", "given", "moved"}, "none"));
    return sheet;
}

void read_guardian(const SampleTable& table, std::string_view file, studio::Guardian& guardian) {
    const toml::table* told = table.table("guardian");
    if (told == nullptr) return;
    const SampleTable keys(*told, file, {"name", "phone", "e_mail"});
    guardian.name = keys.require<std::string>("name");
    guardian.phone = keys.get<std::string>("phone").value_or("");
    guardian.e_mail = keys.get<std::string>("e_mail").value_or("");
}

SampleEvent read_event(const SampleTable& table) {
    const auto kind = studio::parse_event_kind(table.require<std::string>("kind"));
    if (!kind) table.refuse("kind", "is no kind of event.");
    return {table.week("week"), *kind, table.get<std::string>("remarks").value_or("")};
}

SamplePiece read_piece(const SampleTable& table) {
    return {table.require<std::string>("title"),
            table.get<std::string>("composer").value_or(""),
            table.get<std::string>("part").value_or(""),
            table.week("from"),
            table.week_if("until"),
            table.get<std::string>("remarks").value_or("")};
}

/// What a teacher knows of a student besides horn and sheets.
void read_life(const SampleTable& table, std::string_view file, SampleStudent& student) {
    student.since_week = table.week_if("since");
    student.record.goals = table.get<std::string>("goals").value_or("");
    if (const auto word = table.get<std::string>("at_home")) {
        student.record.at_home = studio::parse_at_home(*word);
        if (!student.record.at_home) table.refuse("at_home", "is none of horn, mouthpiece only, nothing.");
    }
    read_guardian(table, file, student.record.guardian);
    for (const toml::table* item : table.tables("events"))
        student.events.push_back(read_event(SampleTable(*item, file, {"week", "kind", "remarks"})));
    for (const toml::table* item : table.tables("pieces"))
        student.pieces.push_back(
            read_piece(SampleTable(*item, file, {"title", "composer", "part", "from", "until", "remarks"})));
    if (const toml::table* told = table.table("lesson")) {
        const SampleTable lesson(*told, file, {"at", "minutes", "room", "every_weeks"});
        student.lesson = SampleLesson{lesson.time("at"),
                                      std::chrono::minutes(lesson.get<std::int64_t>("minutes").value_or(30)),
                                      lesson.get<std::string>("room").value_or(""),
                                      static_cast<int>(lesson.get<std::int64_t>("every_weeks").value_or(1))};
    }
}

SampleStudent read_student(const SampleTable& table, std::string_view file) {
    SampleStudent student;
    student.record.name = table.require<std::string>("name");
    student.record.called = table.get<std::string>("called").value_or("");
    student.record.group = table.get<std::string>("group").value_or("");
    student.record.level =
        static_cast<Level>(table.word("level", {"beginner", "middle", "advanced"}, "beginner"));
    student.record.reader = table.get<std::string>("reader").value_or("");
    if (table.get<std::string>("accidentals"))
        student.record.accidentals = table.word("accidentals", {"flats", "sharps"}, "flats") == 0
                                         ? units::Accidentals::flats
                                         : units::Accidentals::sharps;
    student.record.remarks = table.get<std::string>("remarks").value_or("");
    student.record.archived = table.get<bool>("archived").value_or(false);
    student.lesson_day = table.weekday("lesson_day") - 1;
    read_life(table, file, student);
    for (const toml::table* item : table.tables("plays")) {
        const SampleTable plays(*item, file, {"horn", "from", "until"});
        student.plays.push_back(
            {plays.require<std::string>("horn"), plays.week("from"), plays.week_if("until")});
    }
    for (const toml::table* item : table.tables("sheets"))
        student.sheets.push_back(
            read_sheet(SampleTable(*item, file,
                                   {"week", "on", "notes", "takes", "cold", "mute", "tuner_seen", "positions",
                                    "tuner_a4_hertz", "room_celsius", "remarks", "settings"}),
                       student));
    return student;
}

}  // namespace

std::vector<SampleStudent> read_sample_students(const toml::table& root, std::string_view file) {
    const SampleTable top(root, file, {"student"});
    std::vector<SampleStudent> students;
    for (const toml::table* table : top.tables("student"))
        students.push_back(
            read_student(SampleTable(*table, file,
                                     {"name", "called", "group", "level", "lesson_day", "lesson", "since",
                                      "at_home", "guardian", "goals", "events", "pieces", "reader",
                                      "accidentals", "plays", "sheets", "remarks", "archived"}),
                         file));
    return students;
}

}  // namespace lowledger::batch
