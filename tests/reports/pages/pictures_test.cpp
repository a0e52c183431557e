#include "tests/reports/pages/pictures.h"

#include <algorithm>
#include <cstdlib>
#include <gtest/gtest.h>

#include "reports/canvas/pdf.h"
#include "reports/pages/chart_page.h"
#include "reports/pages/pass_sheet.h"
#include "reports/pages/routine_sheet.h"
#include "reports/pages/settings_table.h"
#include "reports/pages/strips_page.h"
#include "reports/pages/tuning_form.h"
#include "tests/reports/pages/sample_book_pages.h"
#include "tests/reports/pages/sample_handouts.h"

namespace lowledger::pages {
namespace {

namespace fs = std::filesystem;

/// What another version of the painter may change; a line of small type that is missing is more.
constexpr double most_mean = 0.3;
constexpr double most_share_off = 0.001;
const studio::Date day(2026, 11, 25);

struct Named {
    std::string name;
    canvas::Document document;
};

studio::Routine invented_routine(int number) {
    return {
        .id = {},
        .title = "Invented routine number " + std::to_string(number + 1),
        .aim = "A tone that begins and ends as it is in the middle.",
        .steps = {"Breathe in over four beats.",
                  "Play the line slowly and listen to the end of every note, where a tone gives way first, "
                  "until it is as full there as where it began.",
                  "Rest as long as you have played."},
        .dose = "three times, slowly",
        .music = number % 2 == 0 ? "mf Bb1/2 A1 F2/4 r Eb2/8 D2 C2/4 Bb1/1" : ""};
}

class Drawer {
  public:
    explicit Drawer(canvas::Paper paper) : paper_(paper) {}

    std::vector<Named> every_page() {
        for (auto& sample : awkward_handouts()) {
            if (sample.name == "polish" || sample.name == "partly-measured") continue;
            add_handout(sample);
        }
        add_charts();
        add_sheets();
        add_routines();
        for (auto& page : book_pages({paper_, false}, faces_))
            if (!page.name.ends_with("-many")) add(page.name, std::move(page.document));
        return std::move(all_);
    }
    [[nodiscard]] const canvas::Faces& faces() const { return faces_; }

  private:
    void add(const std::string& name, canvas::Document document) {
        all_.push_back({name + (paper_ == canvas::Paper::a4 ? "-a4" : "-letter"), std::move(document)});
    }
    void add_handout(NamedHandout& sample) {
        players_.push_back({sample.inputs.student, sample.inputs.horn, sample.inputs.kind});
        sample.inputs.paper = paper_;
        rows_.push_back(sample.inputs);
        add("handout-" + sample.name, handout(sample.inputs, words_, faces_));
        if (sample.name != "usual" && sample.name != "six-long-slides") return;
        add("strips-" + sample.name, strips_page(sample.inputs, words_, faces_));
        sample.inputs.large_print = true;
        add("handout-large-" + sample.name, handout(sample.inputs, words_, faces_));
    }
    void add_charts() {
        for (const auto* const id : {"bbb-tuba-4", "euphonium-4-comp", "tenor-trombone-f"}) {
            const auto& kind = *horns::find_kind(horns::built_in_kinds(), id);
            ChartInputs inputs{
                .kind = kind, .style = {.reader = kind.readers.back()}, .horn = {}, .paper = paper_};
            inputs.large_print = kind.id == "bbb-tuba-4";
            add("chart-" + kind.id, chart_page(inputs, words_, faces_));
        }
        const auto usual = usual_handout();
        const auto style = note_style(usual);
        add("chart-own-leans", chart_page({.kind = usual.kind,
                                           .style = style,
                                           .horn = ChartOfHorn{"T-4", "Ida Holm", usual.answer.profile},
                                           .paper = paper_},
                                          words_, faces_));
    }
    void add_sheets() {
        const auto facts = rows_.front().facts;
        const PageStyle style{paper_, false};
        const std::vector<units::Pitch> band = {units::Pitch(46), units::Pitch(41), units::Pitch(50)};
        add("pass-sheet", pass_sheet(players_, band, facts, day, style, words_, faces_));
        players_.erase(players_.begin() + 3, players_.end());
        add("tuning-forms", tuning_forms(players_, facts, day, style, words_, faces_));
        add("settings-table", settings_table(rows_, facts, day, style, words_, faces_));
    }
    void add_routines() {
        RoutineSheetInputs inputs{rows_.front().facts, rows_.front().student, rows_.front().kind, day, {}};
        inputs.style.paper = paper_;
        for (int i = 0; i < 5; ++i)
            inputs.routines.push_back({invented_routine(i), {.id = {}, .routine = {}, .from = day}});
        add("routine-sheet", routine_sheet(inputs, words_, faces_));
    }

    canvas::Paper paper_;
    canvas::Faces faces_;
    words::Words words_;
    std::vector<Named> all_;
    std::vector<Player> players_;
    std::vector<HandoutInputs> rows_;
};

fs::path left_in(const std::string& name) {
    const fs::path folder = fs::path(LOWLEDGER_PAGES_TO_LOOK_AT) / "pictures";
    fs::create_directories(folder);
    return folder / name;
}

std::vector<Picture> painted_pages(const Named& page, const canvas::Faces& faces) {
    const fs::path pdf = left_in(page.name + ".pdf");
    canvas::save_pdf(page.document, faces, pdf);
    return painted(pdf);
}

Picture reduced_pages(const std::vector<Picture>& pages) {
    std::vector<Picture> small;
    for (const Picture& page : pages)
        small.push_back(reduced(page));
    return montage(small, small.size());
}

void compare_with_stored(const Picture& now, const std::string& name) {
    const fs::path stored = fs::path(LOWLEDGER_SOURCE) / "tests/golden/pictures" / (name + ".png");
    if (std::getenv("LOWLEDGER_WRITE_GOLDEN") != nullptr) {
        fs::create_directories(stored.parent_path());
        write_png(now, stored);
        return;
    }
    ASSERT_TRUE(fs::exists(stored)) << stored;
    const Picture before = read_png(stored);
    write_png(now, left_in(name + ".png"));
    const Picture as_stored = read_png(left_in(name + ".png"));
    ASSERT_EQ(as_stored.width, before.width) << "other pages than in " << stored;
    ASSERT_EQ(as_stored.height, before.height) << "other pages than in " << stored;
    const auto apart = difference(as_stored, before);
    EXPECT_LE(apart.mean, most_mean) << stored << " is another than " << left_in(name + ".png");
    EXPECT_LE(apart.share_off, most_share_off) << stored << " is another than " << left_in(name + ".png");
}

void compare_every_page(canvas::Paper paper, const std::string& montage_name) {
    Drawer drawer(paper);
    std::vector<Picture> all;
    for (const Named& page : drawer.every_page()) {
        SCOPED_TRACE(page.name);
        const auto pages = painted_pages(page, drawer.faces());
        compare_with_stored(reduced_pages(pages), page.name);
        all.insert(all.end(), pages.begin(), pages.end());
    }
    write_png(montage(all, 8), left_in(montage_name));
}

TEST(PagePictures, OnA4AreAsTheyWereLookedAt) {
    compare_every_page(canvas::Paper::a4, "montage-a4.png");
}

TEST(PagePictures, OnLetterAreAsTheyWereLookedAt) {
    compare_every_page(canvas::Paper::letter, "montage-letter.png");
}

/// A page with one item changed is told from the page.
void expect_told_apart(const canvas::Document& page, const canvas::Document& changed,
                       const std::string& name) {
    const canvas::Faces faces;
    const auto before = reduced_pages(painted_pages({name + "-before", page}, faces));
    const auto after = reduced_pages(painted_pages({name + "-after", changed}, faces));
    const auto apart = difference(before, after);
    EXPECT_TRUE(apart.mean > most_mean || apart.share_off > most_share_off)
        << name << ": " << apart.mean << ", " << apart.share_off;
}

TEST(PagePictures, TellAMissingLineAndAMovedStaff) {
    const canvas::Faces faces;
    const auto page = handout(usual_handout(), words::Words(), faces);
    const auto is_sentence = [](const canvas::Item& item) {
        const auto* const text = std::get_if<canvas::Text>(&item);
        return text != nullptr && text->width > units::Millimetres(60.0);
    };
    auto without = page;
    auto& items = without.pages.front().items;
    items.erase(std::find_if(items.begin(), items.end(), is_sentence));
    expect_told_apart(page, without, "missing-line");
    auto moved = page;
    for (canvas::Item& item : moved.pages.front().items) {
        if (auto* const line = std::get_if<canvas::Line>(&item)) {
            line->from.y = line->from.y + units::Millimetres(1.5);
            line->to.y = line->to.y + units::Millimetres(1.5);
        }
    }
    expect_told_apart(page, moved, "moved-lines");
}

}  // namespace
}  // namespace lowledger::pages
