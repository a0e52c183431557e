#include "reports/canvas/font_search.h"

#include <algorithm>

namespace lowledger::canvas {
namespace {

using Pattern = std::unique_ptr<FcPattern, decltype(&FcPatternDestroy)>;

const FcChar8* chars(const std::string& text) {
    return reinterpret_cast<const FcChar8*>(text.c_str());
}

std::string text_of(FcPattern* font, const char* property) {
    FcChar8* value = nullptr;
    if (FcPatternGetString(font, property, 0, &value) != FcResultMatch) return {};
    return reinterpret_cast<const char*>(value);
}

bool has_number(FcPattern* font, const char* property, int wanted) {
    int value = 0;
    return FcPatternGetInteger(font, property, 0, &value) == FcResultMatch && value == wanted;
}

bool is_set(FcPattern* font, const char* property) {
    FcBool value = FcFalse;
    return FcPatternGetBool(font, property, 0, &value) == FcResultMatch && value == FcTrue;
}

/// The painter to PDF takes single, unpacked TrueType files; colour and variable fonts have no one outline.
bool is_usable(FcPattern* font) {
    return text_of(font, FC_FONTFORMAT) == "TrueType" && text_of(font, FC_FILE).ends_with(".ttf") &&
           has_number(font, FC_INDEX, 0) && has_number(font, FC_SLANT, FC_SLANT_ROMAN) &&
           has_number(font, FC_WIDTH, FC_WIDTH_NORMAL) && !is_set(font, FC_VARIABLE) &&
           !is_set(font, FC_COLOR);
}

std::shared_ptr<FcConfig> owned(FcConfig* configuration) {
    return {configuration, [](FcConfig* held) {
                if (held) FcConfigDestroy(held);
            }};
}

FaceFile file_of(FcPattern* font) {
    return {text_of(font, FC_FILE), text_of(font, FC_POSTSCRIPT_NAME)};
}

}  // namespace

FontSearch::FontSearch() : configuration_(owned(FcInitLoadConfigAndFonts())) {
    if (!configuration_) throw units::Refusal("The system's list of fonts (fontconfig) could not be read.");
}

FontSearch::FontSearch(const std::filesystem::path& configuration) : configuration_(owned(FcConfigCreate())) {
    const std::string path = configuration.string();
    if (!configuration_ || !std::filesystem::exists(configuration) ||
        !FcConfigParseAndLoad(configuration_.get(), chars(path), FcTrue) ||
        !FcConfigBuildFonts(configuration_.get()))
        throw units::Refusal("The list of fonts in " + path + " could not be read.");
}

std::optional<FaceFile> FontSearch::find(const std::string& family, Weight weight) const {
    const Pattern pattern(FcPatternCreate(), &FcPatternDestroy);
    FcPatternAddString(pattern.get(), FC_FAMILY, chars(family));
    FcPatternAddInteger(pattern.get(), FC_WEIGHT,
                        weight == Weight::bold ? FC_WEIGHT_BOLD : FC_WEIGHT_REGULAR);
    const std::unique_ptr<FcObjectSet, decltype(&FcObjectSetDestroy)> wanted(
        FcObjectSetBuild(FC_FAMILY, FC_FILE, FC_INDEX, FC_POSTSCRIPT_NAME, FC_FONTFORMAT, FC_SLANT, FC_WIDTH,
                         FC_VARIABLE, FC_COLOR, nullptr),
        &FcObjectSetDestroy);
    const std::unique_ptr<FcFontSet, decltype(&FcFontSetDestroy)> fonts(
        FcFontList(configuration_.get(), pattern.get(), wanted.get()), &FcFontSetDestroy);
    if (!fonts) return std::nullopt;

    std::optional<FaceFile> found;
    for (int i = 0; i < fonts->nfont; ++i) {
        FcPattern* font = fonts->fonts[i];
        if (!is_usable(font)) continue;
        // The first by path, so that the choice does not hang on the order of a folder.
        if (FaceFile file = file_of(font); !found || file.path < found->path) found = std::move(file);
    }
    return found;
}

std::vector<FaceFile> FontSearch::with(char32_t code_point) const {
    if (!by_nearness_) {
        const Pattern pattern(FcPatternCreate(), &FcPatternDestroy);
        FcPatternAddString(pattern.get(), FC_FAMILY, chars("sans-serif"));
        FcPatternAddInteger(pattern.get(), FC_WEIGHT, FC_WEIGHT_REGULAR);
        FcConfigSubstitute(configuration_.get(), pattern.get(), FcMatchPattern);
        FcResult result = FcResultMatch;
        by_nearness_.reset(FcFontSort(configuration_.get(), pattern.get(), FcFalse, nullptr, &result),
                           [](FcFontSet* set) {
                               if (set) FcFontSetDestroy(set);
                           });
    }
    std::vector<FaceFile> found;
    if (!by_nearness_) return found;
    for (int i = 0; i < by_nearness_->nfont; ++i) {
        FcPattern* font = by_nearness_->fonts[i];
        FcCharSet* covered = nullptr;
        if (is_usable(font) && FcPatternGetCharSet(font, FC_CHARSET, 0, &covered) == FcResultMatch &&
            FcCharSetHasChar(covered, code_point))
            found.push_back(file_of(font));
    }
    return found;
}

}  // namespace lowledger::canvas
