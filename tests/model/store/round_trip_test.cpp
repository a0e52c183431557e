// What is filed is what is read, also after closing and opening again.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "model/studio/questions.h"
#include "tests/model/store/invented.h"

namespace lowledger::store {
namespace {

using studio::Date;
using studio::GivenSettings;
using studio::Horn;
using studio::HornUse;
using studio::SlidePosition;
using studio::Student;
using studio::TuningSheet;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

class RoundTrip : public testing::Test {
  protected:
    void reopen() {
        file_.reset();
        file_.emplace(StudioFile::open(path_));
    }
    StudioFile& file() { return *file_; }
    /// Files one record and returns it with its id.
    template <typename Record>
    Record filed(Record record) {
        file().edit("File it", [&](Edit& edit) { record.id = edit.add(record); });
        return record;
    }

    invented::Folder folder_;
    std::filesystem::path path_ = folder_ / "round trip.lowledger";
    std::optional<StudioFile> file_ = StudioFile::create(path_, invented::facts());
};

TEST_F(RoundTrip, Facts) {
    reopen();
    EXPECT_EQ(file().facts(), invented::facts());
    const studio::StudioFacts plain;
    file().edit("Change the studio", [&](Edit& edit) { edit.update(plain); });
    reopen();
    EXPECT_EQ(file().facts(), plain);
}

TEST_F(RoundTrip, OwnTextsAndTheHeadPicture) {
    const studio::OwnText thanks{.sentence = "handout_thanks", .text = "See you \u2013 soon;\n'quoted'"};
    studio::HeadPicture picture{.type = studio::HeadPicture::Type::jpeg, .bytes = {0xff, 0xd8, 0x00, 0x27}};
    const std::string before = file().dump();
    file().edit("Own words", [&](Edit& edit) {
        edit.put(studio::OwnText{.sentence = "handout_thanks", .text = "first"});
        edit.put(studio::OwnText{.sentence = "a_note", .text = ""});
        edit.put(thanks);
        edit.put(picture);
    });
    reopen();
    EXPECT_THAT(file().own_texts(), ElementsAre(studio::OwnText{.sentence = "a_note", .text = ""}, thanks));
    EXPECT_EQ(file().head_picture(), picture);
    picture = {.type = studio::HeadPicture::Type::png, .bytes = {1}};
    file().edit("Other picture", [&](Edit& edit) { edit.put(picture); });
    EXPECT_EQ(file().head_picture(), picture);
    file().edit("Take away", [&](Edit& edit) {
        edit.remove_own_text("a_note");
        edit.remove_own_text("handout_thanks");
        edit.remove_own_text("not there");
        edit.remove_head_picture();
    });
    EXPECT_EQ(file().dump(), before);
    EXPECT_EQ(file().head_picture(), std::nullopt);
    file().undo();
    EXPECT_EQ(file().head_picture(), picture);
}

TEST_F(RoundTrip, Students) {
    const Student plain = filed(invented::plain_student());
    const Student full = filed(invented::full_student());
    EXPECT_NE(plain.id, full.id);
    EXPECT_TRUE(plain.id.filed());
    reopen();
    EXPECT_EQ(file().student(plain.id), plain);
    EXPECT_EQ(file().student(full.id), full);
    EXPECT_EQ(file().student({999}), std::nullopt);
    Student changed = full;
    changed.tolerance.reset();
    changed.name = "New Name";
    changed.archived = false;
    file().edit("Change", [&](Edit& edit) { edit.update(changed); });
    reopen();
    EXPECT_EQ(file().student(full.id), changed);
    EXPECT_EQ(file().student(plain.id), plain);
}

TEST_F(RoundTrip, StudentsComeByNameAndArchivedOnesLast) {
    const Student b = filed(invented::plain_student("berta"));
    const Student a = filed(invented::plain_student("Anton"));
    Student archived = invented::plain_student("Aaron");
    archived.archived = true;
    archived = filed(archived);
    EXPECT_THAT(file().students(), ElementsAre(a, b, archived));
}

TEST_F(RoundTrip, Horns) {
    const Student owner = filed(invented::plain_student());
    const Horn plain = filed(invented::plain_horn());
    const Horn full = filed(invented::full_horn(owner.id));
    Horn without_slides = invented::plain_horn("A-0");
    without_slides.slides.clear();
    without_slides = filed(without_slides);
    reopen();
    EXPECT_EQ(file().horn(plain.id), plain);
    EXPECT_EQ(file().horn(full.id), full);
    EXPECT_THAT(file().horns(), ElementsAre(without_slides, plain, full));
}

TEST_F(RoundTrip, AHornsSlidesChangeInPlaceAndKeepTheirHistory) {
    Horn horn = filed(invented::plain_horn());
    const SlidePosition main = filed(invented::position(horn.id, "main", Date(2026, 9, 1), 20.0));
    filed(invented::position(horn.id, "second", Date(2026, 9, 1), 5.0));
    // The order changes, one slide goes, one comes, one is stuck.
    horn.slides = {{"fourth", units::Millimetres(0), units::Millimetres(40)},
                   {"first", units::Millimetres(2), units::Millimetres(60), true},
                   {"main", units::Millimetres(1), units::Millimetres(90)}};
    file().edit("Change", [&](Edit& edit) { edit.update(horn); });
    reopen();
    EXPECT_EQ(file().horn(horn.id), horn);
    EXPECT_THAT(file().slide_history(horn.id), ElementsAre(main));
}

TEST_F(RoundTrip, SlidePositionsOfEveryOriginOldestFirst) {
    using Origin = SlidePosition::Origin;
    const Horn horn = filed(invented::plain_horn());
    const Horn other = filed(invented::plain_horn("T-5"));
    std::vector<SlidePosition> history;
    Date on(2026, 9, 1);
    for (const Origin origin : {Origin::start, Origin::measured, Origin::moved, Origin::repair}) {
        SlidePosition entry = invented::position(horn.id, "main", on, 10.0 + on.day() / 3.0);
        entry.origin = origin;
        history.push_back(filed(entry));
        on = on + 1;
    }
    const SlidePosition earliest = filed(invented::position(horn.id, "first", Date(2026, 8, 1), 3.0));
    filed(invented::position(other.id, "main", Date(2026, 9, 1), 90.0));
    history.insert(history.begin(), earliest);
    reopen();
    EXPECT_EQ(file().slide_history(horn.id), history);
    const auto standing = file().slide_positions(horn.id, Date(2026, 9, 2));
    EXPECT_EQ(standing, studio::positions_on(history, Date(2026, 9, 2)));
    EXPECT_EQ(standing.at("main"), history[2].position);
    file().edit("Take back", [&](Edit& edit) { edit.remove(history[2].id); });
    EXPECT_EQ(file().slide_positions(horn.id, Date(2026, 9, 2)).at("main"), history[1].position);
}

TEST_F(RoundTrip, HornUses) {
    const Student a = filed(invented::plain_student("A"));
    const Student b = filed(invented::plain_student("B"));
    const Horn horn = filed(invented::plain_horn());
    HornUse still = filed(invented::use(a.id, horn.id));
    HornUse ended = invented::use(b.id, horn.id);
    ended.from = Date(2025, 9, 1);
    ended.until = Date(2026, 2, 1);
    ended = filed(ended);
    reopen();
    EXPECT_THAT(file().horn_uses(), ElementsAre(ended, still));
    EXPECT_THAT(file().horn_uses(a.id), ElementsAre(still));
    EXPECT_THAT(file().horn_uses(horn.id), ElementsAre(ended, still));
    still.until = Date(2026, 12, 1);
    file().edit("End", [&](Edit& edit) { edit.update(still); });
    EXPECT_THAT(file().horn_uses(a.id), ElementsAre(still));
    file().edit("Remove", [&](Edit& edit) { edit.remove(still.id); });
    EXPECT_THAT(file().horn_uses(), ElementsAre(ended));
}

TEST_F(RoundTrip, TuningSheetsNewestFirst) {
    const Student student = filed(invented::plain_student());
    const Horn horn = filed(invented::plain_horn());
    const TuningSheet full = filed(invented::full_sheet(student.id, horn.id));
    const TuningSheet plain = filed(invented::plain_sheet(student.id, horn.id));
    TuningSheet older = invented::plain_sheet(student.id, horn.id);
    older.on = Date(2025, 1, 31);
    older = filed(older);
    reopen();
    EXPECT_EQ(file().sheet(full.id), full);
    EXPECT_EQ(file().sheet(plain.id), plain);
    EXPECT_EQ(file().sheet({999}), std::nullopt);
    EXPECT_THAT(file().sheets(student.id), ElementsAre(plain, full, older));
    EXPECT_THAT(file().sheets(horn.id), ElementsAre(plain, full, older));
    EXPECT_THAT(file().sheets(studio::HornId{77}), IsEmpty());

    TuningSheet changed = full;
    std::swap(changed.readings[0], changed.readings[3]);
    changed.readings[1].cents = units::Cents(-1.5);
    changed.readings.pop_back();
    changed.positions.erase("first");
    changed.room.reset();
    file().edit("Change", [&](Edit& edit) { edit.update(changed); });
    reopen();
    EXPECT_EQ(file().sheet(full.id), changed);
}

TEST_F(RoundTrip, SettingsGivenOutNewestFirst) {
    const Student student = filed(invented::plain_student());
    const Horn horn = filed(invented::plain_horn());
    const TuningSheet sheet = filed(invented::full_sheet(student.id, horn.id));
    const GivenSettings plain = filed(invented::settings(student.id, horn.id));
    GivenSettings full = invented::settings(student.id, horn.id);
    full.sheet = sheet.id;
    full.moved_on = Date(2026, 11, 26);
    full.on = Date(2026, 11, 24);
    full = filed(full);
    reopen();
    EXPECT_THAT(file().given_settings(student.id), ElementsAre(plain, full));
    EXPECT_THAT(file().given_settings(horn.id), ElementsAre(plain, full));
    full.moved_on.reset();
    file().edit("Not moved", [&](Edit& edit) { edit.update(full); });
    EXPECT_THAT(file().given_settings(student.id), ElementsAre(plain, full));
    file().edit("Remove", [&](Edit& edit) { edit.remove(plain.id); });
    EXPECT_THAT(file().given_settings(student.id), ElementsAre(full));
}

TEST_F(RoundTrip, NumbersComeBackToTheLastBit) {
    Student student = invented::plain_student();
    for (const double cents : {0.1, 1.0 / 3.0, 1e-300, 99.99999999999999}) {
        student.tolerance = units::Cents(cents);
        const Student kept = filed(student);
        reopen();
        EXPECT_EQ(file().student(kept.id), kept);
    }
}

TEST_F(RoundTrip, RemovingAStudentTakesWhatIsOnlyTheirs) {
    const Student student = filed(invented::plain_student("Goes"));
    const Student other = filed(invented::plain_student("Stays"));
    const Horn school_horn = filed(invented::plain_horn());
    filed(invented::use(other.id, school_horn.id));
    filed(invented::full_sheet(other.id, school_horn.id));
    const std::string before = file().dump();
    // The sequence of ids goes on, so the records of the second pass differ in nothing but their ids.
    const Horn own_horn = filed(invented::full_horn(student.id));
    filed(invented::position(own_horn.id, "main", Date(2026, 9, 1), 20.0));
    filed(invented::use(student.id, own_horn.id));
    filed(invented::use(student.id, school_horn.id));
    const TuningSheet sheet = filed(invented::full_sheet(student.id, own_horn.id));
    GivenSettings given = invented::settings(student.id, own_horn.id);
    given.sheet = sheet.id;
    filed(given);
    const std::string full = file().dump();
    file().edit("Remove the student", [&](Edit& edit) { edit.remove(student.id); });
    EXPECT_EQ(file().student(student.id), std::nullopt);
    EXPECT_EQ(file().horn(own_horn.id), std::nullopt);
    EXPECT_EQ(file().sheet(sheet.id), std::nullopt);
    EXPECT_EQ(file().students(), (std::vector<Student>{other}));
    EXPECT_THAT(file().check(), IsEmpty());
    file().undo();
    EXPECT_EQ(file().dump(), full);
    for (int step = 0; step < 6; ++step)
        file().undo();
    EXPECT_EQ(file().dump(), before);
}

TEST_F(RoundTrip, AStudentWhoseHornOthersPlayedIsNotRemoved) {
    const Student owner = filed(invented::plain_student("Owner"));
    const Student other = filed(invented::plain_student("Other"));
    const Horn horn = filed(invented::full_horn(owner.id));
    filed(invented::use(owner.id, horn.id));
    filed(invented::full_sheet(other.id, horn.id));
    const std::string before = file().dump();
    const std::string sentence =
        invented::sentence_of([&] { file().edit("Remove", [&](Edit& edit) { edit.remove(owner.id); }); });
    EXPECT_THAT(sentence, HasSubstr("horn E-1 is theirs and others have played it"));
    EXPECT_EQ(file().dump(), before);
}

TEST_F(RoundTrip, RemovingASheetKeepsTheSettingsGivenFromIt) {
    const Student student = filed(invented::plain_student());
    const Horn horn = filed(invented::plain_horn());
    const TuningSheet sheet = filed(invented::full_sheet(student.id, horn.id));
    GivenSettings given = invented::settings(student.id, horn.id);
    given.sheet = sheet.id;
    given = filed(given);
    file().edit("Remove", [&](Edit& edit) { edit.remove(sheet.id); });
    given.sheet.reset();
    EXPECT_THAT(file().given_settings(student.id), ElementsAre(given));
    EXPECT_THAT(file().sheets(student.id), IsEmpty());
}

TEST_F(RoundTrip, IdsAreNotUsedAgain) {
    const Student first = filed(invented::plain_student());
    file().edit("Remove", [&](Edit& edit) { edit.remove(first.id); });
    const Student second = filed(invented::plain_student());
    EXPECT_LT(first.id, second.id);
    file().undo();
    reopen();
    EXPECT_LT(second.id, filed(invented::plain_student()).id);
}

}  // namespace
}  // namespace lowledger::store
