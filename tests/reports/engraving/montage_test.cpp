// Leaves a page for people to look at in the build folder: engraving.pdf.
#include <array>
#include <filesystem>
#include <gtest/gtest.h>

#include "reports/canvas/faces.h"
#include "reports/canvas/paper.h"
#include "reports/canvas/pdf.h"
#include "reports/engraving/music_line.h"
#include "reports/engraving/note_row.h"
#include "tests/reports/engraving/sample_music.h"

namespace lowledger::engraving {
namespace {

using units::Millimetres;

canvas::Page& new_page(canvas::Document& document) {
    document.pages.push_back({canvas::size_of(canvas::Paper::a4), {}});
    return document.pages.back();
}

void rows_and_keys(canvas::Page& page, const canvas::Faces& faces) {
    Millimetres y(15.0);
    for (const double space : {1.75, 1.5, 1.2}) {
        const Engraver engraver(faces, Millimetres(space));
        y = draw_music(page, engraver, exercise(), {Millimetres(15.0), y}, Millimetres(180.0)) +
            Millimetres(6.0);
    }
    for (const horns::Clef clef :
         {horns::Clef::bass, horns::Clef::treble, horns::Clef::tenor, horns::Clef::alto}) {
        const Engraver engraver(faces, Millimetres(1.5));
        for (const int fifths : {7, -7}) {
            const MusicLine line{
                clef,
                {fifths},
                {LineNote{{units::Letter::c, 0, 4}, Duration::whole, ""}, BarLine::double_line}};
            const Millimetres left(fifths > 0 ? 15.0 : 110.0);
            const Millimetres below = draw_music(page, engraver, line, {left, y}, Millimetres(85.0));
            if (fifths < 0) y = below + Millimetres(6.0);
        }
    }
    const Engraver engraver(faces, Millimetres(1.75));
    const NoteRow row = full_row();
    y += Millimetres(10.0);
    draw_note_row(page, engraver, row, {row.clef, {Millimetres(15.0), y}, Millimetres(180.0)},
                  Millimetres(15.0) + first_column(engraver, row), narrowest_column(engraver, row));
}

void routines(canvas::Page& page, const canvas::Faces& faces) {
    const Engraver engraver(faces, Millimetres(1.6));
    Millimetres y(15.0);
    for (const MusicLine& line : routine_exercises())
        y = draw_music(page, engraver, line, {Millimetres(15.0), y}, Millimetres(180.0)) + Millimetres(7.0);
}

void random_ones(canvas::Document& document, const canvas::Faces& faces) {
    const Engraver engraver(faces, Millimetres(1.5));
    constexpr Millimetres lowest{280.0};
    Millimetres y = lowest;
    for (unsigned seed = 1; seed <= 14; ++seed) {
        if (y > lowest - Millimetres(60.0)) {
            new_page(document);
            y = Millimetres(15.0);
        }
        y = draw_music(document.pages.back(), engraver, random_music(seed), {Millimetres(15.0), y},
                       Millimetres(180.0)) +
            Millimetres(8.0);
    }
}

TEST(Montage, NotationIsLeftToLookAt) {
    const canvas::Faces faces;
    canvas::Document document;
    document.title = "Notation";
    rows_and_keys(new_page(document), faces);
    routines(new_page(document), faces);
    random_ones(document, faces);
    const std::filesystem::path path = std::filesystem::path(LOWLEDGER_MONTAGE) / "engraving.pdf";
    std::filesystem::create_directories(path.parent_path());
    canvas::save_pdf(document, faces, path);
    EXPECT_GT(std::filesystem::file_size(path), 5000U);
}

}  // namespace
}  // namespace lowledger::engraving
