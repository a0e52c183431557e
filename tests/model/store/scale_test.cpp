// A large studio stays quick: what each place asks is a small and fixed number of statements, none of which
// goes through a whole table of sheets, readings or lessons.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <set>
#include <sqlite3.h>

#include "tests/bench/forty_years.h"
#include "tests/model/store/invented.h"

namespace lowledger::store {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

/// Every statement that any connection runs while it lives.
class Listener {
  public:
    Listener() {
        now = this;
        sqlite3_auto_extension(reinterpret_cast<void (*)()>(attach));
    }
    Listener(const Listener&) = delete;
    Listener& operator=(const Listener&) = delete;
    ~Listener() {
        sqlite3_cancel_auto_extension(reinterpret_cast<void (*)()>(attach));
        now = nullptr;
    }

    void forget() {
        count_ = 0;
        texts_.clear();
    }
    [[nodiscard]] int count() const { return count_; }
    /// The different statements, with what SQLite says of how it goes through the tables.
    [[nodiscard]] std::vector<std::string> plans() {
        const std::set<std::string> texts = std::move(texts_);
        std::vector<std::string> plans;
        for (const std::string& text : texts) {
            sqlite3_stmt* plan = nullptr;
            const std::string sql = "EXPLAIN QUERY PLAN " + text;
            if (sqlite3_prepare_v2(database_, sql.c_str(), -1, &plan, nullptr) != SQLITE_OK) continue;
            while (sqlite3_step(plan) == SQLITE_ROW) {
                const unsigned char* detail = sqlite3_column_text(plan, 3);
                plans.push_back(std::string(detail, detail + sqlite3_column_bytes(plan, 3)) + " | " + text);
            }
            sqlite3_finalize(plan);
        }
        return plans;
    }

  private:
    static int attach(sqlite3* database, const char** /*error*/, const void* /*routines*/) {
        if (now == nullptr) return SQLITE_OK;
        now->database_ = database;
        return sqlite3_trace_v2(database, SQLITE_TRACE_STMT, heard, nullptr);
    }
    static int heard(unsigned /*what*/, void* /*context*/, void* statement, void* text) {
        const std::string sql = static_cast<const char*>(text);
        // What runs inside another statement is told as a comment.
        if (now == nullptr || sql.starts_with("--")) return 0;
        ++now->count_;
        const char* whole = sqlite3_sql(static_cast<sqlite3_stmt*>(statement));
        if (whole != nullptr && !std::string(whole).starts_with("EXPLAIN")) now->texts_.insert(whole);
        return 0;
    }

    static inline Listener* now = nullptr;
    sqlite3* database_ = nullptr;
    int count_ = 0;
    std::set<std::string> texts_;
};

class Scale : public testing::Test {
  protected:
    Scale() {
        size_.years = 3;
        size_.new_students_a_year = 12;
        size_.horns = 9;
        size_.lessons_a_year = 120;
        size_.sheets_a_year = 40;
        make_forty_years(path_, size_);
    }
    void expect_no_whole_table(const char* place) {
        const std::vector<std::string> plans = listener_.plans();
        EXPECT_THAT(plans, Not(IsEmpty()));
        for (const std::string& step : plans) {
            for (const char* table : {"tuning_sheet", "reading", "lesson", "attendance", "practice_entry",
                                      "loan", "assignment", "given_settings", "upkeep"}) {
                EXPECT_THAT(step, Not(testing::ContainsRegex(std::string("^SCAN ") + table + "( \\||$)")))
                    << place;
            }
            EXPECT_THAT(step, Not(HasSubstr("TEMP B-TREE"))) << place;
        }
    }

    StudioSize size_;
    invented::Folder folder_;
    std::filesystem::path path_ = folder_ / "years.lowledger";
    Listener listener_;
};

TEST_F(Scale, TheGeneratorMakesWhatItSays) {
    const StudioFile file = StudioFile::open(path_);
    EXPECT_THAT(file.students(), SizeIs(36));
    EXPECT_THAT(file.horns(), SizeIs(9));
    EXPECT_THAT(file.lessons(studio::Date(1900, 1, 1), studio::Date(2199, 12, 31)), SizeIs(360));
    EXPECT_THAT(file.check(), IsEmpty());
    EXPECT_THAT(file.day(size_.last_day), Not(IsEmpty()));
}

TEST_F(Scale, AStudentListIsTwoStatements) {
    const StudioFile file = StudioFile::open(path_);
    listener_.forget();
    EXPECT_THAT(file.students(), SizeIs(36));
    EXPECT_THAT(file.last_sheets(), Not(IsEmpty()));
    // Each read is a statement between the beginning and the end of its transaction.
    EXPECT_EQ(listener_.count(), 6);
    expect_no_whole_table("student list");
}

TEST_F(Scale, ADayAsksAFixedNumberOfStatementsForEachStudent) {
    const StudioFile file = StudioFile::open(path_);
    listener_.forget();
    const auto day = file.day(size_.last_day);
    ASSERT_THAT(day, Not(IsEmpty()));
    EXPECT_LE(listener_.count(), 5 + 12 * static_cast<int>(day.size()));
    expect_no_whole_table("day");
}

TEST_F(Scale, OverdueIsThreeStatements) {
    const StudioFile file = StudioFile::open(path_);
    listener_.forget();
    EXPECT_THAT(file.overdue(size_.last_day).due_again, Not(IsEmpty()));
    EXPECT_EQ(listener_.count(), 5);
    expect_no_whole_table("overdue");
}

TEST_F(Scale, AStudentsPageReadsTheirsAlone) {
    const StudioFile file = StudioFile::open(path_);
    const studio::StudentId student{15};
    listener_.forget();
    const auto sheets = file.sheets(student);
    const auto lessons = file.lessons(student, studio::Date(1900, 1, 1), studio::Date(2199, 12, 31));
    ASSERT_THAT(sheets, Not(IsEmpty()));
    ASSERT_THAT(lessons, Not(IsEmpty()));
    EXPECT_THAT(file.assignments(student), Not(IsEmpty()));
    EXPECT_THAT(file.loans(student), Not(IsEmpty()));
    EXPECT_THAT(file.practice(student, studio::Date(1900, 1, 1), studio::Date(2199, 12, 31)), IsEmpty());
    EXPECT_LE(listener_.count(), 20 + 2 * static_cast<int>(sheets.size()));
    expect_no_whole_table("student's page");
}

TEST_F(Scale, FindingReadsNoTableBesidesTheFound) {
    const StudioFile file = StudioFile::open(path_);
    listener_.forget();
    EXPECT_THAT(file.search("sca", 10), SizeIs(10));
    expect_no_whole_table("search");
}

}  // namespace
}  // namespace lowledger::store
