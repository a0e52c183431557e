#include "model/tuning/figures.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>
#include <toml++/toml.h>

#include "model/units/refusal.h"

#include "tuning_figures_file.h"

namespace lowledger::tuning {
namespace {

constexpr std::array<const char*, 3> level_names = {"beginner", "middle", "advanced"};

/// Walks the file's tables and remembers each figure in the order of the file.
class FigureReader {
  public:
    FigureReader(const toml::table& root, std::string_view file) : root_(root), file_(file) {}

    double one(const char* key) const { return number(table(key).get("value"), key); }

    std::array<double, 3> by_level(const char* key) const {
        const std::vector<double> values = list(key, "values");
        if (values.size() != level_names.size()) refuse(key, "needs three values, one a level.");
        return {values[0], values[1], values[2]};
    }

    std::vector<double> list(const char* key, const char* name) const {
        const toml::array* array =
            table(key).get_as<toml::array>(name) ? table(key)[name].as_array() : nullptr;
        if (array == nullptr || array->empty())
            refuse(key, fmt::format("needs a list of numbers \"{}\".", name));
        std::vector<double> values;
        for (const toml::node& node : *array)
            values.push_back(number(&node, key));
        return values;
    }

    /// Every figure as the file has it, by line.
    std::vector<Figure> all() const {
        std::vector<std::pair<toml::source_position, std::vector<Figure>>> found;
        for (const auto& [key, node] : root_) {
            const std::string name(key.str());
            found.emplace_back(node.source().begin, entries(name.c_str()));
        }
        std::ranges::sort(found, {}, [](const auto& entry) { return entry.first.line; });
        std::vector<Figure> figures;
        for (auto& [at, entry] : found)
            figures.insert(figures.end(), entry.begin(), entry.end());
        return figures;
    }

  private:
    [[noreturn]] void refuse(std::string_view key, std::string_view complaint) const {
        throw units::Refusal(fmt::format("{}: the figure \"{}\" {}", file_, key, complaint));
    }

    const toml::table& table(const char* key) const {
        const toml::table* found = root_[key].as_table();
        if (found == nullptr) refuse(key, "is missing; add a table of that name.");
        return *found;
    }

    double number(const toml::node* node, const char* key) const {
        const auto value = node == nullptr ? std::nullopt : node->value<double>();
        if (!value || !std::isfinite(*value) || *value < 0.0)
            refuse(key, "must be a number, not below zero.");
        return *value;
    }

    std::string text(const char* key, const char* name) const {
        const auto value = table(key)[name].value<std::string>();
        if (!value) refuse(key, fmt::format("needs a text \"{}\".", name));
        return *value;
    }

    Mark mark(const char* key) const {
        const std::string name = text(key, "mark");
        if (name == "source") return Mark::source;
        if (name == "practice") return Mark::practice;
        if (name == "estimate") return Mark::estimate;
        refuse(key, "has a mark that is none of source, practice, estimate.");
    }

    std::vector<Figure> entries(const char* key) const {
        const Figure whole{key, 0.0, text(key, "unit"), mark(key), text(key, "meaning")};
        std::vector<Figure> figures;
        const auto add = [&](const std::string& suffix, double value) {
            figures.push_back(whole);
            figures.back().key += suffix;
            figures.back().value = value;
        };
        if (table(key).contains("values")) {
            const auto values = by_level(key);
            for (std::size_t i = 0; i < values.size(); ++i)
                add(fmt::format(".{}", level_names.at(i)), values.at(i));
        } else if (table(key).contains("valves")) {
            const auto values = list(key, "valves");
            for (std::size_t i = 0; i < values.size(); ++i)
                add(fmt::format(".{}", i + 1), values[i]);
        } else {
            add("", one(key));
        }
        return figures;
    }

    const toml::table& root_;
    std::string file_;
};

LevelFigures read_level(const FigureReader& file, std::size_t level) {
    const auto value = [&](const char* key) { return file.by_level(key).at(level); };
    const auto cents = [&](const char* key) { return units::Cents(value(key)); };
    LevelFigures f;
    f.take = cents("take");
    f.note_by_sitting = cents("note_by_sitting");
    f.sitting = cents("sitting");
    f.player_overall = cents("player_overall");
    f.player_by_partial = cents("player_by_partial");
    f.player_slope = cents("player_slope");
    f.player_by_pitch = cents("player_by_pitch");
    f.kappa = value("kappa");
    f.kappa_seen = value("kappa_seen");
    f.kappa_spread = value("kappa_spread");
    f.gamma = value("gamma");
    f.half_life_days = value("half_life");
    f.tolerance = cents("tolerance");
    f.lip_up = cents("lip_up");
    f.hand_slide_home = units::Millimetres(value("hand_slide_home"));
    f.arm = units::Millimetres(value("arm"));
    f.lip_down = cents("lip_down");
    return f;
}

void read_belief(const FigureReader& file, Figures& f) {
    const auto cents = [&](const char* key) { return units::Cents(file.one(key)); };
    const auto mm = [&](const char* key) { return units::Millimetres(file.one(key)); };
    f.horn_overall = cents("horn_overall");
    for (const double value : file.list("valve_tubes", "valves"))
        f.valve_tubes.emplace_back(value);
    f.horn_by_partial = cents("horn_by_partial");
    f.horn_by_high_partial = cents("horn_by_high_partial");
    f.horn_pedal = cents("horn_pedal");
    f.horn_by_set_and_partial = cents("horn_by_set_and_partial");
    f.kind_by_partial = cents("kind_by_partial");
    f.mouthpiece = cents("mouthpiece");
    f.tuner = cents("tuner");
    f.room_beta = file.one("room_beta");
    f.room_beta_spread = file.one("room_beta_spread");
    f.room_unknown = units::Kelvins(file.one("room_unknown"));
    f.bore_spread = file.one("bore_spread");
    f.warming = cents("warming");
    f.position_measured = mm("position_measured");
    f.position_as_left = mm("position_as_left");
    f.position_shared = mm("position_shared");
    f.position_unknown = mm("position_unknown");
    f.false_alarms = file.one("false_alarms");
    f.outlying = file.one("outlying");
    f.gross_error = file.one("gross_error");
    f.gross_spread = units::Cents(file.one("gross_spread"));
}

void read_settings(const FigureReader& file, Figures& f) {
    f.weight_core = file.one("weight_core");
    f.weight_edge = file.one("weight_edge");
    f.weight_pedal_or_seventh = file.one("weight_pedal_or_seventh");
    f.flat_weight = file.one("flat_weight");
    f.cost_per_cent_moved = file.one("cost_per_cent_moved");
    f.worth_moving = units::Cents(file.one("worth_moving"));
    f.chance_of_better = file.one("chance_of_better");
    f.chance_of_each = file.one("chance_of_each");
    f.most_mean_sharp = units::Cents(file.one("most_mean_sharp"));
    f.alternate_penalty = units::SquareCents(file.one("alternate_penalty"));
    f.step_long = units::Millimetres(file.one("step_long"));
    f.step_short = units::Millimetres(file.one("step_short"));
    f.long_horn = units::Millimetres(file.one("long_horn"));
    f.card_takes = static_cast<int>(file.one("card_takes"));
    f.air_part = file.one("air_part");
}

}  // namespace

const LevelFigures& Figures::of(studio::Level level) const {
    switch (level) {
        case studio::Level::beginner:
            return beginner;
        case studio::Level::middle:
            return middle;
        case studio::Level::advanced:
            return advanced;
    }
    return beginner;
}

Figures read_figures(std::string_view toml, std::string_view file_name) {
    toml::table root;
    try {
        root = toml::parse(toml, file_name);
    } catch (const toml::parse_error& error) {
        throw units::Refusal(
            fmt::format("{}, line {}: {}.", file_name, error.source().begin.line, error.description()));
    }
    const FigureReader file(root, file_name);
    Figures f;
    f.beginner = read_level(file, 0);
    f.middle = read_level(file, 1);
    f.advanced = read_level(file, 2);
    read_belief(file, f);
    read_settings(file, f);
    f.all = file.all();
    return f;
}

const Figures& figures() {
    static const Figures built_in = [] {
        const EmbeddedFile& file = tuning_figures_file()[0];
        return read_figures(file.text, file.name);
    }();
    return built_in;
}

}  // namespace lowledger::tuning
