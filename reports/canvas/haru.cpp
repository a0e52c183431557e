#include "reports/canvas/haru.h"

#include <array>
#include <hpdf_doc.h>
#include <hpdf_objects.h>

#include "model/units/refusal.h"
#include "reports/canvas/page.h"

namespace lowledger::canvas {
namespace {

constexpr const char* utf8_name = "UTF-8";

}  // namespace

extern "C" {
static void record_haru_error(HPDF_STATUS code, HPDF_STATUS detail, void* user) noexcept {
    auto& error = *static_cast<HaruError*>(user);
    if (error.code == HPDF_OK) error = {code, detail};
}
}

HaruDocument::HaruDocument() : document_(HPDF_New(&record_haru_error, error_.get()), &HPDF_Free) {
    if (!document_) throw units::Refusal("The PDF could not be begun: there is not enough memory.");
    check(HPDF_UseUTFEncodings(document_.get()));
    check(HPDF_SetCurrentEncoder(document_.get(), utf8_name));
    check(HPDF_SetCompressionMode(document_.get(), HPDF_COMP_ALL));
}

void HaruDocument::check(HPDF_STATUS status) const {
    const HPDF_STATUS code = error_->code != HPDF_OK ? error_->code : status;
    if (code == HPDF_OK) return;
    throw units::Refusal("The PDF could not be made: the PDF library (libharu) stopped with error " +
                         std::to_string(code) + ", detail " + std::to_string(error_->detail) + ".");
}

void HaruDocument::describe(const std::string& title, const std::string& author,
                            const std::string& language) {
    check(HPDF_SetInfoAttr(document_.get(), HPDF_INFO_TITLE, title.c_str()));
    if (!author.empty()) check(HPDF_SetInfoAttr(document_.get(), HPDF_INFO_AUTHOR, author.c_str()));
    check(HPDF_SetInfoAttr(document_.get(), HPDF_INFO_CREATOR, "Lowledger"));
    // The library has no call for the language; its catalog is a dictionary like any other.
    check(HPDF_Dict_Add(document_->catalog, "Lang",
                        HPDF_String_New(document_->mmgr, language.c_str(), nullptr)));
}

HPDF_Page HaruDocument::add_page(float width, float height) {
    HPDF_Page page = HPDF_AddPage(document_.get());
    check();
    check(HPDF_Page_SetWidth(page, width));
    check(HPDF_Page_SetHeight(page, height));
    return page;
}

HPDF_Encoder HaruDocument::utf8() {
    HPDF_Encoder encoder = HPDF_GetEncoder(document_.get(), utf8_name);
    check();
    return encoder;
}

void HaruDocument::add_bookmark(const std::string& title, HPDF_Page page) {
    check(HPDF_SetPageMode(document_.get(), HPDF_PAGE_MODE_USE_OUTLINE));
    HPDF_Outline outline = HPDF_CreateOutline(document_.get(), nullptr, title.c_str(), utf8());
    check();
    HPDF_Destination destination = HPDF_Page_CreateDestination(page);
    check();
    check(HPDF_Destination_SetFit(destination));
    check(HPDF_Outline_SetDestination(outline, destination));
}

HPDF_Font HaruDocument::font(const std::string& path) {
    if (const auto found = fonts_.find(path); found != fonts_.end()) return found->second;
    const char* name = HPDF_LoadTTFontFromFile(document_.get(), path.c_str(), HPDF_TRUE);
    if (name == nullptr)
        throw units::Refusal("The PDF could not be made: the font file " + path + " could not be embedded.");
    check();
    HPDF_Font loaded = HPDF_GetFont(document_.get(), name, utf8_name);
    check();
    fonts_.emplace(path, loaded);
    return loaded;
}

std::string HaruDocument::bytes() {
    check(HPDF_SaveToStream(document_.get()));
    std::string all(HPDF_GetStreamSize(document_.get()), '\0');
    check(HPDF_ResetStream(document_.get()));
    std::size_t have = 0;
    while (have < all.size()) {
        auto room = static_cast<HPDF_UINT32>(all.size() - have);
        HPDF_ReadFromStream(document_.get(), reinterpret_cast<HPDF_BYTE*>(all.data() + have), &room);
        if (room == 0) throw units::Refusal("The PDF could not be made: the PDF library lost a part of it.");
        have += room;
    }
    return all;
}

HaruPen::HaruPen(HaruDocument& document, HPDF_Page page) : document_(document), page_(page) {
    document_.check(HPDF_Page_SetLineJoin(page_, HPDF_ROUND_JOIN));
}

void HaruPen::move_to(float x, float y) {
    document_.check(HPDF_Page_MoveTo(page_, x, y));
}

void HaruPen::line_to(float x, float y) {
    document_.check(HPDF_Page_LineTo(page_, x, y));
}

void HaruPen::curve_to(float x1, float y1, float x2, float y2, float x3, float y3) {
    document_.check(HPDF_Page_CurveTo(page_, x1, y1, x2, y2, x3, y3));
}

void HaruPen::close() {
    document_.check(HPDF_Page_ClosePath(page_));
}

void HaruPen::fill() {
    document_.check(HPDF_Page_Fill(page_));
}

void HaruPen::stroke() {
    document_.check(HPDF_Page_Stroke(page_));
}

void HaruPen::set_fill(float grey) {
    if (fill_grey_ == grey) return;
    document_.check(HPDF_Page_SetGrayFill(page_, grey));
    fill_grey_ = grey;
}

void HaruPen::set_stroke(float width, float grey, bool dashed) {
    if (stroke_grey_ != grey) document_.check(HPDF_Page_SetGrayStroke(page_, grey));
    if (stroke_width_ != width) document_.check(HPDF_Page_SetLineWidth(page_, width));
    if (dashed_ != dashed) {
        constexpr std::array<HPDF_UINT16, 2> pattern{static_cast<HPDF_UINT16>(dash.value()),
                                                     static_cast<HPDF_UINT16>(dash_gap.value())};
        document_.check(HPDF_Page_SetDash(page_, pattern.data(), dashed ? 2 : 0, 0));
    }
    stroke_grey_ = grey;
    stroke_width_ = width;
    dashed_ = dashed;
}

void HaruPen::text(const std::vector<Piece>& pieces, float y, float size, float grey) {
    set_fill(grey);
    document_.check(HPDF_Page_BeginText(page_));
    for (const Piece& piece : pieces) {
        document_.check(HPDF_Page_SetFontAndSize(page_, piece.font, size));
        document_.check(HPDF_Page_TextOut(page_, piece.x, y, piece.text.c_str()));
    }
    document_.check(HPDF_Page_EndText(page_));
}

void HaruPen::link(float left, float bottom, float right, float top, const std::string& address) {
    HPDF_Annotation link = HPDF_Page_CreateURILinkAnnot(page_, {left, bottom, right, top}, address.c_str());
    document_.check();
    document_.check(HPDF_LinkAnnot_SetBorderStyle(link, 0, 0, 0));
}

}  // namespace lowledger::canvas
