#include "reports/canvas/faces.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <unordered_map>
#include <unordered_set>

#include "reports/canvas/font_search.h"
#include "reports/canvas/typeface.h"
#include "reports/canvas/unicode.h"

namespace lowledger::canvas {
namespace {

constexpr char32_t visible_gap = 0x25A1;
constexpr char32_t last_of_basic_plane = 0xFFFF;

Typeface opened(const FreeTypeLibrary& library, const FontSearch& search, const std::string& family,
                Weight weight, const std::string& package, Typeface::Characters wanted) {
    if (const auto file = search.find(family, weight))
        if (auto face = Typeface::open(library, *file, wanted)) return std::move(*face);
    throw MissingFace("The typeface " + family + (weight == Weight::bold ? " Bold" : "") +
                      " is not on this computer, and the pages are set in it. Install the package " +
                      package + " and try again.");
}

/// A character as it will be drawn.
struct Drawn {
    char32_t code_point = 0;
    std::size_t face = 0;
    bool substituted = false;
};

units::Millimetres scaled(int thousandths, const TextStyle& style) {
    return units::in_millimetres(style.size) * (thousandths / 1000.0);
}

std::string code_point_name(char32_t code_point) {
    std::array<char, 16> text{};
    std::snprintf(text.data(), text.size(), "U+%04X", static_cast<unsigned>(code_point));
    return text.data();
}

void append_outline(std::vector<PathStep>& path, const Faces::Glyph& glyph, Point origin,
                    units::Millimetres em) {
    using Kind = Faces::Glyph::Step::Kind;
    const auto unit = em / glyph.units_per_em;
    for (const auto& step : glyph.steps) {
        const auto point = [&](int i) {
            return Point{origin.x + unit * step.x[i], origin.y - unit * step.y[i]};
        };
        switch (step.kind) {
            case Kind::move:
                path.emplace_back(MoveTo{point(0)});
                break;
            case Kind::line:
                path.emplace_back(LineTo{point(0)});
                break;
            case Kind::curve:
                path.emplace_back(CurveTo{point(0), point(1), point(2)});
                break;
            case Kind::close:
                path.emplace_back(Close{});
                break;
        }
    }
}

}  // namespace

struct Faces::Implementation {
    explicit Implementation(FontSearch fonts) : search(std::move(fonts)) {
        constexpr auto basic = Typeface::Characters::basic_plane;
        add(opened(library, search, "Noto Sans", Weight::regular, "fonts-noto-core", basic));
        add(opened(library, search, "DejaVu Sans", Weight::regular, "fonts-dejavu-core", basic));
        add(opened(library, search, "Noto Sans", Weight::bold, "fonts-noto-core", basic));
        add(opened(library, search, "DejaVu Sans", Weight::bold, "fonts-dejavu-core", basic));
    }

    void add(Typeface face) {
        files.push_back(face.file());
        faces.push_back(std::move(face));
    }

    Drawn drawn(char32_t code_point, Weight weight) {
        auto& known = weight == Weight::bold ? drawn_bold : drawn_regular;
        if (const auto found = known.find(code_point); found != known.end()) return found->second;
        const auto face = face_with(code_point, weight);
        const Drawn result =
            face ? Drawn{code_point, *face, false}
                 : Drawn{visible_gap, face_with(visible_gap, weight).value_or(regular_signs), true};
        known.emplace(code_point, result);
        return result;
    }

    std::optional<std::size_t> face_with(char32_t code_point, Weight weight) {
        if (code_point > last_of_basic_plane || needs_shaping(code_point)) return std::nullopt;
        static constexpr std::array<std::size_t, 2> for_regular{regular_text, regular_signs};
        static constexpr std::array<std::size_t, 4> for_bold{bold_text, bold_signs, regular_text,
                                                             regular_signs};
        const auto first_with = [&](const auto& order) -> std::optional<std::size_t> {
            for (const std::size_t face : order)
                if (faces[face].has(code_point)) return face;
            return std::nullopt;
        };
        if (const auto face = weight == Weight::bold ? first_with(for_bold) : first_with(for_regular))
            return face;
        return fallback_with(code_point);
    }

    std::optional<std::size_t> fallback_with(char32_t code_point) {
        for (std::size_t face = first_fallback; face < faces.size(); ++face)
            if (faces[face].has(code_point)) return face;
        for (const FaceFile& file : search.with(code_point)) {
            // Two files of one name cannot both be in a PDF.
            const bool taken = std::any_of(files.begin(), files.end(),
                                           [&](const FaceFile& held) { return held.name == file.name; });
            if (taken) continue;
            auto face = Typeface::open(library, file, Typeface::Characters::basic_plane);
            if (!face || !face->has(code_point)) continue;
            add(std::move(*face));
            return faces.size() - 1;
        }
        return std::nullopt;
    }

    /// Calls `use` for every character of the text as it will be drawn. A mark stays with the face of its
    /// letter if that has it.
    template <typename Use>
    void each_drawn(std::string_view line, Weight weight, Use use) {
        const std::string clean = printable(line);
        Drawn before;
        for (const Character& c : characters(clean)) {
            Drawn now = drawn(c.code_point, weight);
            if (is_combining(c.code_point) && !now.substituted && faces[before.face].has(c.code_point))
                now.face = before.face;
            use(now);
            before = now;
        }
    }

    /// Places in `faces`.
    static constexpr std::size_t regular_text = 0;
    static constexpr std::size_t regular_signs = 1;
    static constexpr std::size_t bold_text = 2;
    static constexpr std::size_t bold_signs = 3;
    static constexpr std::size_t first_fallback = 4;

    FontSearch search;
    FreeTypeLibrary library = open_freetype();
    std::vector<Typeface> faces;
    std::vector<FaceFile> files;
    Typeface notation =
        opened(library, search, "Noto Music", Weight::regular, "fonts-noto-core", Typeface::Characters::all);
    std::unordered_map<char32_t, Drawn> drawn_regular;
    std::unordered_map<char32_t, Drawn> drawn_bold;
};

Faces::Faces() : implementation_(std::make_unique<Implementation>(FontSearch())) {}

Faces::Faces(const std::filesystem::path& fontconfig_file)
    : implementation_(std::make_unique<Implementation>(FontSearch(fontconfig_file))) {}

Faces::~Faces() = default;

units::Millimetres Faces::width(std::string_view text, const TextStyle& style) const {
    int thousandths = 0;
    implementation_->each_drawn(text, style.weight, [&](const Drawn& c) {
        thousandths += implementation_->faces[c.face].advance(c.code_point);
    });
    return scaled(thousandths, style);
}

std::vector<Run> Faces::runs(std::string_view text, const TextStyle& style) const {
    std::vector<Run> runs;
    int thousandths = 0;
    implementation_->each_drawn(text, style.weight, [&](const Drawn& c) {
        if (runs.empty() || runs.back().face != c.face) {
            runs.push_back({c.face, {}, {}});
            thousandths = 0;
        }
        thousandths += implementation_->faces[c.face].advance(c.code_point);
        runs.back().text += utf8(c.code_point);
        runs.back().width = scaled(thousandths, style);
    });
    return runs;
}

std::vector<std::string> Faces::undrawable(std::string_view text) const {
    std::vector<std::string> missing;
    std::unordered_set<char32_t> seen;
    const std::string clean = printable(text);
    for (const Character& c : characters(clean))
        if (implementation_->drawn(c.code_point, Weight::regular).substituted &&
            seen.insert(c.code_point).second)
            missing.push_back(utf8(c.code_point));
    return missing;
}

std::vector<PathStep> Faces::outlines(std::string_view text, const TextStyle& style, Point at) const {
    std::vector<PathStep> path;
    const auto em = units::in_millimetres(style.size);
    int thousandths = 0;
    implementation_->each_drawn(text, style.weight, [&](const Drawn& c) {
        const Typeface& face = implementation_->faces[c.face];
        append_outline(path, face.glyph(c.code_point), {at.x + scaled(thousandths, style), at.y}, em);
        thousandths += face.advance(c.code_point);
    });
    return path;
}

const Faces::Glyph& Faces::music_glyph(char32_t code_point, MusicFace face) const {
    const Typeface& typeface = face == MusicFace::notation
                                   ? implementation_->notation
                                   : implementation_->faces[Implementation::regular_signs];
    if (!typeface.has(code_point))
        throw units::Refusal("The typeface " + typeface.file().name + " has no sign " +
                             code_point_name(code_point) + ", which this page needs.");
    return typeface.glyph(code_point);
}

const std::vector<FaceFile>& Faces::files() const {
    return implementation_->files;
}

}  // namespace lowledger::canvas
