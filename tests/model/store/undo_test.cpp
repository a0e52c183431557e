// Edits, undo and redo, and what is told of them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <random>
#include <stdexcept>

#include "tests/model/store/invented.h"

namespace lowledger::store {
namespace {

using studio::Date;
using studio::Horn;
using studio::Student;
using studio::TuningSheet;
using testing::ElementsAre;
using testing::IsEmpty;

class Undo : public testing::Test {
  protected:
    studio::StudentId add_student(const std::string& name) {
        studio::StudentId id;
        file_.edit("Add " + name, [&](Edit& edit) { id = edit.add(invented::plain_student(name)); });
        return id;
    }

    invented::Folder folder_;
    std::filesystem::path path_ = folder_ / "undo.lowledger";
    StudioFile file_ = StudioFile::create(path_, invented::facts());
};

TEST_F(Undo, TakesBackAndMakesAgainByName) {
    const std::string empty = file_.dump();
    EXPECT_EQ(file_.undo_name(), std::nullopt);
    EXPECT_EQ(file_.redo_name(), std::nullopt);
    const auto id = add_student("Mara");
    const std::string one = file_.dump();
    EXPECT_NE(one, empty);
    EXPECT_EQ(file_.undo_name(), "Add Mara");
    file_.undo();
    EXPECT_EQ(file_.dump(), empty);
    EXPECT_EQ(file_.undo_name(), std::nullopt);
    EXPECT_EQ(file_.redo_name(), "Add Mara");
    file_.redo();
    EXPECT_EQ(file_.dump(), one);
    EXPECT_TRUE(file_.student(id).has_value());
    EXPECT_EQ(file_.redo_name(), std::nullopt);
}

TEST_F(Undo, WithoutAStepNothingHappens) {
    const std::string before = file_.dump();
    const auto revision = file_.revision();
    file_.undo();
    file_.redo();
    EXPECT_EQ(file_.dump(), before);
    EXPECT_EQ(file_.revision(), revision);
}

TEST_F(Undo, ANewEditLeavesNothingToRedo) {
    add_student("Mara");
    file_.undo();
    add_student("Nils");
    EXPECT_EQ(file_.redo_name(), std::nullopt);
    EXPECT_EQ(file_.undo_name(), "Add Nils");
}

TEST_F(Undo, AnEditThatChangesNothingIsNoStep) {
    const auto id = add_student("Mara");
    file_.undo();
    file_.redo();
    add_student("Nils");
    file_.undo();
    std::vector<Change> told;
    file_.on_change([&](const Change& change) { told.push_back(change); });
    const auto revision = file_.revision();
    file_.edit("Nothing", [](Edit&) {});
    file_.edit("The same", [&](Edit& edit) { edit.update(*file_.student(id)); });
    file_.edit("There and back", [](Edit& edit) { edit.remove(edit.add(invented::plain_student())); });
    EXPECT_EQ(file_.revision(), revision);
    EXPECT_EQ(file_.undo_name(), "Add Mara");
    EXPECT_EQ(file_.redo_name(), "Add Nils");
    EXPECT_THAT(told, IsEmpty());
}

TEST_F(Undo, AnEditThatThrowsChangesNothingAndGoesOn) {
    const std::string before = file_.dump();
    EXPECT_THROW(file_.edit("Half",
                            [](Edit& edit) {
                                edit.add(invented::plain_student());
                                throw std::out_of_range("on purpose");
                            }),
                 std::out_of_range);
    EXPECT_EQ(file_.dump(), before);
    EXPECT_EQ(file_.undo_name(), std::nullopt);
    add_student("Mara");
    EXPECT_EQ(file_.undo_name(), "Add Mara");
}

TEST_F(Undo, ACallThatIsRefusedLeavesTheRestOfItsEdit) {
    studio::StudentId student;
    studio::HornId horn;
    file_.edit("Add some", [&](Edit& edit) {
        student = edit.add(invented::plain_student());
        horn = edit.add(invented::plain_horn());
        TuningSheet twice = invented::full_sheet(student, horn);
        twice.readings.push_back(twice.readings.front());
        EXPECT_THROW(edit.add(twice), units::Refusal);
    });
    EXPECT_TRUE(file_.student(student).has_value());
    EXPECT_THAT(file_.sheets(student), IsEmpty());
    EXPECT_THAT(file_.check(), IsEmpty());
}

TEST_F(Undo, AnEditReadsWhatItWroteAndHoldsNoOther) {
    file_.edit("Look", [&](Edit& edit) {
        const auto id = edit.add(invented::plain_student("Seen"));
        EXPECT_EQ(file_.student(id)->name, "Seen");
        EXPECT_THROW(file_.edit("Inner", [](Edit&) {}), std::logic_error);
        EXPECT_THROW(file_.undo(), std::logic_error);
    });
    EXPECT_EQ(file_.students().size(), 1U);
}

TEST_F(Undo, RowsChangedTwiceInAnEditGoBackToWhatTheyWereBefore) {
    const auto id = add_student("First");
    const std::string before = file_.dump();
    file_.edit("Twice", [&](Edit& edit) {
        Student student = *file_.student(id);
        student.name = "Second";
        edit.update(student);
        student.name = "Third";
        edit.update(student);
    });
    const std::string after = file_.dump();
    file_.undo();
    EXPECT_EQ(file_.dump(), before);
    file_.redo();
    EXPECT_EQ(file_.dump(), after);
}

TEST_F(Undo, ReadingsThatChangePlacesGoBack) {
    const auto student = add_student("Mara");
    TuningSheet sheet = invented::full_sheet(student, {});
    file_.edit("Sheet", [&](Edit& edit) {
        sheet.horn = edit.add(invented::plain_horn());
        sheet.id = edit.add(sheet);
    });
    TuningSheet turned = sheet;
    std::swap(turned.readings[0].cents, turned.readings[3].cents);
    std::reverse(turned.readings.begin(), turned.readings.end());
    file_.edit("Turn", [&](Edit& edit) { edit.update(turned); });
    EXPECT_EQ(file_.sheet(sheet.id), turned);
    file_.undo();
    EXPECT_EQ(file_.sheet(sheet.id), sheet);
    file_.redo();
    EXPECT_EQ(file_.sheet(sheet.id), turned);
}

TEST_F(Undo, EveryStepIsToldWithItsRevisionNameAndTables) {
    std::vector<Change> told;
    file_.on_change([&](const Change& change) {
        EXPECT_EQ(change.revision, file_.revision());
        told.push_back(change);
    });
    const auto first = file_.revision();
    file_.edit("Add both", [](Edit& edit) {
        edit.add(invented::plain_student());
        edit.add(invented::plain_horn());
    });
    file_.undo();
    file_.redo();
    ASSERT_EQ(told.size(), 3U);
    for (std::size_t i = 0; i < told.size(); ++i) {
        EXPECT_EQ(told[i].revision, first + 1 + std::int64_t(i));
        EXPECT_EQ(told[i].name, "Add both");
        EXPECT_THAT(told[i].tables, ElementsAre("horn", "horn_slide", "student"));
    }
}

/// Draws edits that may be refused, as a user's may, from a seed.
class RandomEdits {
  public:
    RandomEdits(StudioFile& file, unsigned seed) : file_(file), random_(seed) {}

    void make_one() {
        try {
            file_.edit("Edit " + std::to_string(++count_), [&](Edit& edit) {
                for (int calls = below(4) + 1; calls > 0; --calls)
                    call(edit);
            });
        } catch (const units::Refusal&) {
            ++refused_;
        }
    }
    [[nodiscard]] int refused() const { return refused_; }

  private:
    int below(int end) { return std::uniform_int_distribution(0, end - 1)(random_); }
    template <typename Record>
    const Record* any(const std::vector<Record>& records) {
        return records.empty() ? nullptr : &records[std::size_t(below(int(records.size())))];
    }
    Date day() { return Date(2024, 1, 1) + below(1000); }

    void call(Edit& edit) {
        const auto students = file_.students();
        const auto horns = file_.horns();
        const Student* student = any(students);
        const Horn* horn = any(horns);
        const int which = below(16);
        if (which == 0) edit.add(below(2) == 0 ? invented::plain_student() : invented::full_student());
        if (which == 1) {
            studio::StudioFacts facts = invented::facts();
            facts.a4 = units::Hertz(435.0 + below(10));
            edit.update(facts);
        }
        if (which == 2) edit.add(invented::plain_horn("T-" + std::to_string(below(50))));
        if (student == nullptr || horn == nullptr) return;
        if (which == 3) edit.add(invented::full_horn(student->id));
        if (which == 4 && below(3) == 0) edit.remove(student->id);
        if (which == 5 && below(3) == 0) edit.remove(horn->id);
        if (which == 6) change(edit, *student);
        if (which == 7) change(edit, *horn);
        if (which == 8 || which == 9)
            edit.add(invented::position(horn->id, any_slide(*horn), day(), below(900) / 10.0));
        if (which == 10) file_use(edit, *student, *horn);
        if (which == 11 || which == 12) edit.add(sheet(*student, *horn));
        if (which == 13) change_a_sheet(edit, *student);
        if (which == 14) give_settings(edit, *student, *horn);
        if (which == 15) drop_something(edit, *student, *horn);
    }

    std::string any_slide(const Horn& horn) {
        const auto* slide = any(horn.slides);
        return slide == nullptr ? "main" : slide->slide;
    }
    void change(Edit& edit, Student student) {
        student.remarks += "x";
        student.archived = !student.archived;
        if (below(5) == 0) student.name.clear();
        edit.update(student);
    }
    void change(Edit& edit, Horn horn) {
        std::shuffle(horn.slides.begin(), horn.slides.end(), random_);
        if (below(2) == 0 && !horn.slides.empty()) horn.slides.pop_back();
        if (below(2) == 0) horn.slides.push_back({"fourth", units::Millimetres(0), units::Millimetres(40)});
        edit.update(horn);
    }
    void file_use(Edit& edit, const Student& student, const Horn& horn) {
        studio::HornUse use = invented::use(student.id, horn.id);
        use.from = day();
        if (below(2) == 0) use.until = day();
        edit.add(use);
    }
    TuningSheet sheet(const Student& student, const Horn& horn) {
        TuningSheet sheet = below(2) == 0 ? invented::full_sheet(student.id, horn.id)
                                          : invented::plain_sheet(student.id, horn.id);
        sheet.on = day();
        return sheet;
    }
    void change_a_sheet(Edit& edit, const Student& student) {
        const auto sheets = file_.sheets(student.id);
        const TuningSheet* picked = any(sheets);
        if (picked == nullptr) return;
        TuningSheet sheet = *picked;
        std::shuffle(sheet.readings.begin(), sheet.readings.end(), random_);
        if (!sheet.readings.empty()) sheet.readings.front().cents = units::Cents(below(100) - 50);
        if (below(2) == 0 && !sheet.readings.empty()) sheet.readings.pop_back();
        sheet.positions["second"] = units::Millimetres(below(20));
        edit.update(sheet);
    }
    void give_settings(Edit& edit, const Student& student, const Horn& horn) {
        studio::GivenSettings settings = invented::settings(student.id, horn.id);
        const auto sheets = file_.sheets(student.id);
        if (const TuningSheet* from = any(sheets)) settings.sheet = from->id;
        if (below(2) == 0) settings.moved_on = day();
        edit.add(settings);
    }
    void drop_something(Edit& edit, const Student& student, const Horn& horn) {
        const auto sheets = file_.sheets(student.id);
        const auto history = file_.slide_history(horn.id);
        const auto uses = file_.horn_uses(student.id);
        if (const auto* one = any(sheets)) edit.remove(one->id);
        if (const auto* one = any(history)) edit.remove(one->id);
        if (const auto* one = any(uses)) edit.remove(one->id);
    }

    StudioFile& file_;
    std::mt19937 random_;
    int count_ = 0;
    int refused_ = 0;
};

class RandomUndo : public Undo, public testing::WithParamInterface<unsigned> {};

TEST_P(RandomUndo, AllTheWayBackAndForth) {
    RandomEdits edits(file_, GetParam());
    std::vector<std::string> dumps = {file_.dump()};
    for (int i = 0; i < 80; ++i) {
        const auto before = file_.revision();
        edits.make_one();
        ASSERT_EQ(file_.revision() != before, file_.dump() != dumps.back());
        if (file_.revision() != before) dumps.push_back(file_.dump());
    }
    ASSERT_GT(dumps.size(), 35U);
    EXPECT_GT(edits.refused(), 0);
    const auto walk_back = [&] {
        for (std::size_t step = dumps.size() - 1; step-- > 0;) {
            file_.undo();
            ASSERT_EQ(file_.dump(), dumps[step]) << "after undo to step " << step;
        }
        ASSERT_EQ(file_.undo_name(), std::nullopt);
    };
    walk_back();
    for (std::size_t step = 1; step < dumps.size(); ++step) {
        file_.redo();
        ASSERT_EQ(file_.dump(), dumps[step]) << "after redo to step " << step;
    }
    ASSERT_EQ(file_.redo_name(), std::nullopt);
    EXPECT_THAT(file_.check(), IsEmpty());
    walk_back();
}

INSTANTIATE_TEST_SUITE_P(Seeds, RandomUndo, testing::Range(1U, 4U));

}  // namespace
}  // namespace lowledger::store
