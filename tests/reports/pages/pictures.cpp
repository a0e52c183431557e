#include "tests/reports/pages/pictures.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <sstream>
#include <stdexcept>

namespace lowledger::pages {
namespace {

constexpr std::size_t reduced_by = 4;
constexpr int off_by = 32;
constexpr std::size_t around = 8;
constexpr std::uint8_t ground = 160;

std::string output_of(const std::string& command) {
    std::FILE* const pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) throw std::runtime_error("cannot run: " + command);
    std::string output;
    std::array<char, 65536> buffer{};
    while (const std::size_t read = std::fread(buffer.data(), 1, buffer.size(), pipe))
        output.append(buffer.data(), read);
    if (pclose(pipe) != 0) throw std::runtime_error("has failed: " + command);
    return output;
}

/// Portable grey maps (netpbm's P5 with 255 greys), one behind the other.
std::vector<Picture> read_grey_maps(const std::string& bytes) {
    std::vector<Picture> pictures;
    std::istringstream in(bytes);
    std::string magic;
    while (in >> magic) {
        Picture picture;
        int most = 0;
        in >> picture.width >> picture.height >> most;
        if (magic != "P5" || most != 255) throw std::runtime_error("no grey map of 255 greys");
        in.get();
        std::string row(picture.width * picture.height, '\0');
        if (!in.read(row.data(), static_cast<std::streamsize>(row.size())))
            throw std::runtime_error("a grey map that is cut short");
        picture.greys.assign(row.begin(), row.end());
        pictures.push_back(std::move(picture));
    }
    return pictures;
}

void paste(const Picture& picture, Picture& onto, std::size_t left, std::size_t top) {
    for (std::size_t y = 0; y < picture.height; ++y)
        for (std::size_t x = 0; x < picture.width; ++x)
            onto.greys.at((top + y) * onto.width + left + x) = picture.at(x, y);
}

}  // namespace

std::vector<Picture> painted(const std::filesystem::path& pdf) {
    return read_grey_maps(output_of("pdftoppm -q -r 72 -gray '" + pdf.string() + "'"));
}

Picture montage(const std::vector<Picture>& pictures, std::size_t columns) {
    std::size_t wide = 0;
    std::size_t high = 0;
    for (const Picture& picture : pictures) {
        wide = std::max(wide, picture.width + around);
        high = std::max(high, picture.height + around);
    }
    const std::size_t across = std::min(columns, pictures.size());
    const std::size_t rows = (pictures.size() + columns - 1) / columns;
    Picture all{wide * across, high * rows, {}};
    all.greys.assign(all.width * all.height, ground);
    for (std::size_t i = 0; i < pictures.size(); ++i)
        paste(pictures[i], all, i % columns * wide, i / columns * high);
    return all;
}

Picture reduced(const Picture& picture) {
    Picture small{picture.width / reduced_by, picture.height / reduced_by, {}};
    for (std::size_t y = 0; y < small.height; ++y) {
        for (std::size_t x = 0; x < small.width; ++x) {
            std::size_t sum = 0;
            for (std::size_t i = 0; i < reduced_by * reduced_by; ++i)
                sum += picture.at(x * reduced_by + i % reduced_by, y * reduced_by + i / reduced_by);
            small.greys.push_back(static_cast<std::uint8_t>(sum / (reduced_by * reduced_by)));
        }
    }
    return small;
}

PictureDifference difference(const Picture& one, const Picture& other) {
    if (one.width != other.width || one.height != other.height || one.greys.empty())
        throw std::invalid_argument("pictures of two sizes");
    double sum = 0.0;
    double off = 0.0;
    for (std::size_t i = 0; i < one.greys.size(); ++i) {
        const int apart = std::abs(one.greys[i] - other.greys[i]);
        sum += apart;
        off += apart > off_by ? 1.0 : 0.0;
    }
    const auto pixels = static_cast<double>(one.greys.size());
    return {sum / pixels, off / pixels};
}

void write_png(const Picture& picture, const std::filesystem::path& path) {
    const std::string command =
        "convert pgm:- -depth 4 -strip -define png:exclude-chunks=date,time '" + path.string() + "'";
    std::FILE* const pipe = popen(command.c_str(), "w");
    if (pipe == nullptr) throw std::runtime_error("cannot run: " + command);
    const std::string head =
        "P5\n" + std::to_string(picture.width) + " " + std::to_string(picture.height) + "\n255\n";
    const bool written =
        std::fwrite(head.data(), 1, head.size(), pipe) == head.size() &&
        std::fwrite(picture.greys.data(), 1, picture.greys.size(), pipe) == picture.greys.size();
    if (pclose(pipe) != 0 || !written) throw std::runtime_error("has failed: " + command);
}

Picture read_png(const std::filesystem::path& path) {
    const auto pictures = read_grey_maps(output_of("convert '" + path.string() + "' -depth 8 pgm:-"));
    if (pictures.size() != 1) throw std::runtime_error(path.string() + " is no picture");
    return pictures.front();
}

}  // namespace lowledger::pages
