#include "model/tuning/weights.h"

#include <array>
#include <fmt/format.h>
#include <string>
#include <vector>

#include "model/units/number_text.h"
#include "model/units/refusal.h"

namespace lowledger::tuning {
namespace {

using Weights = std::map<units::Pitch, double>;

[[noreturn]] void refuse(std::string_view what, std::string_view why) {
    throw units::Refusal(fmt::format(
        "The weights \"{}\": {}. Write notes:Bb1,C2 or scale:Bb1 or register:low, middle or high, or "
        "shares:Bb1=3,C2=1.",
        what, why));
}

std::vector<std::string> parted(std::string_view list) {
    std::vector<std::string> parts{std::string()};
    for (const char c : list) {
        if (c == ',')
            parts.emplace_back();
        else if (c != ' ')
            parts.back() += c;
    }
    return parts;
}

Weights none_of(const horns::HornKind& kind) {
    Weights weights;
    for (int midi = kind.usual_range.low.midi(); midi <= kind.usual_range.high.midi(); ++midi)
        weights[units::Pitch(midi)] = 0.0;
    return weights;
}

class Named {
  public:
    Named(std::string_view what, const horns::HornKind& kind)
        : what_(what), kind_(kind), weights_(none_of(kind)) {}

    Weights read() {
        const std::size_t colon = what_.find(':');
        if (colon == std::string_view::npos) refuse(what_, "it does not say what is named");
        const std::string_view form = what_.substr(0, colon);
        const std::string_view list = what_.substr(colon + 1);
        if (form == "notes")
            read_notes(list);
        else if (form == "scale")
            read_scale(list);
        else if (form == "register")
            read_register(list);
        else if (form == "shares")
            read_shares(list);
        else
            refuse(what_, fmt::format("\"{}\" is none of the ways to name notes", form));
        return weights_;
    }

  private:
    [[nodiscard]] units::Pitch note(std::string_view name) const {
        const auto pitch = units::parse_pitch(name);
        if (!pitch) refuse(what_, fmt::format("\"{}\" is no note", name));
        if (!kind_.usual_range.contains(*pitch)) outside(*pitch);
        return *pitch;
    }

    [[noreturn]] void outside(units::Pitch pitch) const {
        refuse(what_,
               fmt::format("{} lies outside the usual range of the {}, {} to {}", units::file_name(pitch),
                           kind_.name, units::file_name(kind_.usual_range.low),
                           units::file_name(kind_.usual_range.high)));
    }

    void read_notes(std::string_view list) {
        for (const std::string& name : parted(list))
            weights_[note(name)] = 1.0;
    }

    void read_scale(std::string_view first) {
        constexpr std::array<int, 8> major = {0, 2, 4, 5, 7, 9, 11, 12};
        const units::Pitch from = note(first);
        for (const int above : major) {
            const units::Pitch pitch(from.midi() + above);
            if (!kind_.usual_range.contains(pitch)) outside(pitch);
            weights_[pitch] = 1.0;
        }
    }

    void read_register(std::string_view name) {
        constexpr std::array<std::string_view, 3> thirds = {"low", "middle", "high"};
        const int low = kind_.usual_range.low.midi();
        const int size = kind_.usual_range.high.midi() - low + 1;
        int third = 0;
        while (third < 3 && thirds.at(static_cast<std::size_t>(third)) != name)
            ++third;
        if (third == 3) refuse(what_, fmt::format("\"{}\" is no register", name));
        for (int midi = low + third * size / 3; midi < low + (third + 1) * size / 3; ++midi)
            weights_[units::Pitch(midi)] = 1.0;
    }

    void read_shares(std::string_view list) {
        for (const std::string& part : parted(list)) {
            const std::size_t equals = part.find('=');
            const auto share = equals == std::string::npos
                                   ? std::nullopt
                                   : units::parse_decimal(std::string_view(part).substr(equals + 1));
            if (!share || *share <= 0.0)
                refuse(what_, fmt::format("\"{}\" is no note with a share above 0", part));
            weights_[note(std::string_view(part).substr(0, equals))] = *share;
        }
    }

    std::string_view what_;
    const horns::HornKind& kind_;
    Weights weights_;
};

}  // namespace

std::map<units::Pitch, double> weights_named(std::string_view what, const horns::HornKind& kind) {
    return Named(what, kind).read();
}

}  // namespace lowledger::tuning
