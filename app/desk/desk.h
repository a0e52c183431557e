#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "app/desk/front.h"
#include "app/desk/horn_chart.h"
#include "app/desk/live.h"
#include "app/desk/sheet_entry.h"
#include "app/desk/worker.h"
#include "model/exchange/kind_files.h"
#include "model/horns/kind.h"
#include "model/store/studio_file.h"
#include "model/studio/lessons.h"
#include "model/studio/records.h"
#include "reports/words/words.h"

namespace lowledger::desk {

enum class Place { today, students, horns, routines, terms };

/// The sections of the places' pages; which place has which, `places` says.
enum class Section {
    last_time,
    sheet,
    settings,
    routines,
    lesson_note,
    history,
    horn,
    slides,
    chart,
    loans,
    upkeep,
    timetable,
    lessons,
    holidays,
    groups,
    years_end
};

/// The tables of records on pages and in dialogs; what is in them, `tables` says.
enum class Table { loans, upkeep, given, practice, pieces, timetable, lessons, holidays, groups, years_end };

/// What the window is turned to.
struct View {
    Place place = Place::students;
    std::optional<studio::StudentId> student;
    std::optional<studio::HornId> horn;
    /// Where the place has it not, its first is shown; see `section_of`.
    Section section = Section::sheet;
    /// The day that Today shows; empty: this one.
    std::optional<studio::Date> day{};
    /// The lesson chosen on Today, or whose note a student's page shows; empty: see `lesson_at`.
    std::optional<studio::LessonId> lesson{};
    /// The history shows the tuning sheets over time.
    bool over_time = false;
    std::optional<studio::RoutineId> routine{};
    std::optional<studio::TermId> term{};
    bool operator==(const View&) const = default;
};

/// What the desk takes from the world around it.
struct Surroundings {
    /// The clock, read nowhere else.
    std::function<studio::Date()> today;
    /// Where studios of this user are kept.
    std::filesystem::path data_folder;
    /// Makes the invented sample studio at a path where there is nothing yet; throws Refusal.
    std::function<void(const std::filesystem::path&)> make_sample;
    /// Called on another thread when `Desk::deliver` has something to do.
    std::function<void()> wake;
    /// The clock on the wall; empty: it stands at three in the afternoon.
    std::function<studio::TimeOfDay()> now = nullptr;
};

/// What has changed since the last notice.
struct News {
    bool studio = false;   ///< another file, or none
    bool records = false;  ///< what the file holds
    bool view = false;
    bool sheet = false;  ///< fields of the tuning sheet
    bool answer = false;
};

/// Everything a window does, without a window: the open studio, where one is in it, the sheet being typed,
/// the live answer. One thread, save for the worker inside.
class Desk {
  public:
    Desk(Surroundings surroundings, Front& front);
    ~Desk();
    Desk(const Desk&) = delete;
    Desk& operator=(const Desk&) = delete;

    [[nodiscard]] Front& front() { return front_; }
    [[nodiscard]] const words::Words& words() const { return words_; }
    [[nodiscard]] studio::Date today() const { return surroundings_.today(); }
    [[nodiscard]] studio::TimeOfDay now() const;
    [[nodiscard]] const std::filesystem::path& data_folder() const { return surroundings_.data_folder; }
    /// Called after anything changed.
    void on_news(std::function<void(const News&)> listener) { listener_ = std::move(listener); }

    [[nodiscard]] bool has_studio() const { return file_ != nullptr; }
    /// Only with a studio.
    [[nodiscard]] store::StudioFile& file() { return *file_; }
    [[nodiscard]] const store::StudioFile& file() const { return *file_; }
    /// True with a studio that may be changed.
    [[nodiscard]] bool may_write() const;
    /// Opens read-only when that is all the file allows. What was open is closed only if this succeeds.
    void open(const std::filesystem::path& path);
    void create(const NewStudio& studio);
    /// The studios opened last that are still there, the last one first.
    [[nodiscard]] const std::vector<std::filesystem::path>& recent() const { return recent_; }
    /// Opens the sample studio, made first where it is not yet.
    void open_sample();

    [[nodiscard]] const View& view() const { return view_; }
    void go(const View& view);
    /// The row that was chosen last in a table, by its id; it may be gone by now.
    [[nodiscard]] std::optional<std::int64_t> chosen(Table table) const;
    void choose(Table table, std::int64_t row);
    [[nodiscard]] bool can_go_back() const { return !been_.empty(); }
    void go_back();

    /// The student or horn whose page is open, read from the file.
    [[nodiscard]] const std::optional<studio::Student>& student() const { return student_; }
    /// On a student's page the horn of theirs that is looked at.
    [[nodiscard]] const std::optional<studio::Horn>& horn() const { return horn_; }
    /// The lesson that Today, the student's page or the term's lessons are turned to.
    [[nodiscard]] const std::optional<studio::Lesson>& lesson() const { return lesson_; }
    /// The term whose page is open.
    [[nodiscard]] const std::optional<studio::Term>& term() const { return term_; }
    /// The kind of `horn()`; only with a horn.
    [[nodiscard]] const horns::HornKind& kind() const { return *kind_; }
    /// The kinds that a new horn can be of: the built-in ones and those in the folder kinds beside the
    /// studio, read anew each time, and why files there are not among them.
    [[nodiscard]] exchange::ReadableKinds kinds() const;
    /// The chart of the horn whose page is open in the place of horns; null elsewhere.
    [[nodiscard]] HornChart* horn_chart();
    /// Shows the leans of one of the chart's players; empty: the kind's as built.
    void lean_as(std::optional<std::size_t> player);
    /// Charts are shown as a table instead of on staves.
    [[nodiscard]] bool chart_as_table() const { return chart_as_table_; }
    void show_chart_as_table(bool table);
    /// The horn opens from the copy in the studio alone: no kind of its id is built in or beside the studio.
    /// Files beside it that cannot be read are told of by `kinds`.
    [[nodiscard]] bool kind_has_vanished() const;
    /// Horns that the student of the page plays today.
    [[nodiscard]] const std::vector<studio::Horn>& horns_of_student() const { return horns_of_student_; }

    /// The sheet on the student's page; null without student and horn.
    [[nodiscard]] const SheetEntry* entry() const { return entry_ ? &*entry_ : nullptr; }
    /// Sheets of this student on this horn, newest first.
    [[nodiscard]] const std::vector<studio::TuningSheet>& sheets() const { return sheets_; }
    /// Text typed into a field of the sheet. A reading that is taken is filed at once.
    SheetEntry::Outcome type(Cell cell, std::string_view typed);
    void restore(Cell cell);
    /// The head of the sheet; filed at once if the sheet is.
    void set_head(const studio::TuningSheet& head);
    /// Turns to a filed sheet, or to a new one, which is filed with its first reading.
    void show_sheet(std::optional<studio::TuningSheetId> sheet);
    void show_more_notes(bool more);

    [[nodiscard]] const LiveAnswer& answer() const { return answer_; }
    /// The take of a row of the sheet that stands apart from its fellows, as far as the answer tells.
    [[nodiscard]] std::optional<int> outlying_take(std::size_t row) const;
    /// What the teacher says of the settings of this student on this horn; kept until the studio is closed.
    [[nodiscard]] const tuning::TeacherHand& hand() const;
    [[nodiscard]] const tuning::TeacherHand& hand_of(studio::StudentId student, studio::HornId horn) const;
    void set_hand(const tuning::TeacherHand& hand);
    /// Writes the recommended positions to the horn's history and marks the settings as carried out.
    void slides_moved();
    /// Records that the settings of the answer were given out today, once for the same settings.
    void give_out();

    /// Takes over what the worker has finished.
    void deliver() { worker_.deliver(); }
    /// True when no work is under way.
    [[nodiscard]] bool idle() const { return worker_.idle(); }
    /// Waits for the work under way.
    void settle() { worker_.settle(); }

  private:
    void take(store::StudioFile file);
    void records_changed();
    void read_subject();
    void read_lesson();
    void read_entry();
    void ask_for_answer();
    void ask_for_certificate();
    void tell(const News& news) const;
    [[nodiscard]] studio::TuningSheet new_sheet() const;
    void file_sheet(std::string_view name);
    [[nodiscard]] studio::GivenSettings settings_to_give() const;

    Surroundings surroundings_;
    Front& front_;
    words::Words words_;
    std::function<void(const News&)> listener_;
    std::unique_ptr<store::StudioFile> file_;
    std::vector<std::filesystem::path> recent_;
    View view_;
    std::vector<View> been_;
    std::map<Table, std::int64_t> chosen_;

    std::optional<studio::Student> student_;
    std::optional<studio::Horn> horn_;
    std::optional<studio::Lesson> lesson_;
    std::optional<studio::Term> term_;
    std::optional<horns::HornKind> kind_;
    std::vector<studio::Horn> horns_of_student_;
    std::vector<studio::TuningSheet> sheets_;
    std::optional<SheetEntry> entry_;
    /// The filed sheet that the entry shows or, after an undo, showed; empty: the day's.
    std::optional<studio::TuningSheetId> sheet_shown_;
    bool new_sheet_wanted_ = false;
    bool more_notes_ = false;
    std::map<std::pair<studio::StudentId, studio::HornId>, tuning::TeacherHand> hands_;
    std::optional<HornChart> horn_chart_;
    bool chart_is_old_ = true;
    bool chart_as_table_ = false;

    LiveAnswer answer_;
    Worker worker_;
};

}  // namespace lowledger::desk
