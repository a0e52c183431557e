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

TEST(Montage, NotationIsLeftToLookAt) {
    const canvas::Faces faces;
    canvas::Document document;
    document.title = "Notation";
    document.pages.push_back({canvas::size_of(canvas::Paper::a4), {}});
    canvas::Page& page = document.pages.back();
    Millimetres y(20.0);
    for (const double space : {1.75, 1.5, 1.2}) {
        const Engraver engraver(faces, Millimetres(space));
        y = draw_music_line(page, engraver, exercise(), {Millimetres(15.0), y}, Millimetres(180.0)) +
            Millimetres(9.0);
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
            const Millimetres below = draw_music_line(page, engraver, line, {left, y}, Millimetres(85.0));
            if (fifths < 0) y = below + Millimetres(9.0);
        }
    }
    const Engraver engraver(faces, Millimetres(1.75));
    const NoteRow row = full_row();
    draw_note_row(page, engraver, row, {row.clef, {Millimetres(15.0), y}, Millimetres(180.0)},
                  Millimetres(15.0) + first_column(engraver, row), narrowest_column(engraver, row));
    const std::filesystem::path path = std::filesystem::path(LOWLEDGER_MONTAGE) / "engraving.pdf";
    std::filesystem::create_directories(path.parent_path());
    canvas::save_pdf(document, faces, path);
    EXPECT_GT(std::filesystem::file_size(path), 5000U);
}

}  // namespace
}  // namespace lowledger::engraving
