#include "tests/app/desk/prepared_studio.h"

#include <cstdlib>
#include <stdexcept>
#include <string>

#include "model/studio/questions.h"

namespace lowledger::desk {
namespace {

std::filesystem::path new_folder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "lowledger-desk-XXXXXX").string();
    if (mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no temporary folder");
    return pattern;
}

studio::HornId add_horn(store::Edit& edit, const char* kind_id, const char* mark) {
    const auto* kind = horns::find_kind(horns::built_in_kinds(), kind_id);
    auto horn = studio::horn_of(*kind);
    horn.mark = mark;
    const auto id = edit.add(horn);
    for (const auto& position : studio::designed_positions(*kind, id, studio::Date(2026, 9, 1)))
        edit.add(position);
    return id;
}

}  // namespace

std::optional<SlipAnswers> ScriptedFront::ask(const Slip& asked) {
    said += asked.title() + "\n";
    if (!slip) return std::nullopt;
    const SlipAnswers answers = asked.filled_in(*slip);
    if (const auto problem = asked.problem(answers)) {
        said += problem->sentence + "\n";
        return std::nullopt;
    }
    return answers;
}

const canvas::Faces& ScriptedFront::faces() {
    static const canvas::Faces of_all_tests;
    return of_all_tests;
}

PreparedStudio::PreparedStudio() : folder(new_folder()) {
    desk = std::make_unique<Desk>(
        Surroundings{[] { return test_day; }, folder,
                     [](const std::filesystem::path& path) { store::StudioFile::create(path, {}); }, [] {}},
        front);
    studio::StudioFacts facts;
    facts.name = "Test studio";
    desk->create({folder / "test.lowledger", facts});
    desk->file().edit("prepare", [&](store::Edit& edit) {
        studio::Student student;
        student.name = "Ada Example";
        student.level = studio::Level::middle;
        ada = edit.add(student);
        student.name = "Ben Beispiel";
        ben = edit.add(student);
        tuba = add_horn(edit, "bbb-tuba-3", "T-1");
        spare = add_horn(edit, "bbb-tuba-4", "T-2");
        edit.add(studio::Lesson{
            .id = {}, .student = ben, .on = test_day, .starts = studio::TimeOfDay(15, 30), .room = "2"});
        edit.add(studio::Lesson{.id = {},
                                .student = ben,
                                .on = test_day - 7,
                                .starts = studio::TimeOfDay(15, 30),
                                .state = studio::Lesson::State::cancelled,
                                .make_up_owed = true});
        const auto routines = desk->file().routines();
        const auto given = routines.front().id;
        edit.remove(routines.back().id);
        edit.add(studio::Assignment{.id = {},
                                    .routine = given,
                                    .student = ada,
                                    .from = studio::Date(2026, 11, 20),
                                    .until = studio::Date(2026, 11, 27)});
        edit.add(studio::Piece{.id = {}, .student = ada, .title = "March", .from = studio::Date(2026, 9, 7)});
        edit.add(studio::HornUse{{}, ada, tuba, studio::Date(2026, 9, 7), std::nullopt});
        for (const auto& [slide, mm] :
             {std::pair("main", 20.0), {"first", 10.0}, {"second", 5.0}, {"third", 25.0}})
            edit.add(studio::SlidePosition{{},
                                           tuba,
                                           slide,
                                           studio::Date(2026, 9, 7),
                                           units::Millimetres(mm),
                                           studio::SlidePosition::Origin::measured});
    });
}

PreparedStudio::~PreparedStudio() {
    desk.reset();
    std::error_code ignored;
    std::filesystem::remove_all(folder, ignored);
}

void PreparedStudio::lend_and_note() {
    desk->file().edit("lend and note", [&](store::Edit& edit) {
        studio::Loan loan{.id = {}, .horn = tuba, .student = ben, .from = studio::Date(2026, 2, 2)};
        loan.until = studio::Date(2026, 7, 10);
        loan.condition_out = "two small dents";
        edit.add(loan);
        loan = {.id = {}, .horn = tuba, .student = ada, .from = studio::Date(2026, 9, 7)};
        loan.due = studio::Date(2026, 11, 20);
        loan.condition_out = "two small dents";
        edit.add(loan);
        studio::Upkeep work{.id = {}, .horn = tuba, .noted_on = studio::Date(2026, 9, 1)};
        work.done_on = work.noted_on;
        work.next_due = studio::Date(2027, 9, 1);
        edit.add(work);
        work = {.id = {}, .horn = tuba, .work = studio::Upkeep::Work::repaired, .noted_on = test_day};
        work.what = "water key leaks";
        edit.add(work);
    });
}

studio::LessonId PreparedStudio::add_group_lesson() {
    studio::LessonId lesson;
    desk->file().edit("group", [&](store::Edit& edit) {
        const auto low_four = edit.add(studio::Group{
            .id = {}, .name = "Low four", .members = {{ada, test_day - 30}, {ben, test_day - 30}}});
        lesson = edit.add(
            studio::Lesson{.id = {}, .group = low_four, .on = test_day, .starts = studio::TimeOfDay(10, 0)});
    });
    return lesson;
}

void PreparedStudio::plan_a_term() {
    desk->file().edit("plan a term", [&](store::Edit& edit) {
        studio::Term autumn{.id = {},
                            .name = "Autumn",
                            .first = studio::Date(2026, 8, 31),
                            .last = studio::Date(2026, 12, 18)};
        autumn.holidays = {{studio::Date(2026, 10, 12), studio::Date(2026, 10, 23), "half-term"}};
        term = edit.add(autumn);
        studio::Group both{.id = {}, .name = "Tuba duo"};
        both.members = {{ada, studio::Date(2026, 9, 1)}, {ben, studio::Date(2026, 9, 1)}};
        group = edit.add(both);
        studio::TimetableSlot slot{.id = {}, .term = term, .group = group};
        slot.starts = studio::TimeOfDay(15, 0);
        edit.add(slot);
        slot = {.id = {}, .term = term, .student = ada, .weekday = 3};
        slot.starts = studio::TimeOfDay(16, 0);
        edit.add(slot);
        edit.add(
            studio::Lesson{.id = {}, .group = group, .on = test_day, .starts = studio::TimeOfDay(10, 0)});
    });
}

void PreparedStudio::turn_to_ada() {
    desk->go({.place = Place::students, .student = ada});
    const auto rows = desk->entry()->rows();
    for (int take = 1; take <= 2; ++take) {
        for (std::size_t row = 0; row < rows.size(); ++row) {
            const bool open = rows[row].fingering == horns::Fingering{};
            desk->type({row, take}, open ? "+24" : "+31");
        }
    }
    desk->settle();
}

}  // namespace lowledger::desk
