#include <CLI/CLI.hpp>
#include <algorithm>
#include <fmt/format.h>
#include <memory>
#include <ostream>
#include <string>
#include <vector>

#include "app/batch/book_pages.h"
#include "app/batch/choose.h"
#include "app/batch/print_request.h"
#include "app/batch/verbs.h"
#include "model/units/refusal.h"
#include "reports/pages/chart_page.h"
#include "reports/pages/pass_sheet.h"
#include "reports/pages/settings_table.h"
#include "reports/pages/strips_page.h"
#include "reports/pages/tuning_form.h"

namespace lowledger::batch {

namespace {

struct Asked {
    std::string what;
    std::vector<std::string> notes;
    PrintRequest request;
    BookAsked book;
};

/// What the pages are made from.
struct Printing {
    const store::StudioFile& file;
    const Asked& asked;
    studio::StudioFacts facts;
    studio::Date day;
    std::vector<PlayerAsked> players;
    words::Words words;
    const canvas::Faces& faces;

    [[nodiscard]] pages::PageStyle style() const {
        return {pages::paper_of(facts), asked.request.large_print};
    }
    [[nodiscard]] pages::HandoutInputs inputs(const PlayerAsked& player) const {
        return inputs_of(file, facts, player, day, asked.request.large_print);
    }
    [[nodiscard]] std::vector<pages::Player> all_players() const {
        std::vector<pages::Player> all;
        for (const PlayerAsked& player : players)
            all.push_back(
                {player.student, player.horn, tuning_inputs(file, player.student, player.horn, day).kind});
        return all;
    }
};

using Documents = std::vector<pages::NamedDocument>;

Documents strips(const Printing& printing) {
    Documents all;
    for (const PlayerAsked& player : printing.players)
        all.push_back(
            {name_of(player), pages::strips_page(printing.inputs(player), printing.words, printing.faces)});
    return all;
}

Documents charts(const Printing& printing) {
    Documents all;
    for (const PlayerAsked& player : printing.players) {
        const auto inputs = printing.inputs(player);
        const pages::ChartInputs chart{
            .kind = inputs.kind,
            .style = note_style(inputs),
            .horn = pages::ChartOfHorn{player.horn.mark, player.student.name, inputs.answer.profile},
            .paper = inputs.paper,
            .large_print = inputs.large_print};
        all.push_back({name_of(player), pages::chart_page(chart, printing.words, printing.faces)});
    }
    return all;
}

Documents forms(const Printing& printing) {
    const auto players = printing.all_players();
    return {
        {"Tuning sheets to fill in", pages::tuning_forms(players, printing.facts, printing.day,
                                                         printing.style(), printing.words, printing.faces)}};
}

Documents section_pass(const Printing& printing) {
    std::vector<units::Pitch> notes;
    for (const std::string& note : printing.asked.notes) {
        const auto pitch = units::parse_pitch(note);
        if (!pitch)
            throw units::Refusal(
                fmt::format("--notes {}: that is no note. Write sounding ones, as Bb2 F2 D3.", note));
        notes.push_back(*pitch);
    }
    if (notes.empty() || notes.size() > 5)
        throw units::Refusal("--notes: a section pass has from one to five notes.");
    const auto players = printing.all_players();
    return {{"Section pass", pages::pass_sheet(players, notes, printing.facts, printing.day, printing.style(),
                                               printing.words, printing.faces)}};
}

Documents settings(const Printing& printing) {
    std::vector<pages::HandoutInputs> rows;
    for (const PlayerAsked& player : printing.players)
        rows.push_back(printing.inputs(player));
    return {{"Slide settings", pages::settings_table(rows, printing.facts, printing.day, printing.style(),
                                                     printing.words, printing.faces)}};
}

struct Kind {
    const char* word;
    const char* title;
    Documents (*make)(const Printing&);
};
constexpr Kind page_kinds[] = {{"strips", "Slide strips", strips},
                               {"charts", "Charts", charts},
                               {"forms", "Tuning sheets to fill in", forms},
                               {"pass", "Section pass", section_pass},
                               {"settings", "Slide settings", settings}};

/// A page of the studio book; false where it is none of these.
bool print_book_page(const Asked& asked, const Surroundings& surroundings) {
    const auto& all = book_pages();
    const auto page =
        std::ranges::find_if(all, [&](const BookPage& each) { return asked.what == each.word; });
    if (page == all.end()) return false;
    const studio::Date day = day_of(asked.request, surroundings.today);
    require_place(asked.request);
    const canvas::Faces faces;
    const words::Words words;
    const auto file = store::StudioFile::open(asked.request.studio, store::Access::read_only);
    const studio::StudioFacts facts = facts_of(file, asked.request);
    const paper::Gathering from{file, facts, day, {pages::paper_of(facts), asked.request.large_print}};
    const Documents documents = page->make({asked.request, asked.book, from, words, faces});
    write_documents(asked.request, documents, page->title, faces, surroundings.errors);
    surroundings.out << fmt::format("{}, {} in all: {}.\n", page->title, documents.size(),
                                    asked.request.into);
    return true;
}

void print_pages(const Asked& asked, const Surroundings& surroundings) {
    if (print_book_page(asked, surroundings)) return;
    const auto* kind = std::begin(page_kinds);
    while (asked.what != kind->word)
        ++kind;
    const studio::Date day = day_of(asked.request, surroundings.today);
    require_place(asked.request);
    const canvas::Faces faces;
    const auto file = store::StudioFile::open(asked.request.studio, store::Access::read_only);
    const Printing printing{file,
                            asked,
                            facts_of(file, asked.request),
                            day,
                            players_of(file, asked.request, day, surroundings.errors),
                            words::Words(),
                            faces};
    const Documents documents = kind->make(printing);
    write_documents(asked.request, documents, kind->title, faces, surroundings.errors);
    surroundings.out << fmt::format("{}, {} in all: {}.\n", kind->title, printing.players.size(),
                                    asked.request.into);
}

}  // namespace

void add_pages_verb(CLI::App& program, Surroundings& surroundings) {
    auto asked = std::make_shared<Asked>();
    asked->notes = {"Bb2", "F2", "D3"};
    CLI::App* verb = program.add_subcommand(
        "pages", "Print another page for all of a studio or those named. Changes no studio.");
    std::vector<std::string> words;
    for (const Kind& kind : page_kinds)
        words.emplace_back(kind.word);
    std::string about =
        "strips (slide strips at true size), charts, forms (tuning sheets to fill in), pass (section pass), "
        "settings (everybody's slides in a table)";
    for (const BookPage& page : book_pages()) {
        words.emplace_back(page.word);
        about += fmt::format(", {}", page.about);
    }
    verb->add_option("WHAT", asked->what, about)->required()->check(CLI::IsMember(words));
    add_print_options(*verb, asked->request);
    add_book_options(*verb, asked->book);
    verb->add_option("--notes", asked->notes, "Of a section pass: one to five sounding notes; Bb2 F2 D3")
        ->type_name("NOTE...");
    verb->callback([asked, &surroundings] { print_pages(*asked, surroundings); });
}

}  // namespace lowledger::batch
