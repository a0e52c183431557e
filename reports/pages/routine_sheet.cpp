#include "reports/pages/routine_sheet.h"

#include <algorithm>
#include <functional>

#include "model/studio/assigned.h"
#include "model/studio/note_style.h"
#include "model/units/refusal.h"
#include "reports/canvas/text_block.h"
#include "reports/engraving/music_line.h"
#include "reports/pages/routine_music.h"
#include "reports/pages/type.h"
#include "reports/words/names.h"
#include "reports/words/routine_words.h"
#include "reports/words/tuning_words.h"

namespace lowledger::pages {
namespace {

using canvas::Box;
using canvas::Point;
using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr auto staff_space = 1.4_mm;
constexpr auto box_side = 6.5_mm;
constexpr auto box_gap = 1.8_mm;
constexpr auto boxes_width = 7.0 * box_side + 6.0 * box_gap;
constexpr auto column_gap = 6_mm;
constexpr auto routine_gap = 5_mm;
constexpr auto rule_gap = 2_mm;
constexpr auto step_indent = 6_mm;
constexpr canvas::Stroke box_stroke{0.3_mm};

/// What is kept together: a line of text, a staff, the boxes.
struct Piece {
    Millimetres height;
    std::function<void(canvas::Page&, Point)> draw;
};

class RoutineSheet {
  public:
    RoutineSheet(const RoutineSheetInputs& inputs, const words::Words& words, const canvas::Faces& faces)
        : inputs_(inputs), words_(words), faces_(faces), engraver_(faces, staff_space) {
        document_.title = words.say(Sentence::routine_sheet_title,
                                    {{"student", inputs.student.name}, {"date", date(inputs.first)}});
        document_.author = inputs.facts.teacher;
        document_.bookmarks = {{inputs.student.name, 0}};
    }

    canvas::Document made() && {
        begin_page();
        y_ = draw_head();
        if (inputs_.routines.empty())
            put({text_piece(words_.say(Sentence::routine_sheet_none), type::lead, 0_mm, live_.width)});
        for (const auto& routine : inputs_.routines) {
            put(pieces_of(routine));
            y_ += routine_gap;
        }
        for (std::size_t i = 0; i < document_.pages.size(); ++i)
            draw_foot(i);
        return std::move(document_);
    }

  private:
    [[nodiscard]] std::string date(studio::Date on) const { return words::date_text(words_, on); }

    void begin_page() {
        auto& page = document_.pages.emplace_back();
        page.size = layout_size(inputs_.style);
        live_ = canvas::live_area(page.size);
        y_ = live_.top;
        if (document_.pages.size() == 1) {
            bottom_ = live_.bottom() - foot_height();
            return;
        }
        y_ = canvas::draw_block(page, faces_, document_.title, type::small_strong, {live_.left, y_},
                                live_.width) +
             rule_gap;
    }

    Millimetres draw_head() {
        auto& page = document_.pages.back();
        const Millimetres name_width = 0.62 * live_.width;
        Millimetres left = canvas::draw_block(page, faces_, inputs_.student.name, type::title,
                                              {live_.left, live_.top}, name_width);
        left = canvas::draw_block(page, faces_, words_.say(Sentence::routine_sheet_heading), type::lead,
                                  {live_.left, left}, name_width);
        const Millimetres x = live_.left + name_width + column_gap;
        const Millimetres width = live_.right() - x;
        Millimetres right = live_.top + 1.2_mm;
        const std::string week = words_.say(Sentence::routine_sheet_week, {{"date", date(inputs_.first)}});
        for (const auto& [text, style] : {std::pair(week, type::strong),
                                          {inputs_.facts.teacher, type::body},
                                          {inputs_.facts.school, type::body}})
            right = canvas::draw_block(page, faces_, text, style, {x, right}, width, canvas::Align::right);
        Millimetres y = std::max(left, right) + 1.5_mm;
        page.items.emplace_back(canvas::Line{{live_.left, y}, {live_.right(), y}, {0.35_mm}});
        if (inputs_.routines.empty()) return y + routine_gap;
        return canvas::draw_block(page, faces_, words_.say(Sentence::routine_sheet_ticks), type::body,
                                  {live_.left, y + rule_gap}, live_.width) +
               0.6 * routine_gap;
    }

    [[nodiscard]] std::vector<std::string> cautions() const {
        std::vector<std::string> all{words_.say(Sentence::caution_rest), words_.say(Sentence::caution_drone)};
        if (inputs_.kind)
            for (const std::string& caution : inputs_.kind->cautions)
                all.push_back(words::caution_of_kind(words_, caution));
        all.push_back(words_.say(Sentence::caution_mouthpiece));
        return all;
    }

    [[nodiscard]] Millimetres foot_height() const {
        Millimetres height = 2.0 * rule_gap + canvas::leading(type::small);
        for (const auto& caution : cautions())
            height += canvas::block_height(faces_, caution, type::small, live_.width);
        return height;
    }

    void draw_foot(std::size_t number) {
        auto& page = document_.pages[number];
        Millimetres y = bottom_ + rule_gap;
        page.items.emplace_back(
            canvas::Line{{live_.left, y}, {live_.right(), y}, {0.15_mm, canvas::Tone::faint}});
        y += rule_gap;
        for (const auto& caution : cautions())
            y = canvas::draw_block(page, faces_, caution, type::small, {live_.left, y}, live_.width);
        if (document_.pages.size() == 1) return;
        canvas::draw_block(
            page, faces_,
            words_.say(Sentence::routine_sheet_page, {{"page", std::to_string(number + 1)},
                                                      {"pages", std::to_string(document_.pages.size())}}),
            type::small, {live_.left, y}, live_.width, canvas::Align::right);
    }

    /// All on this page, or on the next where they fit there only, or as they fall.
    void put(const std::vector<Piece>& pieces) {
        Millimetres height;
        for (const auto& piece : pieces)
            height += piece.height;
        if (y_ + height > bottom_ && height <= bottom_ - live_.top - canvas::leading(type::small) - rule_gap)
            begin_page();
        for (const auto& piece : pieces) {
            if (y_ + piece.height > bottom_) begin_page();
            piece.draw(document_.pages.back(), {live_.left, y_});
            y_ += piece.height;
        }
    }

    [[nodiscard]] Piece text_piece(std::string text, const canvas::TextStyle& style, Millimetres indent,
                                   Millimetres width) const {
        const Millimetres height = canvas::block_height(faces_, text, style, width);
        return {height, [this, text = std::move(text), style, indent, width](canvas::Page& page, Point at) {
                    canvas::draw_block(page, faces_, text, style, {at.x + indent, at.y}, width);
                }};
    }

    void add_lines(std::vector<Piece>& pieces, const std::string& text, const canvas::TextStyle& style,
                   Millimetres indent, Millimetres width) const {
        for (auto& line : canvas::wrapped(faces_, text, style, width - indent))
            pieces.push_back(text_piece(std::move(line), style, indent, width - indent));
    }

    /// The number stands before the step's first line.
    void add_step(std::vector<Piece>& pieces, int number, const std::string& step, Millimetres width) const {
        const auto first = pieces.size();
        add_lines(pieces, step, type::body, step_indent, width);
        if (first == pieces.size()) return;
        const std::string text =
            words_.say(Sentence::routine_sheet_number, {{"number", std::to_string(number)}});
        const auto line = pieces[first].draw;
        pieces[first].draw = [this, text, line](canvas::Page& page, Point at) {
            canvas::draw_text(page, faces_, text, type::body, {at.x, at.y + canvas::ascent(type::body)});
            line(page, at);
        };
    }

    /// Title and aim beside the week's boxes.
    [[nodiscard]] Piece head_piece(const RoutineOnSheet& given) const {
        const Millimetres width = live_.width - boxes_width - column_gap;
        const Millimetres title = canvas::block_height(faces_, given.routine.title, type::heading, width);
        const Millimetres text =
            title + canvas::block_height(faces_, given.routine.aim, type::body, width) + 1_mm;
        const Millimetres boxes = canvas::leading(type::small) + box_side + 1_mm;
        return {
            std::max(text, boxes), [this, &given, width, title](canvas::Page& page, Point at) {
                canvas::draw_block(page, faces_, given.routine.title, type::heading, at, width);
                canvas::draw_block(page, faces_, given.routine.aim, type::body, {at.x, at.y + title}, width);
                draw_boxes(page, given.assignment, at);
            }};
    }

    void draw_boxes(canvas::Page& page, const studio::Assignment& assignment, Point at) const {
        Box box{live_.right() - boxes_width, at.y + canvas::leading(type::small), box_side, box_side};
        for (int i = 0; i < 7; ++i, box.left += box_side + box_gap) {
            const studio::Date day = inputs_.first + i;
            const Millimetres middle = box.left + 0.5 * box_side;
            const bool asked = studio::holds_on(assignment, day) && assignment.days.has(day.weekday());
            const std::string name = words::weekday_short(words_, day.weekday());
            canvas::draw_text(page, faces_, name, type::small, {middle, at.y + canvas::ascent(type::small)},
                              canvas::Align::centre);
            if (asked)
                draw_box(page, box);
            else
                page.items.emplace_back(canvas::Line{{middle - 1_mm, box.top + 0.5 * box_side},
                                                     {middle + 1_mm, box.top + 0.5 * box_side},
                                                     {0.3_mm, canvas::Tone::faint}});
        }
    }

    static void draw_box(canvas::Page& page, const Box& box) {
        page.items.emplace_back(
            canvas::Outline{{canvas::MoveTo{{box.left, box.top}}, canvas::LineTo{{box.right(), box.top}},
                             canvas::LineTo{{box.right(), box.bottom()}},
                             canvas::LineTo{{box.left, box.bottom()}}, canvas::Close{}},
                            box_stroke});
    }

    void add_music(std::vector<Piece>& pieces, const studio::Routine& routine) const {
        try {
            const auto line = inputs_.kind
                                  ? routine_music(routine, *inputs_.kind,
                                                  studio::reader_of(*inputs_.kind, inputs_.student.reader))
                                  : routine_music(routine);
            if (!line) return;
            const Millimetres gap = engraving::system_gap(engraver_);
            for (auto& system : engraving::engrave(engraver_, *line, live_.width)) {
                pieces.push_back({system.height() + gap, [system, gap](canvas::Page& page, Point at) {
                                      engraving::place(page, system, {at.x, at.y + 0.5 * gap - system.top});
                                  }});
            }
        } catch (const units::Refusal& refusal) {
            add_lines(pieces, words_.say(Sentence::routine_music_unreadable, {{"why", refusal.what()}}),
                      type::body, 0_mm, live_.width);
        }
    }

    [[nodiscard]] std::vector<Piece> pieces_of(const RoutineOnSheet& given) const {
        const Millimetres text_width = live_.width - boxes_width - column_gap;
        std::vector<Piece> pieces{head_piece(given)};
        int number = 0;
        for (const auto& step : given.routine.steps)
            add_step(pieces, ++number, step, text_width);
        const std::string amount = words::how_much(words_, given.routine, given.assignment.amount);
        if (!amount.empty()) add_lines(pieces, amount, type::strong, step_indent, text_width);
        if (!given.assignment.remarks.empty())
            add_lines(pieces, given.assignment.remarks, type::body, step_indent, text_width);
        add_music(pieces, given.routine);
        return pieces;
    }

    const RoutineSheetInputs& inputs_;
    const words::Words& words_;
    const canvas::Faces& faces_;
    engraving::Engraver engraver_;
    canvas::Document document_;
    Box live_;
    Millimetres y_;
    /// Where the foot begins.
    Millimetres bottom_;
};

}  // namespace

std::vector<RoutineOnSheet> routines_of_week(std::span<const studio::Assignment> assignments,
                                             std::span<const studio::Group> groups,
                                             std::span<const studio::Routine> routines,
                                             studio::StudentId student, studio::Date first) {
    std::vector<RoutineOnSheet> all;
    for (studio::Date day = first; day < first + 7; day = day + 1) {
        for (auto& given : studio::assigned_on(assignments, groups, student, day)) {
            const auto routine = std::ranges::find(routines, given.routine, &studio::Routine::id);
            const auto same = [&](const RoutineOnSheet& other) { return other.assignment.id == given.id; };
            if (routine != routines.end() && std::ranges::none_of(all, same))
                all.push_back({*routine, std::move(given)});
        }
    }
    return all;
}

canvas::Document routine_sheet(const RoutineSheetInputs& inputs, const words::Words& words,
                               const canvas::Faces& faces) {
    return printed(RoutineSheet(inputs, words, faces).made(), inputs.style);
}

}  // namespace lowledger::pages
