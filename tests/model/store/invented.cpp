#include "tests/model/store/invented.h"

#include <algorithm>
#include <stdexcept>
#include <stdlib.h>
#include <unistd.h>

namespace lowledger::store::invented {

namespace fs = std::filesystem;
using studio::Date;
using units::Cents;
using units::Millimetres;

Folder::Folder() {
    // In memory where that can be: many small commits, and nothing here asks for the power to fail.
    const fs::path memory = "/dev/shm";
    const fs::path base = ::access(memory.c_str(), W_OK) == 0 ? memory : fs::temp_directory_path();
    std::string name = (base / "lowledger-store-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
    path_ = name;
    fs::permissions(path_, fs::perms::all);
}

Folder::~Folder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
}

std::vector<std::string> Folder::names() const {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(path_))
        names.push_back(entry.path().filename().string());
    std::ranges::sort(names);
    return names;
}

studio::StudioFacts facts() {
    studio::StudioFacts facts;
    facts.name = "Invented studio";
    facts.teacher = "A. Teacher";
    facts.school = "No School At All";
    facts.a4 = units::Hertz(442.0);
    facts.usual_room = units::Celsius(19.5);
    facts.paper = studio::StudioFacts::Paper::letter;
    facts.accidentals = units::Accidentals::sharps;
    facts.naming = units::Naming::german;
    facts.currency = "Kr";
    return facts;
}

studio::Student plain_student(const std::string& name) {
    studio::Student student;
    student.name = name;
    return student;
}

studio::Student full_student() {
    studio::Student student;
    student.name = "\u0141ucja O'Brien-\u0396\u03ae\u03c3\u03b7";
    student.called = "Lu";
    student.group = "Year 8; \"B\" band";
    student.level = studio::Level::advanced;
    student.tolerance = Cents(7.25);
    student.reader = "treble-bb";
    student.accidentals = units::Accidentals::sharps;
    student.remarks = "first line\nsecond line; DROP TABLE student; --";
    student.archived = true;
    student.year = "Year 8";
    student.at_home = studio::AtHome::mouthpiece_only;
    student.guardian = {.name = "R. O'Brien", .phone = "555 0100", .e_mail = "r@example.org"};
    student.goals = "first chair";
    student.since = Date(2024, 2, 29);
    return student;
}

studio::Horn plain_horn(const std::string& mark) {
    studio::Horn horn;
    horn.kind_id = "an-invented-kind";
    horn.mark = mark;
    horn.slides = {{"main", Millimetres(0.0), Millimetres(95.0)},
                   {"first", Millimetres(2.0), Millimetres(60.0)},
                   {"second", Millimetres(0.0), Millimetres(25.0)}};
    return horn;
}

studio::Horn full_horn(studio::StudentId owner) {
    studio::Horn horn = plain_horn("E-1");
    horn.kind_text = "id = \"an-invented-kind\"\nname = 'with \\ and \u266d'\n";
    horn.owner = owner;
    horn.maker_and_model = "none, none";
    horn.serial_number = "0007";
    horn.remarks = "dent in the bow";
    horn.archived = true;
    horn.inventory_tag = "INV 17";
    horn.belongs_to = "the town band";
    horn.case_text = "hard, wheels";
    horn.locker = "L3";
    horn.accessories = "strap; oil";
    horn.condition = "a dent in the bell";
    horn.value = studio::Money{.cents = 123456, .currency = "EUR"};
    horn.bought_on = Date(2019, 8, 31);
    horn.bought_for = studio::Money{.cents = -1, .currency = ""};
    horn.slides[2].stuck = true;
    return horn;
}

studio::SlidePosition position(studio::HornId horn, const std::string& slide, Date on, double mm) {
    return {.id = {}, .horn = horn, .slide = slide, .on = on, .position = Millimetres(mm)};
}

studio::HornUse use(studio::StudentId student, studio::HornId horn) {
    return {.id = {}, .student = student, .horn = horn, .from = Date(2026, 9, 1), .until = {}};
}

studio::TuningSheet plain_sheet(studio::StudentId student, studio::HornId horn) {
    return {.id = {},
            .student = student,
            .horn = horn,
            .on = Date(2026, 11, 25),
            .mouthpiece = {},
            .room = {},
            .positions = {},
            .readings = {},
            .remarks = {}};
}

studio::TuningSheet full_sheet(studio::StudentId student, studio::HornId horn) {
    studio::TuningSheet sheet = plain_sheet(student, horn);
    sheet.mouthpiece = "the deep one";
    sheet.warm = false;
    sheet.tuner_seen = true;
    sheet.mute = true;
    sheet.room = units::Celsius(17.5);
    sheet.tuner_a4 = units::Hertz(441.0);
    sheet.positions = {{"main", Millimetres(20.0)}, {"first", Millimetres(1.0 / 3.0)}};
    sheet.remarks = "a draughty hall";
    const auto reading = [](int midi, acoustics::ValveSet valves, int partial, int take, double cents) {
        return studio::Reading{units::Pitch(midi), {valves, 0}, partial, take, Cents(cents)};
    };
    // Not in the order of any key, which must be kept.
    sheet.readings = {reading(46, {}, 4, 1, -7.0),     reading(41, {1, 2, 4}, 3, 1, 12.5),
                      reading(44, {1}, 4, 1, 0.1),     reading(46, {}, 4, 2, -6.0),
                      reading(41, {1, 3}, 3, 2, 28.0), reading(34, {}, 2, 1, -50.0)};
    sheet.readings.push_back({units::Pitch(53), {{1}, 6}, 5, 3, Cents(3.0)});
    return sheet;
}

studio::GivenSettings settings(studio::StudentId student, studio::HornId horn) {
    return {.id = {},
            .student = student,
            .horn = horn,
            .sheet = {},
            .on = Date(2026, 11, 25),
            .engine = "0.1.0",
            .json = "{\"format\": \"lowledger.settings/1\"}",
            .moved_on = {}};
}

}  // namespace lowledger::store::invented
