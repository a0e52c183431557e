#include "reports/pages/fact_rows.h"

#include <algorithm>

#include "reports/canvas/text_block.h"

namespace lowledger::pages {
namespace {

using units::Millimetres;
using namespace units::literals;

constexpr double most_for_names = 0.3;
constexpr auto column_gap = 4_mm;
constexpr auto row_gap = 1.4_mm;
/// Of a line to write on.
constexpr auto to_write_height = 5.5_mm;

}  // namespace

void put_facts(Flow& flow, const canvas::Faces& faces, const std::vector<Fact>& facts, bool to_write) {
    Millimetres names;
    for (const auto& fact : facts)
        names = std::max(names, faces.width(fact.name, type::strong));
    names = std::min(names, most_for_names * flow.live().width);
    const Millimetres width = flow.live().width - names - column_gap;
    for (const auto& fact : facts) {
        if (fact.value.empty() && !to_write) continue;
        // So long a value is a paragraph that nobody reads on a form.
        auto lines = canvas::wrapped(faces, fact.value, type::body, width);
        constexpr std::size_t most_lines = 12;
        if (lines.size() > most_lines) {
            lines.resize(most_lines);
            lines.back() = canvas::shortened(faces, lines.back() + " \u2026", type::body, width);
        }
        const auto count = static_cast<double>(std::max<std::size_t>(1, lines.size()));
        const Millimetres text_height = std::max(canvas::block_height(faces, fact.name, type::strong, names),
                                                 count * canvas::leading(type::body));
        const Millimetres height = lines.empty() ? std::max(text_height, to_write_height) : text_height;
        const canvas::Point at = flow.place(height, row_gap);
        auto& page = flow.sheet().page;
        canvas::draw_block(page, faces, fact.name, type::strong, {at.x, at.y + height - text_height}, names);
        const canvas::Point right{at.x + names + column_gap, at.y};
        if (lines.empty())
            page.items.emplace_back(canvas::Line{{right.x, at.y + height},
                                                 {flow.live().right(), at.y + height},
                                                 {0.2_mm, canvas::Tone::faint}});
        canvas::draw_lines(page, faces, lines, type::body, right, width);
    }
}

}  // namespace lowledger::pages
