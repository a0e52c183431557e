#pragma once

#include <cstddef>
#include <hpdf.h>
#include <memory>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

namespace lowledger::canvas {

/// The first thing that libharu reported.
struct HaruError {
    HPDF_STATUS code = HPDF_OK;
    HPDF_STATUS detail = HPDF_OK;
};

/// libharu's document, freed with it and checked after each call. The library keeps the first error and
/// refuses all that follows; its callback only records, and the exception (Refusal) is thrown here. Lengths
/// are points from the page's left and bottom edges.
class HaruDocument {
  public:
    HaruDocument();

    void describe(const std::string& title, const std::string& author, const std::string& language);
    HPDF_Page add_page(float width, float height);
    void add_bookmark(const std::string& title, HPDF_Page page);
    /// The font file, embedded as a subset; loaded at the first use.
    HPDF_Font font(const std::string& path);
    [[nodiscard]] std::string bytes();

    /// Throws what the callback recorded, or for a status that it did not hear of.
    void check(HPDF_STATUS status = HPDF_OK) const;

  private:
    HPDF_Encoder utf8();

    /// Apart, so that it stays where the library writes it when this moves.
    std::unique_ptr<HaruError> error_ = std::make_unique<HaruError>();
    std::unique_ptr<_HPDF_Doc_Rec, void (*)(HPDF_Doc)> document_;
    std::unordered_map<std::string, HPDF_Font> fonts_;
};

/// One page's pen: draws in greys from 0 (black) to 1 (white), and states a grey, width or dash only when it
/// changes.
class HaruPen {
  public:
    HaruPen(HaruDocument& document, HPDF_Page page);

    void move_to(float x, float y);
    void line_to(float x, float y);
    void curve_to(float x1, float y1, float x2, float y2, float x3, float y3);
    void close();
    void fill();
    void stroke();
    /// These two before the path that they are for.
    void set_fill(float grey);
    void set_stroke(float width, float grey, bool dashed);

    struct Piece {
        HPDF_Font font;
        float x;
        std::string text;
    };
    void text(const std::vector<Piece>& pieces, float y, float size, float grey);
    void link(float left, float bottom, float right, float top, const std::string& address);

  private:
    HaruDocument& document_;
    HPDF_Page page_;
    std::optional<float> fill_grey_;
    std::optional<float> stroke_grey_;
    std::optional<float> stroke_width_;
    bool dashed_ = false;
};

}  // namespace lowledger::canvas
