#include "app/desk/note_chart.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "app/desk/kind_list.h"
#include "app/desk/readers.h"
#include "model/studio/note_style.h"
#include "reports/canvas/faces.h"
#include "tests/app/desk/prepared_studio.h"

namespace lowledger::desk {
namespace {

using testing::HasSubstr;
using units::Pitch;

const words::Words& words() {
    static const words::Words words;
    return words;
}

NoteChart chart_of(const char* kind_id, const char* reader_id,
                   units::Naming naming = units::Naming::english) {
    const auto& kind = *horns::find_kind(horns::built_in_kinds(), kind_id);
    horns::NoteStyle style;
    style.reader = studio::reader_of(kind, reader_id);
    style.naming = naming;
    return {kind, style};
}

Pitch pitch(const char* name) {
    return *units::parse_pitch(name);
}

TEST(NoteChart, FindsANoteAsTheReaderOrElseTheTunerCallsIt) {
    auto chart = chart_of("euphonium-4-comp", "treble-b-flat");
    EXPECT_EQ(chart.find(words(), "c4"), "");
    EXPECT_EQ(chart.note(), pitch("Bb2"));
    EXPECT_EQ(chart.name(chart.note()), "C4");
    EXPECT_EQ(chart.tuner_name(chart.note()), "B♭");
    // Written E2 lies below every part for the horn; what a tuner calls E2 does not.
    EXPECT_EQ(chart.find(words(), "E2"), "");
    EXPECT_EQ(chart.note(), pitch("E2"));
}

TEST(NoteChart, ANameWithoutOctaveGoesFromOneToTheNextAndRoundAgain) {
    auto chart = chart_of("bbb-tuba-3", "bass");
    chart.look_at(chart.notes().front().note);
    std::vector<int> found;
    for (int i = 0; i < 4; ++i) {
        EXPECT_EQ(chart.find(words(), "B♭"), "");
        found.push_back(chart.note().midi());
    }
    EXPECT_EQ(found[1], found[0] + 12);
    EXPECT_LT(*std::ranges::min_element(found), found.back() + 1);
    EXPECT_EQ(found.back() % 12, 10);
}

TEST(NoteChart, ReadsGermanNamesWhereNotesAreNamedSo) {
    auto chart = chart_of("bbb-tuba-3", "bass", units::Naming::german);
    EXPECT_EQ(chart.find(words(), "H2"), "");
    EXPECT_EQ(chart.note(), pitch("B2"));
    EXPECT_EQ(chart.find(words(), "B2"), "");
    EXPECT_EQ(chart.note(), pitch("Bb2"));
    EXPECT_EQ(chart.name(chart.note()), "B2");
}

TEST(NoteChart, SaysWhatIsNoNoteAndWhatIsNoneOfTheHorns) {
    auto chart = chart_of("bbb-tuba-3", "bass");
    const auto before = chart.note();
    EXPECT_THAT(chart.find(words(), "K9"), HasSubstr("K9 is no note"));
    EXPECT_THAT(chart.find(words(), "C8"), HasSubstr("outside the usual range"));
    EXPECT_EQ(chart.note(), before);
}

TEST(NoteChart, ListsEveryWayOfANoteByRankAndMarksTheUsualOne) {
    auto chart = chart_of("bbb-tuba-3", "bass");
    chart.look_at(pitch("D3"));
    const auto ways = chart.ways(words());
    const auto possible = horns::possible_fingerings(chart.kind(), pitch("D3"));
    ASSERT_EQ(ways.rows.size(), possible.size());
    int usual = 0;
    for (std::size_t i = 0; i < ways.rows.size(); ++i) {
        EXPECT_EQ(ways.rows[i].id, static_cast<std::int64_t>(i) + 1);
        if (ways.rows[i].cells.back().text.starts_with("usual")) ++usual;
    }
    EXPECT_EQ(usual, 1);
    EXPECT_FALSE(chart.why(words()).empty());
}

TEST(NoteChart, EveryKindHasATableRowAndAPlaceInTheDrawingForEveryNoteInEveryReader) {
    const canvas::Faces faces;
    const engraving::Engraver engraver(faces, units::Millimetres(1.5));
    const PictureTools tools{engraver, words()};
    for (const char* id : {"bbb-tuba-3", "euphonium-4-comp", "tenor-trombone-f"}) {
        const auto& kind = *horns::find_kind(horns::built_in_kinds(), id);
        for (std::size_t reader = 0; reader < kind.readers.size(); ++reader) {
            NoteChart chart(kind, {});
            chart.read_as(reader);
            const auto table = chart.table(words());
            ASSERT_EQ(table.rows.size(), chart.notes().size());
            for (const auto& row : table.rows)
                EXPECT_EQ(row.cells.size(), table.columns.size()) << id;
            const units::Millimetres width(150);
            const auto picture = chart.picture(tools, width);
            EXPECT_GT(picture.page.size.height, units::Millimetres(20)) << id;
            std::size_t found = 0;
            for (double y = 1; y < picture.page.size.height.value(); y += 5)
                for (double x = 0; x < 150; x += 1) {
                    const auto note =
                        chart.note_at(tools, width, {units::Millimetres(x), units::Millimetres(y)});
                    if (note && *note != chart.note()) {
                        chart.look_at(*note);
                        ++found;
                    }
                }
            EXPECT_GE(found + 1, chart.notes().size()) << id;
        }
    }
}

TEST(HornChart, ShowsTheLeansOfWhoPlayedItAndTheKindsOnDemand) {
    PreparedStudio studio;
    studio.turn_to_ada();
    auto& desk = *studio.desk;
    desk.go({.place = Place::horns, .horn = studio.tuba, .section = Section::chart});
    auto* const chart = desk.horn_chart();
    ASSERT_NE(chart, nullptr);
    ASSERT_EQ(chart->players().size(), 1U);
    EXPECT_EQ(chart->players().front().name, desk.file().student(studio.ada)->name);
    ASSERT_TRUE(chart->chart().horn());
    EXPECT_GT(chart->chart().horn()->profile.takes_used, 0);
    EXPECT_THAT(chart->chart().about(desk.words()), HasSubstr(desk.file().student(studio.ada)->name));
    desk.lean_as(std::nullopt);
    EXPECT_FALSE(desk.horn_chart()->chart().horn());
    // A change elsewhere leaves the chart as one looked at it.
    desk.horn_chart()->chart().look_at(pitch("F2"));
    desk.file().edit("another", [&](store::Edit& edit) { edit.remove(studio.ben); });
    EXPECT_EQ(desk.horn_chart()->chart().note(), pitch("F2"));
    EXPECT_FALSE(desk.horn_chart()->chart().horn());
    desk.go({.place = Place::students});
    EXPECT_EQ(desk.horn_chart(), nullptr);
}

TEST(KindList, FindsKindsByWordsOfNameFamilyAndOpenNote) {
    const auto& kinds = horns::built_in_kinds();
    EXPECT_EQ(kinds_listing(kinds, words(), "").rows.size(), kinds.size());
    for (const auto& row : kinds_listing(kinds, words(), "comp euph").rows)
        EXPECT_THAT(kinds.at(static_cast<std::size_t>(row.id)).id, HasSubstr("euphonium"));
    EXPECT_FALSE(kinds_listing(kinds, words(), "BBb tuba").rows.empty());
    EXPECT_TRUE(kinds_listing(kinds, words(), "piccolo").rows.empty());
    for (const auto& kind : kinds)
        EXPECT_NE(kind_family(words(), kind), "Your own") << kind.id;
}

TEST(Readers, OfTheHornPlayedElseOfAllKinds) {
    PreparedStudio studio;
    auto& desk = *studio.desk;
    const auto of_ada = readers_offered(desk, *desk.file().student(studio.ada));
    EXPECT_EQ(of_ada.front().id, "");
    EXPECT_EQ(of_ada.size(), 1 + horns::find_kind(horns::built_in_kinds(), "bbb-tuba-3")->readers.size());
    const auto of_ben = readers_offered(desk, *desk.file().student(studio.ben));
    EXPECT_GT(of_ben.size(), of_ada.size());
    auto ada = *desk.file().student(studio.ada);
    ada.reader = "tenor";
    EXPECT_EQ(readers_offered(desk, ada).back().id, "tenor");
}

}  // namespace
}  // namespace lowledger::desk
