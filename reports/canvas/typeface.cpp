#include "reports/canvas/typeface.h"

#include <algorithm>
#include <array>

#include FT_BBOX_H
#include FT_OUTLINE_H

namespace lowledger::canvas {
namespace {

using Step = Faces::Glyph::Step;

/// Collects an outline; quadratic curves become the cubic ones that draw the same line.
struct OutlineReader {
    std::vector<Step> steps;
    double x = 0;
    double y = 0;
    bool open = false;

    void end(double to_x, double to_y) {
        x = to_x;
        y = to_y;
    }
    void close() {
        if (open) steps.push_back({Step::Kind::close, {}, {}});
        open = false;
    }
    void cubic(double x1, double y1, double x2, double y2, double x3, double y3) {
        steps.push_back({Step::Kind::curve, {x1, x2, x3}, {y1, y2, y3}});
        end(x3, y3);
    }
};

OutlineReader& reader(void* user) {
    return *static_cast<OutlineReader*>(user);
}

double coordinate(FT_Pos value) {
    return static_cast<double>(value);
}

extern "C" {
static int read_move(const FT_Vector* to, void* user) {
    auto& out = reader(user);
    out.close();
    out.open = true;
    out.steps.push_back({Step::Kind::move, {coordinate(to->x)}, {coordinate(to->y)}});
    out.end(coordinate(to->x), coordinate(to->y));
    return 0;
}
static int read_line(const FT_Vector* to, void* user) {
    auto& out = reader(user);
    out.steps.push_back({Step::Kind::line, {coordinate(to->x)}, {coordinate(to->y)}});
    out.end(coordinate(to->x), coordinate(to->y));
    return 0;
}
static int read_conic(const FT_Vector* control, const FT_Vector* to, void* user) {
    auto& out = reader(user);
    const auto third = [](double end, double middle) { return end + 2.0 / 3.0 * (middle - end); };
    const double cx = coordinate(control->x);
    const double cy = coordinate(control->y);
    const double tx = coordinate(to->x);
    const double ty = coordinate(to->y);
    out.cubic(third(out.x, cx), third(out.y, cy), third(tx, cx), third(ty, cy), tx, ty);
    return 0;
}
static int read_cubic(const FT_Vector* first, const FT_Vector* second, const FT_Vector* to, void* user) {
    reader(user).cubic(coordinate(first->x), coordinate(first->y), coordinate(second->x),
                       coordinate(second->y), coordinate(to->x), coordinate(to->y));
    return 0;
}
}

bool choose_basic_plane(FT_Face face) {
    constexpr int microsoft = 3;
    constexpr int unicode_bmp = 1;
    for (int i = 0; i < face->num_charmaps; ++i) {
        FT_CharMap map = face->charmaps[i];
        if (map->platform_id == microsoft && map->encoding_id == unicode_bmp)
            return FT_Set_Charmap(face, map) == 0;
    }
    return false;
}

bool may_be_embedded(FT_Face face) {
    constexpr FT_UShort forbidden =
        FT_FSTYPE_RESTRICTED_LICENSE_EMBEDDING | FT_FSTYPE_NO_SUBSETTING | FT_FSTYPE_BITMAP_EMBEDDING_ONLY;
    return (FT_Get_FSType_Flags(face) & forbidden) == 0;
}

}  // namespace

FreeTypeLibrary open_freetype() {
    FT_Library library = nullptr;
    if (FT_Init_FreeType(&library) != 0) throw units::Refusal("The font library FreeType did not start.");
    return {library, [](FT_Library opened) { FT_Done_FreeType(opened); }};
}

std::optional<Typeface> Typeface::open(FreeTypeLibrary library, const FaceFile& file, Characters characters) {
    FT_Face opened = nullptr;
    if (FT_New_Face(library.get(), file.path.c_str(), 0, &opened) != 0) return std::nullopt;
    Handle face(opened, &FT_Done_Face);
    const bool usable = FT_IS_SCALABLE(opened) && opened->units_per_EM > 0 && may_be_embedded(opened);
    const bool has_table = characters == Characters::basic_plane
                               ? choose_basic_plane(opened)
                               : FT_Select_Charmap(opened, FT_ENCODING_UNICODE) == 0;
    if (!usable || !has_table) return std::nullopt;
    return Typeface(std::move(library), std::move(face), file);
}

Typeface::Typeface(FreeTypeLibrary library, Handle face, const FaceFile& file)
    : library_(std::move(library)), face_(std::move(face)), file_(file) {}

bool Typeface::has(char32_t code_point) const {
    return FT_Get_Char_Index(face_.get(), code_point) != 0;
}

int Typeface::advance(char32_t code_point) const {
    const auto [entry, is_new] = advances_.try_emplace(code_point, 0);
    if (is_new && FT_Load_Char(face_.get(), code_point, FT_LOAD_NO_SCALE) == 0)
        entry->second = static_cast<int>(face_->glyph->metrics.horiAdvance * 1000 / face_->units_per_EM);
    return entry->second;
}

const Faces::Glyph& Typeface::glyph(char32_t code_point) const {
    const auto [entry, is_new] = glyphs_.try_emplace(code_point);
    Faces::Glyph& glyph = entry->second;
    if (!is_new) return glyph;
    glyph.units_per_em = face_->units_per_EM;
    if (FT_Load_Char(face_.get(), code_point, FT_LOAD_NO_SCALE) != 0) return glyph;

    FT_Outline& outline = face_->glyph->outline;
    const FT_Outline_Funcs functions{read_move, read_line, read_conic, read_cubic, 0, 0};
    OutlineReader out;
    if (FT_Outline_Decompose(&outline, &functions, &out) != 0) return glyph;
    out.close();
    glyph.steps = std::move(out.steps);

    FT_BBox box{};
    if (FT_Outline_Get_BBox(&outline, &box) == 0 && !glyph.steps.empty()) {
        glyph.left = coordinate(box.xMin);
        glyph.right = coordinate(box.xMax);
        glyph.bottom = coordinate(box.yMin);
        glyph.top = coordinate(box.yMax);
    }
    return glyph;
}

}  // namespace lowledger::canvas
