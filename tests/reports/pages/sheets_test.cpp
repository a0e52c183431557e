#include <algorithm>
#include <filesystem>
#include <gmock/gmock.h>

#include "reports/canvas/pdf.h"
#include "reports/pages/chart_page.h"
#include "reports/pages/named.h"
#include "reports/pages/pass_sheet.h"
#include "reports/pages/settings_table.h"
#include "reports/pages/strips_page.h"
#include "reports/pages/tuning_form.h"
#include "tests/reports/pages/sample_handouts.h"
#include "tests/reports/recorded.h"

namespace lowledger::pages {
namespace {

using canvas::Box;
using testing::Contains;
using testing::HasSubstr;
using units::Millimetres;
using namespace units::literals;

const std::vector<units::Pitch> band_notes = {units::Pitch(46), units::Pitch(41), units::Pitch(50)};
const studio::Date day(2026, 11, 25);

/// Everybody of the awkward handouts, and a player of every kind who reads it last in its list.
std::vector<Player> everybody() {
    std::vector<Player> players;
    for (const auto& sample : awkward_handouts())
        players.push_back({sample.inputs.student, sample.inputs.horn, sample.inputs.kind});
    for (const auto& kind : horns::built_in_kinds()) {
        Player& player = players.emplace_back(players.front());
        player.student.reader = kind.readers.back().id;
        player.kind = kind;
    }
    return players;
}

struct Sheet {
    std::string name;
    PageStyle style;
    canvas::Document document;
};

std::vector<Sheet> all_sheets() {
    const canvas::Faces faces;
    const words::Words words;
    const auto facts = usual_handout().facts;
    const auto players = everybody();
    std::vector<Sheet> sheets;
    for (const auto paper : {canvas::Paper::a4, canvas::Paper::letter}) {
        for (const bool large : {false, true}) {
            const PageStyle style{paper, large};
            const auto add = [&](const std::string& name, canvas::Document document) {
                sheets.push_back(
                    {name + (paper == canvas::Paper::a4 ? "-a4" : "-letter") + (large ? "-large" : ""), style,
                     std::move(document)});
            };
            add("pass", pass_sheet(players, band_notes, facts, day, style, words, faces));
            add("forms", tuning_forms(players, facts, day, style, words, faces));
            add("pass-nobody", pass_sheet({}, band_notes, facts, day, style, words, faces));
            add("forms-nobody", tuning_forms({}, facts, day, style, words, faces));
            for (auto& sample : awkward_handouts()) {
                sample.inputs.paper = paper;
                sample.inputs.large_print = large;
                if (large) add("handout-" + sample.name, handout(sample.inputs, words, faces));
                if (!large) add("strips-" + sample.name, strips_page(sample.inputs, words, faces));
            }
        }
    }
    return sheets;
}

std::vector<std::string> words_of(const canvas::Document& document) {
    std::vector<std::string> all;
    for (const auto& page : document.pages) {
        for (const auto& text : canvas::texts(page))
            all.push_back(text.text);
    }
    return all;
}

TEST(Sheets, NothingPassesTheMarginsAndNoTextOverlapsAnother) {
    for (const Sheet& sheet : all_sheets()) {
        SCOPED_TRACE(sheet.name);
        for (const canvas::Page& page : sheet.document.pages) {
            EXPECT_NEAR(page.size.width.value(), canvas::size_of(sheet.style.paper).width.value(), 1e-9);
            const Box live = canvas::live_area(page.size);
            constexpr auto stroke = 0.4_mm;
            const Box allowed{live.left - stroke, live.top - stroke, live.width + 2.0 * stroke,
                              live.height + 2.0 * stroke};
            for (const auto& item : page.items)
                EXPECT_TRUE(canvas::within(canvas::ink_box(item), allowed));
            const auto texts = canvas::texts(page);
            for (std::size_t i = 0; i < texts.size(); ++i) {
                for (std::size_t j = i + 1; j < texts.size(); ++j)
                    EXPECT_FALSE(canvas::overlap(canvas::ink_box(texts[i]), canvas::ink_box(texts[j])))
                        << texts[i].text << "  over  " << texts[j].text;
            }
        }
    }
}

TEST(Sheets, ArePdfsToLookAt) {
    const canvas::Faces faces;
    const std::filesystem::path folder = LOWLEDGER_PAGES_TO_LOOK_AT;
    std::filesystem::create_directories(folder);
    for (const Sheet& sheet : all_sheets()) {
        canvas::save_pdf(sheet.document, faces, folder / (sheet.name + ".pdf"));
        const std::string check =
            "qpdf --check '" + (folder / (sheet.name + ".pdf")).string() + "' > /dev/null";
        EXPECT_EQ(std::system(check.c_str()), 0) << sheet.name;
    }
}

TEST(PassSheet, GivesEachReaderTheirOwnNameForTheBandsNote) {
    const canvas::Faces faces;
    const auto usual = usual_handout();
    Player player{usual.student, usual.horn, *horns::find_kind(horns::built_in_kinds(), "euphonium-4-comp")};
    player.student.reader = "treble-b-flat";
    const std::vector<units::Pitch> b_flat = {units::Pitch(22)};
    const auto words =
        words_of(pass_sheet({&player, 1}, b_flat, usual.facts, day, {}, words::Words(), faces));
    EXPECT_THAT(words, Contains("C"));
    EXPECT_THAT(words, Contains("(B\u266D)"));
    EXPECT_THAT(words, Contains("0"));
}

TEST(Sheets, ManyPagesHaveDateAndNumber) {
    const canvas::Faces faces;
    const auto players = everybody();
    const auto document = tuning_forms(players, usual_handout().facts, day, {}, words::Words(), faces);
    ASSERT_GT(document.pages.size(), 2U);
    const std::string last =
        std::to_string(document.pages.size()) + " of " + std::to_string(document.pages.size());
    EXPECT_THAT(words_of(document), Contains(last));
    EXPECT_THAT(words_of(document), Contains(HasSubstr("fill in, 25 November 2026")));
}

TEST(LargePrint, IsAsMuchLargerAsItSays) {
    const canvas::Faces faces;
    auto inputs = usual_handout();
    inputs.large_print = true;
    const auto document = handout(inputs, words::Words(), faces);
    EXPECT_EQ(document.pages.size(), 3U);
    double largest = 0.0;
    for (const auto& text : canvas::texts(document.pages.front()))
        largest = std::max(largest, text.style.size.value());
    EXPECT_NEAR(largest, 18.0 * large_print_scale, 1e-9);
}

TEST(StripsPage, ScalesAreTrueSize) {
    const canvas::Faces faces;
    auto inputs = usual_handout();
    inputs.large_print = true;
    const auto document = strips_page(inputs, words::Words(), faces);
    const auto& items = document.pages.front().items;
    EXPECT_TRUE(std::any_of(items.begin(), items.end(), [](const canvas::Item& item) {
        const auto* const line = std::get_if<canvas::Line>(&item);
        return line != nullptr && std::abs((line->to.x - line->from.x).value() - 50.0) < 1e-9;
    }));
    for (const auto& slide : inputs.kind.slides)
        EXPECT_THAT(words_of(document), Contains(testing::StrCaseEq(slide.name)));
}

TEST(Named, ManyAreOneDocumentOrAFileEach) {
    const canvas::Faces faces;
    const auto document = handout(usual_handout(), words::Words(), faces);
    const std::vector<NamedDocument> two = {{"Ida/Holm", document}, {"ida/holm", document}};
    EXPECT_EQ(as_one(two, "Handouts").title, "Handouts");
    EXPECT_EQ(as_one(two, "Handouts").pages.size(), 2U);
    EXPECT_EQ(as_one({two.data(), 1}, "Handouts").title, "Ida/Holm");
    const auto files = as_files(two, faces);
    EXPECT_EQ(files[0].name, "Ida-Holm.pdf");
    EXPECT_EQ(files[1].name, "ida-holm (2).pdf");
}

}  // namespace
}  // namespace lowledger::pages
