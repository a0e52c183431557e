// Two openers of one file, as two programs would be: separate connections.
#include <SQLiteCpp/Database.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "model/store/schema.h"
#include "tests/model/store/invented.h"

namespace lowledger::store {
namespace {

using studio::Student;
using testing::ElementsAreArray;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

class TwoPrograms : public testing::Test {
  protected:
    TwoPrograms() {
        here_.wait_for_others_at_most(std::chrono::milliseconds(0));
        there_.wait_for_others_at_most(std::chrono::milliseconds(0));
    }
    static studio::StudentId add(StudioFile& file, const std::string& name) {
        studio::StudentId id;
        file.edit("Add " + name, [&](Edit& edit) { id = edit.add(invented::plain_student(name)); });
        return id;
    }
    static void rename(StudioFile& file, studio::StudentId id, const std::string& name) {
        file.edit("Rename", [&](Edit& edit) {
            Student student = *file.student(id);
            student.name = name;
            edit.update(student);
        });
    }

    invented::Folder folder_;
    std::filesystem::path path_ = folder_ / "shared.lowledger";
    StudioFile here_ = StudioFile::create(path_, invented::facts());
    StudioFile there_ = StudioFile::open(path_);
};

TEST_F(TwoPrograms, EachSeesAtOnceWhatTheOtherFiled) {
    const auto id = add(here_, "Mara");
    EXPECT_EQ(there_.student(id)->name, "Mara");
    rename(there_, id, "Nora");
    EXPECT_EQ(here_.student(id)->name, "Nora");
    EXPECT_EQ(here_.dump(), there_.dump());
}

TEST_F(TwoPrograms, AChangeElsewhereRaisesTheRevisionAndIsToldOnce) {
    std::vector<Change> told;
    here_.on_change([&](const Change& change) { told.push_back(change); });
    EXPECT_FALSE(here_.notice_changes_elsewhere());
    const auto before = here_.revision();
    add(there_, "Mara");
    EXPECT_GT(here_.revision(), before);
    EXPECT_TRUE(here_.notice_changes_elsewhere());
    EXPECT_FALSE(here_.notice_changes_elsewhere());
    ASSERT_THAT(told, SizeIs(1));
    EXPECT_EQ(told[0].name, "");
    EXPECT_EQ(told[0].revision, here_.revision());
    EXPECT_THAT(told[0].tables, ElementsAreArray(record_tables.begin(), record_tables.end()));
    // An own edit does not count as one elsewhere, and an edit tells of one elsewhere before it.
    add(here_, "Nils");
    EXPECT_FALSE(here_.notice_changes_elsewhere());
    add(there_, "Olga");
    add(here_, "Pia");
    ASSERT_THAT(told, SizeIs(4));
    EXPECT_EQ(told[1].name, "Add Nils");
    EXPECT_EQ(told[2].name, "");
    EXPECT_EQ(told[3].name, "Add Pia");
    EXPECT_LT(told[2].revision, told[3].revision);
}

TEST_F(TwoPrograms, TheSecondWriterIsToldAndReadersAreNot) {
    const auto id = add(here_, "Mara");
    std::string sentence;
    here_.edit("Long edit", [&](Edit& edit) {
        edit.add(invented::plain_student("Unfinished"));
        sentence = invented::sentence_of<StudioBusy>([&] { add(there_, "Nils"); });
        EXPECT_EQ(there_.student(id)->name, "Mara");
        EXPECT_THAT(there_.students(), SizeIs(1));
        EXPECT_THAT(StudioFile::open(path_, Access::read_only).students(), SizeIs(1));
    });
    EXPECT_THAT(sentence, HasSubstr("Another program is writing " + path_.string()));
    add(there_, "Nils");
    EXPECT_THAT(here_.students(), SizeIs(3));
}

TEST_F(TwoPrograms, UndoGoesAroundWhatOthersChangedElsewhereInTheFile) {
    const auto mara = add(here_, "Mara");
    const auto nils = add(there_, "Nils");
    rename(there_, nils, "Nelly");
    here_.undo();
    EXPECT_EQ(here_.student(mara), std::nullopt);
    EXPECT_EQ(here_.student(nils)->name, "Nelly");
    here_.redo();
    EXPECT_EQ(there_.student(mara)->name, "Mara");
}

TEST_F(TwoPrograms, UndoStopsWhereTheSameRecordChanged) {
    const auto id = add(here_, "Mara");
    rename(here_, id, "Nora");
    rename(there_, id, "Olga");
    const std::string before = here_.dump();
    const std::string sentence = invented::sentence_of<StudioChangedElsewhere>([&] { here_.undo(); });
    EXPECT_THAT(sentence, HasSubstr("\"Rename\" in " + path_.string()));
    EXPECT_EQ(here_.dump(), before);
    EXPECT_EQ(here_.undo_name(), "Rename");
    // Once the other program took its change back the step is possible again.
    there_.undo();
    here_.undo();
    EXPECT_EQ(here_.student(id)->name, "Mara");
}

TEST_F(TwoPrograms, UndoStopsWhereTheRecordIsGone) {
    const auto id = add(here_, "Mara");
    rename(here_, id, "Nora");
    there_.edit("Remove", [&](Edit& edit) { edit.remove(id); });
    EXPECT_THROW(here_.undo(), StudioChangedElsewhere);
    EXPECT_THAT(here_.students(), IsEmpty());
}

TEST_F(TwoPrograms, UndoStopsWhereOthersFiledSomethingUnderTheRecord) {
    const auto student = add(here_, "Mara");
    there_.edit("Sheet", [&](Edit& edit) {
        edit.add(invented::full_sheet(student, edit.add(invented::plain_horn())));
    });
    const std::string before = here_.dump();
    EXPECT_THROW(here_.undo(), StudioChangedElsewhere);
    EXPECT_EQ(here_.dump(), before);
    EXPECT_THAT(here_.check(), IsEmpty());
}

TEST_F(TwoPrograms, RedoStopsWhereItsGroundIsGone) {
    const auto student = add(there_, "Mara");
    here_.edit("Use",
               [&](Edit& edit) { edit.add(invented::use(student, edit.add(invented::plain_horn()))); });
    here_.undo();
    there_.edit("Remove", [&](Edit& edit) { edit.remove(student); });
    const std::string before = here_.dump();
    EXPECT_THROW(here_.redo(), StudioChangedElsewhere);
    EXPECT_EQ(here_.dump(), before);
    EXPECT_EQ(here_.redo_name(), "Use");
}

TEST_F(TwoPrograms, ANewerProgramThatChangesTheFileMeanwhileStopsEdits) {
    {
        SQLite::Database newer(path_.string(), SQLite::OPEN_READWRITE);
        newer.exec("PRAGMA user_version = 1000");
    }
    EXPECT_THROW(add(here_, "Mara"), StudioNewer);
    EXPECT_THAT(here_.students(), IsEmpty());
}

TEST_F(TwoPrograms, AnotherEditDoesNotLoseTheFirst) {
    const auto id = add(here_, "Mara");
    for (int i = 0; i < 20; ++i) {
        StudioFile& file = i % 2 == 0 ? here_ : there_;
        file.edit("Append", [&](Edit& edit) {
            Student student = *file.student(id);
            student.remarks += static_cast<char>('a' + i);
            edit.update(student);
        });
    }
    EXPECT_EQ(here_.student(id)->remarks, "abcdefghijklmnopqrst");
}

}  // namespace
}  // namespace lowledger::store
