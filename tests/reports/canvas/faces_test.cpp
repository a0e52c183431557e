#include "reports/canvas/faces.h"

#include <fstream>
#include <gmock/gmock.h>
#include <hpdf.h>

#include "reports/canvas/ink.h"
#include "reports/canvas/text_block.h"
#include "reports/canvas/undrawable.h"
#include "tests/reports/canvas/outside.h"

namespace lowledger::canvas {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using units::Millimetres;

/// A fontconfig file that knows the fonts linked into its folder and no others.
class FontFolder {
  public:
    void add(const std::string& name) const {
        const Faces faces;
        for (const FaceFile& file : faces.files()) {
            const std::filesystem::path path(file.path);
            for (const auto& entry : std::filesystem::directory_iterator(path.parent_path()))
                if (entry.path().filename() == name && !std::filesystem::exists(folder_ / name))
                    std::filesystem::create_symlink(entry.path(), folder_ / name);
        }
    }
    [[nodiscard]] std::filesystem::path configuration() const {
        std::ofstream(folder_ / "fonts.conf")
            << "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig><dir>"
            << folder_.path().string() << "</dir><cachedir>" << (folder_ / "cache").string()
            << "</cachedir></fontconfig>";
        return folder_ / "fonts.conf";
    }

  private:
    test::TemporaryFolder folder_;
};

std::string refusal_without(const std::string& missing) {
    FontFolder fonts;
    for (const char* name : {"NotoSans-Regular.ttf", "NotoSans-Bold.ttf", "DejaVuSans.ttf",
                             "DejaVuSans-Bold.ttf", "NotoMusic-Regular.ttf"})
        if (name != missing) fonts.add(name);
    try {
        const Faces faces(fonts.configuration());
    } catch (const MissingFace& refusal) {
        return refusal.what();
    }
    return "nothing missing";
}

TEST(MissingFace, NamesTheFaceAndItsPackage) {
    EXPECT_EQ(refusal_without(""), "nothing missing");
    EXPECT_THAT(refusal_without("NotoSans-Regular.ttf"),
                AllOf(HasSubstr("Noto Sans "), HasSubstr("fonts-noto-core")));
    EXPECT_THAT(refusal_without("NotoSans-Bold.ttf"),
                AllOf(HasSubstr("Noto Sans Bold"), HasSubstr("fonts-noto-core")));
    EXPECT_THAT(refusal_without("DejaVuSans.ttf"),
                AllOf(HasSubstr("DejaVu Sans "), HasSubstr("fonts-dejavu-core")));
    EXPECT_THAT(refusal_without("NotoMusic-Regular.ttf"),
                AllOf(HasSubstr("Noto Music"), HasSubstr("fonts-noto-core")));
}

TEST(Faces, WithoutFurtherFontsNameWhatTheyLack) {
    FontFolder fonts;
    for (const char* name : {"NotoSans-Regular.ttf", "NotoSans-Bold.ttf", "DejaVuSans.ttf",
                             "DejaVuSans-Bold.ttf", "NotoMusic-Regular.ttf"})
        fonts.add(name);
    const Faces faces(fonts.configuration());
    EXPECT_THAT(faces.undrawable("Anna \u12A0\u1295\u12A0 \u12A0"), ElementsAre("\u12A0", "\u1295"));
}

TEST(Faces, RefuseAFontListThatIsNotThere) {
    EXPECT_THROW(Faces("/nowhere/fonts.conf"), units::Refusal);
}

class FacesTest : public testing::Test {
  protected:
    Faces faces;
    TextStyle regular{units::Points(10), Weight::regular, Tone::ink};
    TextStyle bold{units::Points(10), Weight::bold, Tone::ink};

    [[nodiscard]] std::vector<std::string> names(std::string_view text, const TextStyle& style) const {
        std::vector<std::string> all;
        for (const auto& run : faces.runs(text, style))
            all.push_back(faces.files()[run.face].name + ":" + run.text);
        return all;
    }
};

TEST_F(FacesTest, CutTextWhereTheFaceLacksASign) {
    EXPECT_THAT(names("B\u266D tuba", regular),
                ElementsAre("NotoSans-Regular:B", "DejaVuSans:\u266D", "NotoSans-Regular: tuba"));
    EXPECT_THAT(names("F\u266F", bold), ElementsAre("NotoSans-Bold:F", "DejaVuSans-Bold:\u266F"));
    EXPECT_THAT(names("\u017B\u03A9\u0416", regular), ElementsAre("NotoSans-Regular:\u017B\u03A9\u0416"));
    EXPECT_THAT(names("", regular), IsEmpty());
}

TEST_F(FacesTest, DrawEverySignThatPagesUse) {
    EXPECT_THAT(faces.undrawable(
                    "\u266D\u266E\u266F\u2713\u2605\u2190\u2191\u2192\u2193\u25CF\u2610\u2212\u2026\u25A1"),
                IsEmpty());
}

TEST_F(FacesTest, UseTheSystemsFontsForScriptsThatNeedNoShaping) {
    // Georgian and Ethiopic come with fonts-noto-core.
    EXPECT_THAT(faces.undrawable("\u10D0\u10DC\u10D0 \u12A0\u1295"), IsEmpty());
    const auto first = faces.runs("\u12A0", regular);
    ASSERT_EQ(first.size(), 1U);
    EXPECT_GT(first[0].width, Millimetres(1));
    EXPECT_GE(first[0].face, 4U);
    EXPECT_THAT(faces.files()[first[0].face].name, Not(HasSubstr("Bold")));
}

TEST_F(FacesTest, ShowAndNameWhatCannotBeDrawn) {
    EXPECT_THAT(faces.undrawable("Tuba \U0001F3BA \u0633\u0644\u0633 \U0001D122"),
                ElementsAre("\U0001F3BA", "\u0633", "\u0644", "\U0001D122"));
    EXPECT_THAT(names("\U0001F3BA", regular), ElementsAre("DejaVuSans:\u25A1"));
    EXPECT_THAT(names("\u0633", bold), ElementsAre("DejaVuSans-Bold:\u25A1"));
    EXPECT_EQ(faces.width("\U0001F3BA", regular), faces.width("\u25A1", regular));
}

TEST_F(FacesTest, NameTheTextsOfADocumentThatCannotBeDrawn) {
    Document document;
    for (const auto* const text :
         {"Tuba", "Ida \U0001F3BA \u0633 \U0001F3BA", "Ida \U0001F3BA \u0633 \U0001F3BA"}) {
        document.pages.push_back({{Millimetres(100), Millimetres(100)}, {}});
        draw_text(document.pages.back(), faces, text, regular, {Millimetres(5), Millimetres(5)}, Align::left);
    }
    EXPECT_THAT(undrawable(document, faces),
                ElementsAre(UndrawableText{"Ida \U0001F3BA \u0633 \U0001F3BA", {"\U0001F3BA", "\u0633"}}));
}

TEST_F(FacesTest, KeepAMarkInTheFaceOfItsLetter) {
    EXPECT_EQ(faces.runs("\u1EB9\u0301", regular).size(), 1U);
}

TEST_F(FacesTest, MeasureARunAsTheSumOfItsParts) {
    const std::string text = "Fis\u266F \u017C\u00F3\u0142\u0107";
    Millimetres sum;
    for (const auto& run : faces.runs(text, bold))
        sum += run.width;
    EXPECT_NEAR(sum.value(), faces.width(text, bold).value(), 1e-12);
    EXPECT_NEAR(faces.width(text, {units::Points(20), Weight::bold, Tone::ink}).value(), 2 * sum.value(),
                1e-12);
}

/// libharu's own measure of a text in one font, in points at 10 points.
double haru_width(const FaceFile& file, const std::string& text) {
    const std::unique_ptr<_HPDF_Doc_Rec, void (*)(HPDF_Doc)> document(HPDF_New(nullptr, nullptr), &HPDF_Free);
    HPDF_UseUTFEncodings(document.get());
    HPDF_Font font = HPDF_GetFont(
        document.get(), HPDF_LoadTTFontFromFile(document.get(), file.path.c_str(), HPDF_TRUE), "UTF-8");
    HPDF_Page page = HPDF_AddPage(document.get());
    HPDF_Page_SetFontAndSize(page, font, 10);
    return static_cast<double>(HPDF_Page_TextWidth(page, text.c_str()));
}

TEST_F(FacesTest, MeasureAsThePdfLibraryDoes) {
    const std::vector<std::string> texts{
        "The quick brown fox jumps over the lazy dog 0123456789 .,;:!?()-/'",
        "Za\u017C\u00F3\u0142\u0107 g\u0119\u015Bl\u0105 ja\u017A\u0144",
        "\u0150\u0170\u0158\u010C\u0122\u1E9E\u1EA4",
        "\u0391\u03B2\u03B3\u03B4 \u0388\u03BB\u03BB\u03B7\u03BD\u03B5\u03C2",
        "\u0416\u0449\u044B\u042E \u0454\u0457\u0491 \u0411\u0430\u0441",
        "\u266D\u266E\u266F \u2190\u2192 \u2713 \u2610"};
    for (const TextStyle& style : {regular, bold})
        for (const std::string& text : texts) {
            double sum = 0;
            for (const auto& run : faces.runs(text, style))
                sum += haru_width(faces.files()[run.face], run.text);
            EXPECT_NEAR(units::in_points(faces.width(text, style)).value(), sum, 1e-4) << text;
        }
}

TEST_F(FacesTest, OutlinesStandOnTheirBaseline) {
    const Box box = extent(faces.outlines("H", {units::Points(72), Weight::regular, Tone::ink},
                                          {Millimetres(10), Millimetres(50)}));
    // Noto Sans: H is 714 of 1000 high and its ink starts at 97 (glyf table).
    EXPECT_NEAR(box.bottom().value(), 50.0, 1e-9);
    EXPECT_NEAR(box.height.value(), 25.4 * 0.714, 1e-9);
    EXPECT_NEAR(box.left.value(), 10.0 + 25.4 * 0.097, 1e-9);
}

TEST_F(FacesTest, OutlinesOfASecondLetterStartAfterTheFirst) {
    const Point at{Millimetres(0), Millimetres(0)};
    const Box alone = extent(faces.outlines("l", regular, at));
    const Box both = extent(faces.outlines("ll", regular, at));
    EXPECT_NEAR((both.right() - alone.right()).value(), faces.width("l", regular).value(), 1e-9);
}

TEST_F(FacesTest, GiveMusicGlyphsInFontUnits) {
    // As measured in Noto Music: heads are centred 134 units up and 50 to 347 across.
    const auto& whole = faces.music_glyph(U'\U0001D157', Faces::MusicFace::notation);
    EXPECT_EQ(whole.units_per_em, 1000.0);
    EXPECT_NEAR((whole.bottom + whole.top) / 2.0, 134.0, 2.0);
    EXPECT_NEAR(whole.left, 50.0, 2.0);
    EXPECT_EQ(whole.steps.front().kind, Faces::Glyph::Step::Kind::move);
    EXPECT_EQ(whole.steps.back().kind, Faces::Glyph::Step::Kind::close);

    const auto& flat = faces.music_glyph(U'\u266D', Faces::MusicFace::signs);
    EXPECT_EQ(flat.units_per_em, 2048.0);
    EXPECT_GT(flat.top - flat.bottom, 2.0 * (flat.right - flat.left));
    EXPECT_EQ(&flat, &faces.music_glyph(U'\u266D', Faces::MusicFace::signs));
}

TEST_F(FacesTest, RefuseAMusicGlyphThatIsNotThere) {
    EXPECT_THROW(static_cast<void>(faces.music_glyph(U'\U0001D127', Faces::MusicFace::notation)),
                 units::Refusal);
}

TEST_F(FacesTest, CurvesCloseOnTheirStart) {
    for (const char32_t glyph : {U'\U0001D122', U'\U0001D11E', U'\U0001D121', U'\U0001D158'}) {
        double start_x = 0;
        double start_y = 0;
        double x = 0;
        double y = 0;
        for (const auto& step : faces.music_glyph(glyph, Faces::MusicFace::notation).steps) {
            using Kind = Faces::Glyph::Step::Kind;
            if (step.kind == Kind::close) {
                EXPECT_EQ(x, start_x);
                EXPECT_EQ(y, start_y);
                continue;
            }
            const int last = step.kind == Kind::curve ? 2 : 0;
            x = step.x[last];
            y = step.y[last];
            if (step.kind == Kind::move) {
                start_x = x;
                start_y = y;
            }
        }
    }
}

TEST_F(FacesTest, InkIsThePageInOrder) {
    Page page{{Millimetres(100), Millimetres(100)}, {}};
    const Stroke dashed{Millimetres(0.3), Tone::faint, true};
    page.items.emplace_back(Line{{Millimetres(1), Millimetres(2)}, {Millimetres(3), Millimetres(2)}, dashed});
    draw_text(page, faces, "A", regular, {Millimetres(10), Millimetres(20)});
    page.items.emplace_back(Link{{}, "https://example.org/"});
    page.items.emplace_back(Shape{{MoveTo{}, LineTo{}, Close{}}, Tone::pale, "band"});
    const auto ink = inked(page, faces);
    ASSERT_EQ(ink.size(), 3U);
    EXPECT_EQ(ink[0].stroke, dashed);
    EXPECT_EQ(ink[1].steps, faces.outlines("A", regular, {Millimetres(10), Millimetres(20)}));
    EXPECT_EQ(ink[1].stroke, std::nullopt);
    EXPECT_EQ(ink[2].tone, Tone::pale);
}

}  // namespace
}  // namespace lowledger::canvas
