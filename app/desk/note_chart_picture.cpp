#include "app/desk/note_chart.h"
#include "reports/pages/chart_systems.h"
#include "reports/words/chart_words.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using units::Millimetres;
using words::Sentence;

constexpr Millimetres top{1.0};
constexpr Millimetres system_gap{4.0};
/// Narrower, as windows are while they are put together, nothing is drawn.
constexpr Millimetres least_width{60.0};
constexpr std::size_t most_alternates = 2;
constexpr canvas::Stroke frame{Millimetres(0.4), canvas::Tone::accent};

words::Speech speech_of(const NoteChart& chart, const words::Words& words) {
    return {words, chart.kind(), chart.style()};
}

pages::ChartSystems systems_of(const NoteChart& chart, const PictureTools& tools, Millimetres width) {
    const auto inputs = chart.printed(canvas::Paper::a4);
    const auto columns =
        pages::chart_columns(inputs, speech_of(chart, tools.words), chart.notes(), most_alternates);
    return pages::chart_systems(columns, chart.style().reader.clef, tools.engraver, width);
}

std::vector<canvas::PathStep> rectangle(const canvas::Box& box) {
    return {canvas::MoveTo{{box.left, box.top}}, canvas::LineTo{{box.right(), box.top}},
            canvas::LineTo{{box.right(), box.bottom()}}, canvas::LineTo{{box.left, box.bottom()}},
            canvas::Close{}};
}

/// Calls `use` with the index of every note and the box of its column.
template <class Use>
void each_column(const pages::ChartSystems& systems, const Use& use) {
    Millimetres y = top;
    std::size_t note = 0;
    for (const auto& system : systems.systems) {
        for (std::size_t i = 0; i < system.columns.size(); ++i)
            use(note++, canvas::Box{systems.columns_left + static_cast<double>(i) * systems.column_width, y,
                                    systems.column_width, system.height});
        y += system.height + system_gap;
    }
}

}  // namespace

std::string NoteChart::why(const words::Words& words) const {
    return words::usual_sentence(speech_of(*this, words), looked_at());
}

std::string NoteChart::about(const words::Words& words) const {
    const std::string written = words::written_sentence(speech_of(*this, words));
    if (!horn_) return written + " " + words.say(Sentence::chart_leans_expected);
    return written + " " +
           words.say_counted(Sentence::chart_leans_own_one, Sentence::chart_leans_own_many,
                             horn_->profile.takes_used, {{"student", horn_->student}});
}

Picture NoteChart::picture(const PictureTools& tools, Millimetres width) const {
    Picture picture;
    picture.page.size.width = width;
    if (notes_.empty() || width < least_width) return picture;
    const auto systems = systems_of(*this, tools, width);
    each_column(systems, [&](std::size_t at, const canvas::Box& box) {
        if (notes_[at].note != note_) return;
        picture.page.items.emplace_back(canvas::Shape{rectangle(box), canvas::Tone::pale, "column"});
        picture.page.items.emplace_back(canvas::Outline{rectangle(box), frame});
    });
    Millimetres y = top;
    for (const auto& system : systems.systems) {
        pages::draw_system({picture.page, tools.engraver.faces(), tools.words}, systems, system,
                           {Millimetres(0.0), y});
        y += system.height + system_gap;
    }
    picture.page.size.height = y;
    for (const auto& note : notes_) {
        picture.content += tools.words.say(Sentence::chart_drawing_row,
                                           {{"note", name(note.note)},
                                            {"way", words::fingering_label(kind_, note.usual.fingering)},
                                            {"lean", words::cents_text(lean(note.note, note.usual))}});
        picture.content += "\n";
    }
    return picture;
}

std::optional<units::Pitch> NoteChart::note_at(const PictureTools& tools, Millimetres width,
                                               canvas::Point point) const {
    std::optional<units::Pitch> found;
    if (notes_.empty() || width < least_width) return found;
    each_column(systems_of(*this, tools, width), [&](std::size_t at, const canvas::Box& box) {
        if (box.left <= point.x && point.x < box.right() && box.top <= point.y && point.y < box.bottom())
            found = notes_[at].note;
    });
    return found;
}

}  // namespace lowledger::desk
