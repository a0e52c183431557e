#include "reports/pages/chart_page.h"

#include <algorithm>
#include <gmock/gmock.h>

#include "model/horns/chart.h"
#include "tests/reports/recorded.h"

namespace lowledger::pages {
namespace {

using canvas::Box;
using canvas::Paper;
using units::Millimetres;
using namespace units::literals;

const horns::HornKind& kind_of(std::string_view id) {
    const auto* const kind = horns::find_kind(horns::built_in_kinds(), id);
    if (kind == nullptr) throw std::logic_error("no such kind");
    return *kind;
}

canvas::Document printed(const horns::HornKind& kind, const horns::Reader& reader, Paper paper) {
    const canvas::Faces faces;
    return chart_page({.kind = kind, .style = {.reader = reader}, .horn = std::nullopt, .paper = paper},
                      words::Words(), faces);
}

/// Ink that letters can have: a little below an accented capital, and most of a descender.
Box letters_of(const canvas::Text& text) {
    const Millimetres size = in_millimetres(text.style.size);
    return {text.baseline.x, text.baseline.y - 0.75 * size, text.width, 0.93 * size};
}

template <typename Check>
void for_each_chart(Check check) {
    for (const auto& kind : horns::built_in_kinds()) {
        for (const auto& reader : kind.readers) {
            for (const auto paper : {Paper::a4, Paper::letter}) {
                SCOPED_TRACE(kind.id + " " + reader.id + (paper == Paper::a4 ? " on A4" : " on Letter"));
                check(kind, printed(kind, reader, paper));
            }
        }
    }
}

TEST(ChartPage, NothingPassesTheMarginsAndNoTextOverlapsAnother) {
    for_each_chart([](const horns::HornKind&, const canvas::Document& document) {
        for (const canvas::Page& page : document.pages) {
            const Box live = canvas::live_area(page.size);
            constexpr auto stroke = 0.3_mm;
            const Box allowed{live.left - stroke, live.top - stroke, live.width + 2.0 * stroke,
                              live.height + 2.0 * stroke};
            for (const auto& item : page.items)
                EXPECT_TRUE(canvas::within(canvas::ink_box(item), allowed));
            const auto texts = canvas::texts(page);
            for (std::size_t i = 0; i < texts.size(); ++i) {
                for (std::size_t j = i + 1; j < texts.size(); ++j)
                    EXPECT_FALSE(canvas::overlap(letters_of(texts[i]), letters_of(texts[j])))
                        << texts[i].text << "  over  " << texts[j].text;
            }
        }
    });
}

TEST(ChartPage, EveryNoteStandsOnAStaffOnce) {
    for_each_chart([](const horns::HornKind& kind, const canvas::Document& document) {
        std::size_t heads = 0;
        for (const canvas::Page& page : document.pages)
            heads += canvas::shapes_named(page, "noteheadWhole").size();
        EXPECT_EQ(heads, horns::chart(kind).size());
    });
}

TEST(ChartPage, AValvedHornsChartIsOnePage) {
    for_each_chart([](const horns::HornKind& kind, const canvas::Document& document) {
        EXPECT_LE(document.pages.size(), kind.hand_slide ? 2U : 1U);
    });
}

TEST(ChartPage, OwnLeansStandInPlaceOfTheKinds) {
    const auto& kind = kind_of("bbb-tuba-3");
    const units::Pitch d2(38);
    const auto way = horns::chart_note(kind, d2)->usual;
    ChartOfHorn horn{"T-9", "Ida Holm", {}};
    horn.profile.takes_used = 7;
    tuning::ProfileNote note{.note = d2, .fingering = way.fingering, .partial = way.partial};
    note.mean = -33_cents;
    note.takes = 7;
    horn.profile.notes.push_back(note);
    const canvas::Faces faces;
    const auto document = chart_page(
        {.kind = kind, .style = {.reader = kind.readers.front()}, .horn = horn, .paper = Paper::a4},
        words::Words(), faces);
    std::vector<std::string> texts;
    for (const auto& text : canvas::texts(document.pages.front()))
        texts.push_back(text.text);
    EXPECT_THAT(texts, testing::Contains("\u221233"));
    EXPECT_THAT(texts, testing::Contains("7\u00D7"));
    EXPECT_THAT(texts, testing::Contains(testing::HasSubstr("Ida Holm")));
    EXPECT_THAT(texts, testing::Contains(testing::HasSubstr("T-9")));
}

TEST(ChartPage, IsAsItWasLookedAt) {
    const auto& euphonium = kind_of("euphonium-4-comp");
    EXPECT_EQ(canvas::difference_from_golden(
                  printed(euphonium, euphonium.readers.at(1), Paper::a4).pages.front(), "chart-euphonium"),
              "");
    const auto& trombone = kind_of("tenor-trombone-f");
    EXPECT_EQ(canvas::difference_from_golden(
                  printed(trombone, trombone.readers.front(), Paper::letter).pages.front(), "chart-trombone"),
              "");
}

}  // namespace
}  // namespace lowledger::pages
