#include "reports/canvas/pdf.h"

#include <cmath>
#include <gmock/gmock.h>
#include <limits>
#include <thread>

#include "reports/canvas/ink.h"
#include "reports/canvas/paper.h"
#include "reports/canvas/text_block.h"
#include "tests/reports/canvas/outside.h"

namespace lowledger::canvas {
namespace {

using test::contents;
using test::run;
using test::TemporaryFolder;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;
using units::Millimetres;

constexpr const char* polish = "Za\u017C\u00F3\u0142\u0107 g\u0119\u015Bl\u0105 ja\u017A\u0144";
constexpr const char* greek =
    "\u0395\u03BB\u03BB\u03B7\u03BD\u03B9\u03BA\u03AE \u03C4\u03BF\u03CD\u03BC\u03C0\u03B1";
constexpr const char* cyrillic = "\u0411\u043E\u043B\u044C\u0448\u0430\u044F \u0442\u0443\u0431\u0430";
constexpr const char* long_name = "Wilhelmina Konstantynopolita\u0144czykowianeczka of the Long Meadow";

Point at(double x, double y) {
    return {Millimetres(x), Millimetres(y)};
}

/// A page with every kind of item and a text of every script that prints.
Document sample(const Faces& faces, Paper paper = Paper::a4) {
    Document document{"Handout \u017B\u00F3\u0142w", "\u0391. Teacher", "en-GB", {}, {}};
    for (int number = 1; number <= 2; ++number) {
        Page page{size_of(paper), {}};
        const TextStyle body;
        const TextStyle head{units::Points(18), Weight::bold, Tone::ink};
        draw_text(page, faces, "Pull the B\u266D slide", head, at(15, 25));
        double y = 35;
        for (const char* line : {polish, greek, cyrillic, long_name}) {
            draw_text(page, faces, line, body, at(15, y));
            draw_text(page, faces, line, {units::Points(10), Weight::bold, Tone::faint}, at(15, y + 5));
            y += 10;
        }
        page.items.emplace_back(Line{at(15, 80), at(80, 80), {Millimetres(0.15), Tone::ink}});
        page.items.emplace_back(Line{at(15, 84), at(80, 84), {Millimetres(0.3), Tone::faint, true}});
        page.items.emplace_back(
            Shape{{MoveTo{at(15, 90)}, LineTo{at(40, 90)}, LineTo{at(40, 95)}, LineTo{at(15, 95)}, Close{}},
                  Tone::pale,
                  "band"});
        page.items.emplace_back(Outline{{MoveTo{at(50, 95)}, CurveTo{at(55, 85), at(65, 85), at(70, 95)}},
                                        {Millimetres(0.5), Tone::accent}});
        page.items.emplace_back(Link{{Millimetres(15), Millimetres(100), Millimetres(50), Millimetres(6)},
                                     "mailto:studio@example.org?subject=h\u00F6rn"});
        document.pages.push_back(page);
        document.bookmarks.push_back(
            {"Page " + std::to_string(number) + " \u0416", document.pages.size() - 1});
    }
    return document;
}

class Pdf : public testing::Test {
  protected:
    void SetUp() override { save_pdf(sample(faces), faces, file); }
    [[nodiscard]] std::string quoted() const { return "'" + file.string() + "'"; }

    Faces faces;
    TemporaryFolder folder;
    std::filesystem::path file = folder / "sample.pdf";
};

TEST_F(Pdf, PassesQpdfsCheck) {
    const auto checked = run("qpdf --check " + quoted() + " 2>&1");
    EXPECT_EQ(checked.status, 0) << checked.text;
    EXPECT_THAT(checked.text, Not(HasSubstr("WARNING")));
}

TEST_F(Pdf, HasItsWordsInEveryScript) {
    const auto words = run("pdftotext " + quoted() + " - 2>/dev/null").text;
    for (const char* line : {polish, greek, cyrillic, long_name, "Pull the B\u266D slide"})
        EXPECT_THAT(words, HasSubstr(line));
}

TEST_F(Pdf, EmbedsEveryFontAsASubset) {
    std::istringstream fonts(run("pdffonts " + quoted() + " 2>/dev/null").text);
    std::string line;
    std::getline(fonts, line);
    EXPECT_THAT(line, AllOf(HasSubstr("emb"), HasSubstr("sub"), HasSubstr("uni")));
    std::getline(fonts, line);
    int count = 0;
    while (std::getline(fonts, line)) {
        EXPECT_THAT(line, testing::ContainsRegex("yes +yes +yes"));
        ++count;
    }
    EXPECT_EQ(count, 3);
}

TEST_F(Pdf, StatesTitleAuthorLanguageAndSize) {
    const auto about = run("pdfinfo " + quoted()).text;
    EXPECT_THAT(about, testing::ContainsRegex("Title: +Handout \u017B\u00F3\u0142w"));
    EXPECT_THAT(about, testing::ContainsRegex("Author: +\u0391. Teacher"));
    EXPECT_THAT(about, testing::ContainsRegex("Pages: +2"));
    EXPECT_THAT(about, HasSubstr("(A4)"));
    EXPECT_THAT(about, Not(HasSubstr("CreationDate")));
    save_pdf(sample(faces, Paper::letter), faces, folder / "letter.pdf");
    EXPECT_THAT(run("pdfinfo '" + (folder / "letter.pdf").string() + "'").text, HasSubstr("(letter)"));
    const auto plain = run("qpdf --qdf --object-streams=disable " + quoted() + " -").text;
    EXPECT_THAT(plain, HasSubstr("/Lang (en-GB)"));
}

TEST_F(Pdf, HasBookmarksAndLinks) {
    const auto objects = run("qpdf --json --json-key=outlines " + quoted()).text;
    EXPECT_THAT(objects, AllOf(HasSubstr("Page 1 \u0416"), HasSubstr("Page 2 \u0416")));
    EXPECT_THAT(run("qpdf --qdf " + quoted() + " -").text,
                HasSubstr("mailto:studio@example.org?subject=h%C3%B6rn"));
}

TEST_F(Pdf, IsTheSameBytesForTheSameDocument) {
    EXPECT_EQ(pdf_bytes(sample(faces), faces), contents(file));
    const Faces other;
    EXPECT_EQ(pdf_bytes(sample(other), other), contents(file));
}

TEST_F(Pdf, IsTheSameBytesFromEveryThread) {
    std::vector<std::string> made(4);
    {
        std::vector<std::jthread> threads;
        threads.reserve(made.size());
        for (std::string& bytes : made)
            threads.emplace_back([&bytes] {
                const Faces own;
                bytes = pdf_bytes(sample(own), own);
            });
    }
    for (const std::string& bytes : made)
        EXPECT_EQ(bytes, contents(file));
}

/// How dark each square millimetre of the first page is, by a painter of PDF from outside.
std::vector<double> darkness(const std::filesystem::path& pdf) {
    constexpr std::size_t square = 12;  // pixels at 300 to the inch
    run("pdftoppm -gray -r 300 -f 1 -l 1 -singlefile '" + pdf.string() + "' '" + pdf.string() +
        "' 2>/dev/null");
    std::ifstream in(pdf.string() + ".pgm", std::ios::binary);
    std::string magic;
    std::size_t width = 0;
    std::size_t height = 0;
    int white = 0;
    in >> magic >> width >> height >> white;
    in.get();
    const std::size_t columns = width / square + 1;
    std::vector<double> dark(columns * (height / square + 1));
    std::string row(width, '\0');
    for (std::size_t y = 0; in.read(row.data(), static_cast<std::streamsize>(width)); ++y)
        for (std::size_t x = 0; x < width; ++x)
            dark[y / square * columns + x / square] += white - static_cast<unsigned char>(row[x]);
    return dark;
}

TEST_F(Pdf, LooksAsItsInkDoes) {
    Document drawn = sample(faces);
    for (Page& page : drawn.pages) {
        const auto ink = inked(page, faces);
        page.items.clear();
        for (const Ink& each : ink) {
            if (each.stroke)
                page.items.emplace_back(Outline{each.steps, *each.stroke});
            else
                page.items.emplace_back(Shape{each.steps, each.tone, ""});
        }
    }
    save_pdf(drawn, faces, folder / "drawn.pdf");
    EXPECT_THAT(run("pdftotext '" + (folder / "drawn.pdf").string() + "' -").text, Not(HasSubstr("slide")));

    const auto text = darkness(file);
    const auto ink = darkness(folder / "drawn.pdf");
    ASSERT_EQ(text.size(), ink.size());
    double difference = 0;
    double dark = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        difference += std::abs(text[i] - ink[i]);
        dark += text[i];
    }
    ASSERT_GT(dark, 0.0);
    // That painter sets a font's glyphs on whole pixels, which alone makes 0.08; a shift of 0.17 mm makes
    // 0.22.
    EXPECT_LT(difference / dark, 0.12);
}

std::string refusal_of(const Document& document, const Faces& faces) {
    try {
        const auto bytes = pdf_bytes(document, faces);
        return "made " + std::to_string(bytes.size());
    } catch (const units::Refusal& refusal) {
        return refusal.what();
    }
}

TEST_F(Pdf, RefusesADocumentWithoutPages) {
    EXPECT_THAT(refusal_of({}, faces), HasSubstr("no page"));
}

TEST_F(Pdf, RefusesPlacesThatAreNone) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double infinite = std::numeric_limits<double>::infinity();
    for (const double bad : {nan, infinite, -infinite, 1e6}) {
        const std::vector<Item> items{
            Line{at(bad, 0), at(1, 1), {}},
            Line{at(0, 0), at(1, 1), {Millimetres(bad)}},
            Shape{{MoveTo{at(0, bad)}, LineTo{at(1, 1)}}, Tone::ink, ""},
            Outline{{MoveTo{at(0, 0)}, CurveTo{at(0, 0), at(bad, 0), at(1, 1)}}, {}},
            Text{at(bad, 10), "A", {}, Millimetres(1)},
            Text{at(10, 10), "A", {units::Points(bad)}, Millimetres(1)},
            Link{{Millimetres(bad), Millimetres(0), Millimetres(1), Millimetres(1)}, "https://example.org/"}};
        for (const Item& item : items) {
            const Document document{"", "", "en", {Page{size_of(Paper::a4), {item}}}, {}};
            EXPECT_THAT(refusal_of(document, faces), HasSubstr("PDF was not made")) << item.index();
        }
        const Document document{"", "", "en", {Page{{Millimetres(bad), Millimetres(10)}, {}}}, {}};
        EXPECT_THAT(refusal_of(document, faces), HasSubstr("PDF was not made"));
    }
}

TEST_F(Pdf, PassesOnTheLibrarysRefusalAndMakesTheNextAllTheSame) {
    const Document bad{
        "", "", "en", {Page{size_of(Paper::a4), {Text{at(10, 10), "A", {units::Points(700)}, {}}}}}, {}};
    EXPECT_THAT(refusal_of(bad, faces), HasSubstr("libharu"));
    EXPECT_EQ(pdf_bytes(sample(faces), faces), contents(file));
}

TEST_F(Pdf, RefusesABookmarkToNowhere) {
    Document document = sample(faces);
    document.bookmarks.push_back({"Lost", 2});
    EXPECT_THAT(refusal_of(document, faces), AllOf(HasSubstr("Lost"), HasSubstr("page 3 of 2")));
}

TEST_F(Pdf, ShowsABoxForWhatCannotBeDrawn) {
    Document document{"Emoji \U0001F3BA", "", "en", {Page{size_of(Paper::a4), {}}}, {}};
    draw_text(document.pages[0], faces, "Horn \U0001F3BA \u0633", {}, at(15, 20));
    save_pdf(document, faces, folder / "box.pdf");
    const std::string name = "'" + (folder / "box.pdf").string() + "'";
    EXPECT_THAT(run("pdftotext " + name + " - 2>/dev/null").text, StartsWith("Horn \u25A1 \u25A1"));
    EXPECT_THAT(run("pdfinfo " + name).text, HasSubstr("Emoji \u25A1"));
}

TEST_F(Pdf, PrintsADecomposedAccentOnItsLetter) {
    Document document{"", "", "en", {Page{size_of(Paper::a4), {}}}, {}};
    document.pages[0].items.emplace_back(Text{at(15, 20), "Z\u030Cofia", {}, {}});
    save_pdf(document, faces, folder / "accent.pdf");
    EXPECT_THAT(run("pdftotext '" + (folder / "accent.pdf").string() + "' - 2>/dev/null").text,
                StartsWith("\u017Dofia"));
}

TEST_F(Pdf, EmbedsAFontOfTheSystemForAnotherScript) {
    Document document{"", "", "en", {Page{size_of(Paper::a4), {}}}, {}};
    draw_text(document.pages[0], faces, "\u10DC\u10D8\u10DC\u10DD \u12A0\u1295", {}, at(15, 20));
    save_pdf(document, faces, folder / "georgian.pdf");
    const std::string name = "'" + (folder / "georgian.pdf").string() + "'";
    EXPECT_EQ(run("qpdf --check " + name).status, 0);
    EXPECT_THAT(run("pdftotext " + name + " - 2>/dev/null").text,
                StartsWith("\u10DC\u10D8\u10DC\u10DD \u12A0\u1295"));
}

TEST_F(Pdf, SavedToAFullDiskSaysSo) {
    EXPECT_THAT([&] { save_pdf(sample(faces), faces, "/dev/full"); },
                testing::ThrowsMessage<units::Refusal>(HasSubstr("disk is full")));
}

}  // namespace
}  // namespace lowledger::canvas
