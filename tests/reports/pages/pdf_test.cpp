#include "reports/canvas/pdf.h"

#include <array>
#include <cstdio>
#include <filesystem>
#include <gmock/gmock.h>

#include "reports/pages/handout.h"
#include "reports/pages/joined.h"
#include "reports/pages/settings_table.h"
#include "tests/reports/pages/sample_handouts.h"

namespace lowledger::pages {
namespace {

using testing::HasSubstr;
namespace fs = std::filesystem;

/// What a program printed, its end status checked.
std::string output_of(const std::string& command) {
    std::FILE* const pipe = popen(command.c_str(), "r");
    EXPECT_NE(pipe, nullptr);
    std::string output;
    std::array<char, 4096> buffer{};
    while (const std::size_t read = std::fread(buffer.data(), 1, buffer.size(), pipe))
        output.append(buffer.data(), read);
    EXPECT_EQ(pclose(pipe), 0) << command << "\n" << output;
    return output;
}

/// The sample as PDF in the folder of pages to look at.
fs::path printed(const NamedHandout& sample, canvas::Paper paper) {
    const canvas::Faces faces;
    auto inputs = sample.inputs;
    inputs.paper = paper;
    const fs::path folder = LOWLEDGER_PAGES_TO_LOOK_AT;
    fs::create_directories(folder);
    const fs::path path = folder / (sample.name + (paper == canvas::Paper::a4 ? "-a4.pdf" : "-letter.pdf"));
    canvas::save_pdf(handout(inputs, words::Words(), faces), faces, path);
    return path;
}

std::string text_of(const fs::path& pdf) {
    return output_of("pdftotext -layout '" + pdf.string() + "' - 2>/dev/null");
}

TEST(HandoutPdf, EveryKindOfTheCatalogue) {
    for (const auto& kind : horns::built_in_kinds())
        printed({"kind-" + kind.id, answered_handout(kind)}, canvas::Paper::a4);
}

TEST(HandoutPdf, IsSoundInEveryCaseAndSize) {
    for (const auto& sample : awkward_handouts()) {
        for (const auto paper : {canvas::Paper::a4, canvas::Paper::letter})
            EXPECT_THAT(output_of("qpdf --check '" + printed(sample, paper).string() + "'"),
                        HasSubstr("No syntax or stream encoding errors found"));
    }
}

TEST(HandoutPdf, ItsWordsComeOutAgain) {
    const auto text = text_of(printed(awkward_handouts().front(), canvas::Paper::a4));
    for (const auto* const words :
         {"Ida Holm", "BB\u266D tuba, four valves, T-4", "25 November 2026", "Set your slides", "Main slide",
          "35 mm", "pull 15 mm", "aim for +2", "Notes to watch", "When the band tunes", "repair technician"})
        EXPECT_THAT(text, HasSubstr(words));
}

TEST(HandoutPdf, NamesOfAnyAlphabetPrint) {
    for (const auto& sample : awkward_handouts())
        EXPECT_THAT(text_of(printed(sample, canvas::Paper::letter)),
                    HasSubstr(sample.inputs.student.name.substr(0, sample.inputs.student.name.find(' '))));
}

TEST(SettingsTablePdf, IsSound) {
    const canvas::Faces faces;
    std::vector<HandoutInputs> rows;
    for (const auto& sample : awkward_handouts())
        rows.push_back(sample.inputs);
    const fs::path path = fs::path(LOWLEDGER_PAGES_TO_LOOK_AT) / "settings-table.pdf";
    fs::create_directories(path.parent_path());
    canvas::save_pdf(settings_table(rows, rows[0].facts, rows[0].date, PageStyle{}, words::Words(), faces),
                     faces, path);
    EXPECT_THAT(output_of("qpdf --check '" + path.string() + "'"),
                HasSubstr("No syntax or stream encoding errors"));
}

TEST(JoinedHandouts, HaveABookmarkEach) {
    const canvas::Faces faces;
    std::vector<canvas::Document> documents;
    for (const auto& sample : awkward_handouts())
        documents.push_back(handout(sample.inputs, words::Words(), faces));
    const auto all = joined(documents, "Handouts");
    ASSERT_EQ(all.pages.size(), documents.size());
    ASSERT_EQ(all.bookmarks.size(), documents.size());
    for (std::size_t i = 0; i < documents.size(); ++i)
        EXPECT_EQ(all.bookmarks[i].page, i);
    EXPECT_EQ(all.bookmarks.front().title, "Ida Holm");
}

}  // namespace
}  // namespace lowledger::pages
