#include "reports/pages/chart_page.h"

#include <array>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "model/horns/hand_slide.h"
#include "model/units/inches.h"
#include "reports/canvas/table.h"
#include "reports/canvas/text_block.h"
#include "reports/pages/chart_systems.h"
#include "reports/pages/page_style.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using canvas::Box;
using units::Millimetres;
using namespace units::literals;
using words::Sentence;

/// How large a chart is set: its staff space, and how many other ways stand under a note.
struct Setting {
    Millimetres space;
    std::size_t most_alternates;
};
/// From roomy to the least that is read at arm's length; a chart takes the first that lets it stand on one
/// page, and the one for several pages if none does.
constexpr std::array<Setting, 6> settings = {
    {{1.8_mm, 3}, {1.65_mm, 3}, {1.5_mm, 3}, {1.35_mm, 3}, {1.35_mm, 2}, {1.35_mm, 1}}};
constexpr Setting setting_on_pages{1.65_mm, 3};
constexpr auto system_gap = 5_mm;
constexpr auto section_gap = 4_mm;
constexpr auto foot = 6_mm;

std::string horn_name(const ChartInputs& inputs, const words::Words& words) {
    std::string kind = words::kind_name(inputs.kind);
    if (!inputs.horn) return kind;
    return words.say(Sentence::handout_horn, {{"kind", kind}, {"mark", inputs.horn->mark}});
}

/// Puts one thing under the other, on a new page where the last has no room.
class Flow {
  public:
    Flow(canvas::Document& document, const ChartInputs& inputs, const words::Words& words,
         const canvas::Faces& faces)
        : document_(document),
          size_(layout_size({inputs.paper, inputs.large_print})),
          live_(canvas::live_area(size_)),
          running_head_(horn_name(inputs, words)),
          words_(words),
          faces_(faces) {
        document_.pages.push_back({size_, {}});
    }

    [[nodiscard]] Sheet sheet() const { return {document_.pages.back(), faces_, words_}; }
    [[nodiscard]] const Box& live() const { return live_; }
    [[nodiscard]] Millimetres bottom() const { return live_.bottom() - foot; }
    [[nodiscard]] Millimetres& y() { return y_; }

    void begin_page() {
        document_.pages.push_back({size_, {}});
        y_ = canvas::draw_block(document_.pages.back(), faces_, running_head_, type::strong,
                                {live_.left, live_.top}, live_.width) +
             section_gap;
    }

    /// A place for something so high, `gap` under the last unless it begins a page.
    canvas::Point place(Millimetres height, Millimetres gap) {
        if (y_ + gap + height > bottom()) {
            begin_page();
        } else {
            y_ += gap;
        }
        const canvas::Point at{live_.left, y_};
        y_ += height;
        return at;
    }

    void block(const std::string& text, const canvas::TextStyle& style, Millimetres gap,
               Millimetres kept_with = {}) {
        const Millimetres height = canvas::block_height(faces_, text, style, live_.width);
        const canvas::Point at = place(height + kept_with, gap);
        y_ -= kept_with;
        canvas::draw_block(document_.pages.back(), faces_, text, style, at, live_.width);
    }

  private:
    canvas::Document& document_;
    canvas::Size size_;
    Box live_;
    std::string running_head_;
    const words::Words& words_;
    const canvas::Faces& faces_;
    Millimetres y_ = live_.top;
};

std::string leans_sentence(const ChartInputs& inputs, const words::Words& words) {
    if (!inputs.horn) return words.say(Sentence::chart_leans_expected);
    return words.say_counted(Sentence::chart_leans_own_one, Sentence::chart_leans_own_many,
                             inputs.horn->profile.takes_used, {{"student", inputs.horn->student}});
}

void draw_head(Flow& flow, const ChartInputs& inputs, const words::Speech& speech) {
    const auto& words = speech.words;
    const Box& live = flow.live();
    flow.block(words.say(inputs.kind.hand_slide ? Sentence::chart_positions : Sentence::chart_fingerings),
               type::title, 0_mm);
    flow.block(horn_name(inputs, words), type::lead, 0_mm);
    const Millimetres rule = flow.y() + 1.5_mm;
    flow.sheet().page.items.emplace_back(canvas::Line{{live.left, rule}, {live.right(), rule}, {0.35_mm}});
    flow.block(words::written_sentence(speech) + " " + leans_sentence(inputs, words), type::body, 3.5_mm);
    flow.block(words.say(inputs.kind.hand_slide ? Sentence::chart_how_slide : Sentence::chart_how_valves),
               type::body, 1_mm);
}

void draw_reasons(Flow& flow, const words::Speech& speech, const std::vector<horns::ChartNote>& chart) {
    const auto sentences = words::usual_sentences(speech, chart);
    if (sentences.empty()) return;
    flow.block(speech.words.say(Sentence::chart_why_heading), type::heading, section_gap,
               2.0 * canvas::leading(type::body));
    flow.block(speech.words.say(Sentence::chart_why_how), type::body, 0.5_mm);
    for (const std::string& sentence : sentences)
        flow.block(sentence, type::body, 1_mm);
}

/// The sets of valves that can be down together, the open horn first.
std::vector<acoustics::ValveSet> valve_sets(const horns::HornKind& kind) {
    std::vector<acoustics::ValveSet> sets;
    for (int bits = 0; bits < 1 << kind.valves.size(); ++bits) {
        acoustics::ValveSet set;
        for (int valve = 1; valve <= static_cast<int>(kind.valves.size()); ++valve)
            if ((bits >> (valve - 1)) & 1) set = set.with(valve);
        if (kind.allows({set, 1})) sets.push_back(set);
    }
    return sets;
}

/// "F+G♭", without the position.
std::string valves_name(const horns::HornKind& kind, const acoustics::ValveSet& set) {
    return words::fingering_label(kind, {set, 0});
}

canvas::Table slide_table(const horns::HornKind& kind, const words::Words& words) {
    canvas::Table table;
    table.head = type::strong;
    table.body = type::body;
    table.gap = 3.5_mm;
    table.columns.push_back({words.say(Sentence::chart_slide_position), canvas::Align::left, 0.0});
    table.rows.resize(horns::last_position);
    for (int position = 1; position <= horns::last_position; ++position)
        table.rows[static_cast<std::size_t>(position - 1)].push_back(std::to_string(position));
    for (const acoustics::ValveSet& set : valve_sets(kind)) {
        const std::string valves = valves_name(kind, set);
        const auto head = [&](Sentence open, Sentence with) {
            return set.empty() ? words.say(open) : words.say(with, {{"valves", valves}});
        };
        table.columns.push_back(
            {head(Sentence::chart_slide_mm, Sentence::chart_slide_mm_with), canvas::Align::right, 0.0});
        table.columns.push_back({head(Sentence::chart_slide_inches, Sentence::chart_slide_inches_with),
                                 canvas::Align::right, 0.0});
        const auto places = horns::slide_places(kind, set);
        for (std::size_t i = 0; i < places.size(); ++i) {
            const bool reached = places[i].within_reach;
            table.rows[i].push_back(reached ? std::to_string(std::lround(places[i].out.value()))
                                            : words.say(Sentence::chart_slide_beyond));
            table.rows[i].push_back(reached ? units::inch_text(places[i].out) : std::string());
        }
    }
    return table;
}

/// From its head to under its last row, all rows of one line.
Millimetres table_height(const canvas::MeasuredTable& table, const canvas::Faces& faces) {
    canvas::Page scratch;
    return canvas::draw_table(scratch, faces, table, {}, 1000_mm).below;
}

void draw_slide(Flow& flow, const words::Speech& speech) {
    const horns::HornKind& kind = speech.kind;
    const auto& words = speech.words;
    const auto& faces = flow.sheet().faces;
    const auto table = canvas::measured(faces, slide_table(kind, words), flow.live().width);
    const Millimetres height = table_height(table, faces);
    const std::string how =
        words.say(Sentence::chart_slide_how, {{"length", words::millimetres_text(*kind.hand_slide)},
                                              {"inches", units::inch_text(*kind.hand_slide)}});
    flow.block(words.say(Sentence::chart_slide_heading), type::heading, section_gap,
               canvas::block_height(faces, how, type::body, flow.live().width) + height + 2_mm);
    flow.block(how, type::body, 0.5_mm);
    const canvas::Point at = flow.place(height, 1.5_mm);
    canvas::draw_table(flow.sheet().page, faces, table, at, at.y + height + 1_mm);
}

canvas::Document laid_out(const ChartInputs& inputs, const words::Words& words, const canvas::Faces& faces,
                          const Setting& setting) {
    const words::Speech speech{words, inputs.kind, inputs.style};
    const auto chart = horns::chart(inputs.kind);
    canvas::Document document;
    document.title = horn_name(inputs, words);
    Flow flow(document, inputs, words, faces);
    draw_head(flow, inputs, speech);
    const auto columns = chart_columns(inputs, speech, chart, setting.most_alternates);
    if (!columns.empty()) {
        const auto all = chart_systems(columns, inputs.style.reader.clef,
                                       engraving::Engraver(faces, setting.space), flow.live().width);
        for (const ChartSystem& system : all.systems) {
            const canvas::Point at = flow.place(system.height, system_gap);
            draw_system(flow.sheet(), all, system, at);
        }
    }
    const std::string false_tones = words::false_tones_sentence(speech, chart);
    if (!false_tones.empty()) flow.block(false_tones, type::body, section_gap);
    draw_reasons(flow, speech, chart);
    if (inputs.kind.hand_slide) draw_slide(flow, speech);
    for (const std::string& sentence : words::reach_sentences(speech))
        flow.block(sentence, type::body, 2_mm);
    return document;
}

void number_pages(canvas::Document& document, const words::Words& words, const canvas::Faces& faces) {
    if (document.pages.size() < 2) return;
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        canvas::Page& page = document.pages[i];
        const Box live = canvas::live_area(page.size);
        canvas::draw_text(page, faces,
                          words.say(Sentence::page_number, {{"number", std::to_string(i + 1)},
                                                            {"of", std::to_string(document.pages.size())}}),
                          type::small, {live.right(), live.bottom() - 1_mm}, canvas::Align::right);
    }
}

}  // namespace

canvas::Document chart_page(const ChartInputs& inputs, const words::Words& words,
                            const canvas::Faces& faces) {
    canvas::Document document;
    for (const Setting& setting : settings) {
        document = laid_out(inputs, words, faces, setting);
        if (document.pages.size() == 1) break;
    }
    if (document.pages.size() > 1) document = laid_out(inputs, words, faces, setting_on_pages);
    document.bookmarks = {{document.title, 0}};
    number_pages(document, words, faces);
    return printed(std::move(document), {inputs.paper, inputs.large_print});
}

}  // namespace lowledger::pages
