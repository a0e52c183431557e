#include "tests/bench/forty_years.h"

#include <array>
#include <fmt/format.h>

namespace lowledger::store {
namespace {

using studio::Date;

constexpr auto given_names = std::to_array<const char*>(
    {"Ada", "Béla", "Cleo", "Dov", "Edda", "Finn", "Gül", "Hana", "Ilja", "Jonna"});
constexpr auto family_names = std::to_array<const char*>(
    {"Abel", "Brandt", "Castell", "Dorn", "Ekström", "Fabri", "Gross", "Horvat", "Imhof", "Juhl", "Kovač"});
constexpr auto works = std::to_array<const char*>({"long tones", "slurs", "scales", "the break", "buzzing",
                                                   "rhythm", "breathing", "articulation", "sight reading"});

/// A school year's part of the studio.
class Year {
  public:
    Year(Edit& edit, const StudioSize& size, int year) : edit_(edit), size_(size), year_(year) {}

    void add(std::vector<studio::StudentId>& students, std::vector<studio::HornId>& horns,
             studio::RoutineId routine) {
        add_horns(horns);
        add_students(students);
        const std::size_t active = 2 * static_cast<std::size_t>(size_.new_students_a_year);
        const std::size_t first = students.size() > active ? students.size() - active : 0;
        const std::vector<studio::StudentId> now(students.begin() + static_cast<std::ptrdiff_t>(first),
                                                 students.end());
        add_assignments(now, routine);
        add_loans(now, horns);
        add_lessons(now);
        add_sheets(now, horns);
    }

  private:
    /// The `nth` of `count` days spread over the year, the last of which is the studio's last day.
    [[nodiscard]] Date day(int nth, int count) const {
        return size_.last_day - 365 * (size_.years - 1 - year_) - 300 + (nth + 1) * 300 / count;
    }

    void add_horns(std::vector<studio::HornId>& horns) {
        const std::size_t wanted = static_cast<std::size_t>(size_.horns * (year_ + 1) / size_.years);
        while (horns.size() < wanted) {
            studio::Horn horn;
            horn.kind_id = "an-invented-kind";
            horn.mark = fmt::format("T-{}", horns.size() + 1);
            horn.condition = "a dent near the bow";
            horn.slides = {{"main", units::Millimetres(0), units::Millimetres(90)},
                           {"first", units::Millimetres(0), units::Millimetres(60)}};
            horns.push_back(edit_.add(horn));
            studio::Upkeep upkeep{.id = {}, .noted_on = day(0, 2)};
            upkeep.horn = horns.back();
            upkeep.work = studio::Upkeep::Work::cleaned;
            upkeep.done_on = upkeep.noted_on;
            upkeep.next_due = *upkeep.done_on + 365;
            edit_.add(upkeep);
        }
    }

    void add_students(std::vector<studio::StudentId>& students) {
        for (int i = 0; i < size_.new_students_a_year; ++i) {
            const std::size_t n = students.size();
            studio::Student student;
            student.name = fmt::format("{} {} {}", given_names.at(n % given_names.size()),
                                       family_names.at(n % family_names.size()), n);
            student.remarks = "an ear for low notes";
            student.archived = year_ + 2 < size_.years;
            students.push_back(edit_.add(student));
        }
    }

    void add_assignments(const std::vector<studio::StudentId>& students, studio::RoutineId routine) {
        for (const studio::StudentId student : students) {
            studio::Assignment given{.id = {}, .routine = routine, .from = day(0, 2)};
            given.student = student;
            if (year_ + 1 < size_.years) given.until = given.from + 100;
            edit_.add(given);
        }
    }

    void add_loans(const std::vector<studio::StudentId>& students, const std::vector<studio::HornId>& horns) {
        for (std::size_t i = 0; i < students.size() && i < horns.size(); ++i) {
            studio::Loan loan{.id = {}, .horn = horns[i], .student = students[i], .from = day(0, 30)};
            loan.until = loan.from + 250;
            loan.due = loan.until;
            edit_.add(loan);
            edit_.add(studio::HornUse{
                .id = {}, .student = students[i], .horn = horns[i], .from = loan.from, .until = loan.until});
        }
    }

    void add_lessons(const std::vector<studio::StudentId>& students) {
        for (int i = 0; i < size_.lessons_a_year; ++i) {
            const auto n = static_cast<std::size_t>(i);
            studio::Lesson lesson{.id = {}, .on = day(i, size_.lessons_a_year)};
            lesson.student = students[n % students.size()];
            lesson.starts = studio::TimeOfDay(14 + i % 6, 30 * (i % 2));
            lesson.state = studio::Lesson::State::kept;
            lesson.done =
                fmt::format("{} and {}", works.at(n % works.size()), works.at(n / 7 % works.size()));
            lesson.next = fmt::format("{}, page {}", works.at(n / 3 % works.size()), i % 60);
            edit_.add(lesson);
        }
    }

    void add_sheets(const std::vector<studio::StudentId>& students,
                    const std::vector<studio::HornId>& horns) {
        for (int i = 0; i < size_.sheets_a_year; ++i) {
            const auto n = static_cast<std::size_t>(i);
            studio::TuningSheet sheet{.id = {},
                                      .student = students[n % students.size()],
                                      .horn = horns[n % horns.size()],
                                      .on = day(i, size_.sheets_a_year),
                                      .mouthpiece = {},
                                      .room = {},
                                      .positions = {},
                                      .readings = {},
                                      .remarks = {}};
            for (int r = 0; r < size_.readings_a_sheet; ++r) {
                const units::Pitch note(34 + r % 25);
                sheet.readings.push_back({note, {}, 0, 1 + r / 25, units::Cents((i * 7 + r * 3) % 40 - 20)});
            }
            edit_.add(sheet);
        }
    }

    Edit& edit_;
    const StudioSize& size_;
    int year_;
};

}  // namespace

void make_forty_years(const std::filesystem::path& path, const StudioSize& size) {
    studio::RoutineId routine;
    StudioFile::create(path, {}).edit(
        "Routine", [&](Edit& edit) { routine = edit.add(studio::Routine{.id = {}, .title = "Long tones"}); });
    std::vector<studio::StudentId> students;
    std::vector<studio::HornId> horns;
    for (int year = 0; year < size.years; ++year) {
        StudioFile::open(path).edit(
            "A year", [&](Edit& edit) { Year(edit, size, year).add(students, horns, routine); });
    }
}

}  // namespace lowledger::store
