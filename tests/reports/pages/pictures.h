#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace lowledger::pages {

/// Grey values from left to right and top to bottom; 255 is white.
struct Picture {
    std::size_t width = 0;
    std::size_t height = 0;
    std::vector<std::uint8_t> greys;
    [[nodiscard]] std::uint8_t at(std::size_t x, std::size_t y) const { return greys.at(y * width + x); }
};

/// Every page of a PDF at 72 pixels an inch, as Poppler paints it.
std::vector<Picture> painted(const std::filesystem::path& pdf);

/// Pictures beside each other in rows of at most `columns`, on a grey ground.
Picture montage(const std::vector<Picture>& pictures, std::size_t columns);

/// A fourth as wide and high, each pixel the mean of the sixteen it stands for.
Picture reduced(const Picture& picture);

struct PictureDifference {
    /// Of all pixels, in greys of 255.
    double mean = 0.0;
    /// The part of the pixels that are off by more than 32 greys.
    double share_off = 0.0;
};
/// Throws std::invalid_argument for pictures of two sizes.
PictureDifference difference(const Picture& one, const Picture& other);

/// Through ImageMagick, sixteen greys to the file. Throws std::runtime_error when it does not read or write.
void write_png(const Picture& picture, const std::filesystem::path& path);
Picture read_png(const std::filesystem::path& path);

}  // namespace lowledger::pages
