#include "model/exchange/text_file.h"

#include <cstdint>
#include <fmt/format.h>
#include <fstream>
#include <iterator>
#include <system_error>

#include "model/units/refusal.h"

namespace lowledger::exchange {

namespace {

constexpr std::uintmax_t most_bytes = 4 * std::uintmax_t{1024} * 1024;

}  // namespace

std::string read_text_file(const std::filesystem::path& path) {
    const std::string name = path.string();
    std::error_code error;
    const auto status = std::filesystem::status(path, error);
    if (!std::filesystem::exists(status))
        throw units::Refusal(fmt::format("There is no file {}. Check its name and folder.", name));
    if (std::filesystem::is_directory(status))
        throw units::Refusal(fmt::format("{} is a folder. Name a file in it.", name));
    if (std::filesystem::is_regular_file(status)) {
        const std::uintmax_t size = std::filesystem::file_size(path, error);
        if (!error && size > most_bytes)
            throw units::Refusal(fmt::format(
                "{} is larger than 4 MB, so it is none of the files that are read here. Check its name.",
                name));
    }
    std::ifstream stream(path, std::ios::binary);
    if (!stream) throw units::Refusal(fmt::format("{} cannot be read. Check that you may read it.", name));
    std::string text{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
    if (stream.bad())
        throw units::Refusal(fmt::format("{} cannot be read to its end. Check the disk.", name));
    return text;
}

}  // namespace lowledger::exchange
