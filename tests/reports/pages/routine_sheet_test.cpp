#include "reports/pages/routine_sheet.h"

#include <filesystem>
#include <gmock/gmock.h>

#include "model/routines/library.h"
#include "model/studio/assigned.h"
#include "model/studio/note_style.h"
#include "reports/canvas/pdf.h"
#include "reports/engraving/music_text.h"
#include "reports/pages/routine_music.h"
#include "tests/reports/recorded.h"

namespace lowledger::pages {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

const studio::Date monday(2026, 11, 23);

RoutineSheetInputs sheet_of(std::size_t routines, const char* kind, const char* reader = "") {
    RoutineSheetInputs inputs{{}, {}, {}, monday, {}};
    inputs.facts.teacher = "Nora Field";
    inputs.facts.school = "Harbour Street School";
    inputs.student.name = "Ida Holm";
    inputs.student.reader = reader;
    inputs.kind = *horns::find_kind(horns::built_in_kinds(), kind);
    for (std::size_t i = 0; i < routines; ++i) {
        const auto& routine = routines::library()[i % routines::library().size()];
        inputs.routines.push_back({routine,
                                   {.id = {},
                                    .routine = {},
                                    .student = studio::StudentId{1},
                                    .from = monday,
                                    .days = i % 2 == 0 ? studio::Weekdays() : studio::Weekdays{1, 3, 5}}});
    }
    return inputs;
}

std::vector<std::string> words_of(const canvas::Document& document) {
    std::vector<std::string> all;
    for (const auto& page : document.pages)
        for (const auto& text : canvas::texts(page))
            all.push_back(text.text);
    return all;
}

void keep_to_look_at(const canvas::Document& document, const canvas::Faces& faces, const std::string& name) {
    const std::filesystem::path folder = LOWLEDGER_PAGES_TO_LOOK_AT;
    std::filesystem::create_directories(folder);
    canvas::save_pdf(document, faces, folder / ("routines-" + name + ".pdf"));
}

TEST(RoutineSheet, IsDrawnAsTheGoldenPage) {
    const canvas::Faces faces;
    const auto document = routine_sheet(sheet_of(3, "bbb-tuba-3"), words::Words(), faces);
    ASSERT_EQ(document.pages.size(), 1U);
    EXPECT_THAT(canvas::difference_from_golden(document.pages.front(), "routine-sheet"), IsEmpty());
    keep_to_look_at(document, faces, "three");
}

TEST(RoutineSheet, NothingPassesTheMarginsHoweverManyRoutines) {
    const canvas::Faces faces;
    for (const auto paper : {canvas::Paper::a4, canvas::Paper::letter}) {
        for (const std::size_t count : {0U, 1U, 8U, 40U}) {
            SCOPED_TRACE(count);
            auto inputs = sheet_of(count, "bbb-tuba-3");
            inputs.style.paper = paper;
            inputs.style.large_print = count == 8;
            if (count == 1) inputs.routines[0].routine.steps.assign(90, std::string(300, 'x') + " y");
            const auto document = routine_sheet(inputs, words::Words(), faces);
            for (const auto& page : document.pages) {
                const canvas::Box live = canvas::live_area(page.size);
                const units::Millimetres ink(0.4);
                const canvas::Box allowed{live.left - ink, live.top - ink, live.width + ink * 2.0,
                                          live.height + ink * 2.0};
                for (const auto& item : page.items)
                    EXPECT_TRUE(canvas::within(canvas::ink_box(item), allowed));
            }
            keep_to_look_at(document, faces,
                            std::to_string(count) + (paper == canvas::Paper::a4 ? "-a4" : "-letter"));
        }
    }
}

TEST(RoutineSheet, SaysThatThereIsNothing) {
    const canvas::Faces faces;
    const auto document = routine_sheet(sheet_of(0, "bbb-tuba-3"), words::Words(), faces);
    ASSERT_EQ(document.pages.size(), 1U);
    EXPECT_THAT(words_of(document), testing::Contains(HasSubstr("No routine is set for this week")));
}

TEST(RoutineSheet, HasABoxForEachDayAskedAndNoOther) {
    const canvas::Faces faces;
    auto inputs = sheet_of(1, "bbb-tuba-3");
    inputs.routines[0].routine.music.clear();
    const auto boxes = [&] {
        const auto document = routine_sheet(inputs, words::Words(), faces);
        return std::ranges::count_if(document.pages.front().items, [](const canvas::Item& item) {
            return std::holds_alternative<canvas::Outline>(item);
        });
    };
    EXPECT_EQ(boxes(), 7);
    inputs.routines[0].assignment.days = {1, 3, 5};
    EXPECT_EQ(boxes(), 3);
    inputs.routines[0].assignment.until = monday + 4;
    EXPECT_EQ(boxes(), 2);
}

TEST(RoutineSheet, SaysWhyMusicCannotBeShown) {
    const canvas::Faces faces;
    auto inputs = sheet_of(1, "bbb-tuba-3");
    inputs.routines[0].routine.music = "H9/4";
    EXPECT_THAT(words_of(routine_sheet(inputs, words::Words(), faces)),
                testing::Contains(HasSubstr("cannot be shown")));
}

TEST(RoutineMusic, OfTheLibraryIsReadAndSetForEveryHornAndReader) {
    const canvas::Faces faces;
    int set = 0;
    for (const auto& kind : horns::built_in_kinds()) {
        for (const auto& reader : kind.readers) {
            auto inputs = sheet_of(0, kind.id.c_str(), reader.id.c_str());
            for (const auto& routine : routines::library()) {
                if (!studio::is_for(routine, kind)) continue;
                SCOPED_TRACE(routine.key + " on " + kind.id);
                const auto line = routine_music(routine, kind, reader);
                if (!line) continue;
                ++set;
                inputs.routines.push_back({routine, {.id = {}, .routine = {}, .from = monday}});
            }
            for (const auto& text : words_of(routine_sheet(inputs, words::Words(), faces)))
                EXPECT_THAT(text, Not(HasSubstr("cannot be shown")));
        }
    }
    EXPECT_GT(set, 100);
}

TEST(RoutineMusic, StandsAtTheHornsOwnPitchWithTheSameFingerings) {
    studio::Routine routine{.id = {}, .title = "T", .music = "Bb1/2 A1 F2"};
    const auto low = *horns::find_kind(horns::built_in_kinds(), "bbb-tuba-3");
    const auto high = *horns::find_kind(horns::built_in_kinds(), "baritone-3");
    EXPECT_EQ(engraving::music_text(*routine_music(routine, low, low.readers.front())),
              engraving::music_text(engraving::parse_music("Bb1/2[0] A1[2] F2[0]")));
    EXPECT_EQ(engraving::music_text(*routine_music(routine, high, studio::reader_of(high, "bass"))),
              engraving::music_text(engraving::parse_music("Bb2/2[0] A2[2] F3[0]")));
    // Written an octave higher where only trombones are named.
    routine.horns = {"trombone"};
    routine.music = "Bb2/2 A2 F3";
    const auto trombone = *horns::find_kind(horns::built_in_kinds(), "tenor-trombone");
    EXPECT_EQ(engraving::music_text(*routine_music(routine, trombone, trombone.readers.front())),
              engraving::music_text(engraving::parse_music("Bb2/2[1] A2[2] F3[1]")));
}

}  // namespace
}  // namespace lowledger::pages
