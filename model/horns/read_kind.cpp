#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <utility>

#include "model/horns/chart.h"
#include "model/horns/kind.h"
#include "model/horns/kind_table.h"
#include "model/units/refusal.h"

namespace lowledger::horns {
namespace {

constexpr std::array<std::pair<std::string_view, Clef>, 4> clefs = {
    {{"bass", Clef::bass}, {"treble", Clef::treble}, {"tenor", Clef::tenor}, {"alto", Clef::alto}}};

Clef read_clef(const KindTable& table) {
    const std::string name = table.text("clef");
    const auto at = std::ranges::find(clefs, name, &std::pair<std::string_view, Clef>::first);
    if (at == clefs.end()) table.refuse("clef", "must be \"bass\", \"treble\", \"tenor\" or \"alto\".");
    return at->second;
}

int valve_of(const KindTable& table, std::string_view key, const std::string& label,
             const std::vector<ValveKind>& valves) {
    const auto at = std::ranges::find(valves, label, &ValveKind::label);
    if (at == valves.end()) {
        std::vector<std::string> labels(valves.size());
        std::ranges::transform(valves, labels.begin(), &ValveKind::label);
        table.refuse(key, valves.empty()
                              ? std::string("names a valve, but the kind has none.")
                              : fmt::format("names the valve \"{}\", which the kind does not have; it "
                                            "has {}.",
                                            label, fmt::join(labels, ", ")));
    }
    return static_cast<int>(at - valves.begin()) + 1;
}

acoustics::ValveSet valves_of(const KindTable& table, std::string_view key,
                              const std::vector<ValveKind>& valves) {
    acoustics::ValveSet set;
    for (const std::string& label : table.texts_or_none(key))
        set = set.with(valve_of(table, key, label, valves));
    return set;
}

Span read_span(const KindTable& table, std::string_view key) {
    const auto ends = table.texts_or_none(key);
    const auto low = ends.size() == 2 ? units::parse_pitch(ends[0]) : std::nullopt;
    const auto high = ends.size() == 2 ? units::parse_pitch(ends[1]) : std::nullopt;
    if (!low || !high || *low > *high) {
        table.refuse(key, "must be two sounding notes, the lower first, such as [\"F1\", \"Bb2\"].");
    }
    return {*low, *high};
}

/// Reads one kind; the parts in the order in which they lean on one another.
class KindReader {
  public:
    KindReader(const toml::table& root, std::string_view text, std::string_view file)
        : file_(file),
          top_(root, file, "the kind",
               {"id", "name", "fundamental", "clef", "usual_range", "core_range", "band_note",
                "warm_up_minutes", "alternates_for_beginners", "cautions", "hand_slide_mm", "valve", "loop",
                "slide", "tuning", "check", "taught", "reader"}),
          kind_(begin(text)) {}

    HornKind read() {
        read_valves();
        read_loops();
        read_slides();
        read_tuning();
        read_checks();
        read_taught();
        read_readers();
        return std::move(kind_);
    }

  private:
    HornKind begin(std::string_view text) const {
        HornKind kind{
            .id = top_.text("id"),
            .name = top_.text("name"),
            .fundamental = top_.pitch("fundamental"),
            .clef = read_clef(top_),
            .valves = {},
            .slides = {},
            .loops = {},
            .hand_slide = std::nullopt,
            .usual_range = read_span(top_, "usual_range"),
            .core_range = read_span(top_, "core_range"),
            .band_note = top_.pitch("band_note"),
            .tuning_order = {},
            .taught = {},
            .alternates_for_beginners = top_.flag_or("alternates_for_beginners", false),
            .warm_up_minutes = top_.has("warm_up_minutes") ? top_.integer("warm_up_minutes", 0, 60) : 5,
            .cautions = top_.texts_or_none("cautions"),
            .source_text = std::string(text)};
        if (top_.has("hand_slide_mm")) {
            kind.hand_slide = units::Millimetres(top_.number("hand_slide_mm", 100, 1500));
        }
        if (!kind.usual_range.contains(kind.core_range.low) ||
            !kind.usual_range.contains(kind.core_range.high)) {
            top_.refuse("core_range", "must lie inside usual_range.");
        }
        return kind;
    }

    void read_valves() {
        const auto tables = top_.tables("valve");
        if (tables.size() > 6)
            top_.refuse("valve", "comes more than six times; a kind has at most six valves.");
        std::vector<KindTable> checked;
        for (const toml::table* table : tables) {
            const KindTable& valve = checked.emplace_back(
                *table, file_, fmt::format("valve {}", checked.size() + 1),
                std::initializer_list<std::string_view>{"label", "built_for_cents", "built_with", "needs"});
            const std::string label = valve.text("label");
            if (label.find_first_of("+ p0") != std::string::npos) {
                valve.refuse("label",
                             "may not hold '+', a space, 'p' or '0'; fingerings are written with them.");
            }
            if (std::ranges::find(kind_.valves, label, &ValveKind::label) != kind_.valves.end()) {
                valve.refuse("label",
                             fmt::format("is \"{}\" a second time; each valve needs its own.", label));
            }
            kind_.valves.push_back({label, units::Cents(valve.number("built_for_cents", 10, 1200)), {}, {}});
        }
        for (std::size_t i = 0; i < checked.size(); ++i) {
            kind_.valves[i].built_with = valves_of(checked[i], "built_with", kind_.valves);
            kind_.valves[i].needs = valves_of(checked[i], "needs", kind_.valves);
            if (kind_.valves[i].needs.contains(static_cast<int>(i) + 1)) {
                checked[i].refuse("needs", "names the valve itself.");
            }
        }
        for (std::size_t i = 0; i < checked.size(); ++i) {
            if (needs_before(static_cast<int>(i) + 1, static_cast<int>(i) + 1, {})) {
                checked[i].refuse("needs", "goes round in a circle: no valve of it could be used alone.");
            }
        }
        for (std::size_t i = 0; i < checked.size(); ++i) {
            if (waits_for(static_cast<int>(i) + 1, static_cast<int>(i) + 1, {})) {
                checked[i].refuse("built_with",
                                  "goes round in a circle: the valve's own length depends on it.");
            }
        }
        check_tube_lengths(checked);
    }

    /// Whether the tube of `valve` rests, by way of built_with, on that of `wanted`.
    bool waits_for(int valve, int wanted, acoustics::ValveSet seen) const {
        if (seen.contains(valve)) return false;
        const auto with = kind_.valves[static_cast<std::size_t>(valve - 1)].built_with.valves();
        return std::ranges::any_of(
            with, [&](int other) { return other == wanted || waits_for(other, wanted, seen.with(valve)); });
    }

    void check_tube_lengths(const std::vector<KindTable>& checked) const {
        const acoustics::Tube tube = tube_of(kind_);
        for (std::size_t i = 0; i < checked.size(); ++i) {
            if (tube.valves[i] <= units::Millimetres(0.0)) {
                checked[i].refuse(
                    "built_for_cents",
                    "is less than the valves of built_with already lower by; it would leave this "
                    "valve no tube.");
            }
        }
    }

    void read_loops() {
        for (const toml::table* table : top_.tables("loop")) {
            const KindTable loop(*table, file_, "a loop", {"valve", "with", "share"});
            const LoopKind read{valve_of(loop, "valve", loop.text("valve"), kind_.valves),
                                valve_of(loop, "with", loop.text("with"), kind_.valves),
                                loop.number_or("share", 0.0, 2.0, 1.0)};
            const bool twice = std::ranges::any_of(kind_.loops, [&](const LoopKind& other) {
                return acoustics::ValveSet{other.valve, other.with} ==
                       acoustics::ValveSet{read.valve, read.with};
            });
            if (read.valve == read.with)
                loop.refuse("with", "names the valve itself; a loop lies between two.");
            if (twice) loop.refuse("valve", "has a loop with that valve already; give each pair once.");
            kind_.loops.push_back(read);
            if (loops_lead(read.with, read.valve, {})) {
                loop.refuse("with",
                            "goes round in a circle: that valve's own loop waits, by way of others, for this "
                            "one. Loops lead from a valve to its switch.");
            }
        }
    }

    /// Whether loops lead from `valve`, by way of their switches, to `wanted`.
    bool loops_lead(int valve, int wanted, acoustics::ValveSet seen) const {
        if (valve == wanted) return true;
        if (seen.contains(valve)) return false;
        return std::ranges::any_of(kind_.loops, [&](const LoopKind& loop) {
            return loop.valve == valve && loops_lead(loop.with, wanted, seen.with(valve));
        });
    }

    /// Whether `valve` cannot be used without `wanted`, directly or by way of others.
    bool needs_before(int valve, int wanted, acoustics::ValveSet seen) const {
        if (seen.contains(valve)) return false;
        const auto needed = kind_.valves[static_cast<std::size_t>(valve - 1)].needs.valves();
        return std::ranges::any_of(needed, [&](int other) {
            return other == wanted || needs_before(other, wanted, seen.with(valve));
        });
    }

    void read_slides() {
        for (const toml::table* table : top_.tables("slide")) {
            const KindTable slide(
                *table, file_, "a slide",
                {"id", "name", "valve", "legs", "designed_mm", "travel_mm", "least_mm", "while_playing"});
            SlideKind read{.id = slide.text("id"),
                           .name = slide.text("name"),
                           .valve = std::nullopt,
                           .legs = slide.number_or("legs", 1, 2, 2),
                           .designed = units::Millimetres(slide.number("designed_mm", 0, 2000)),
                           .travel = units::Millimetres(slide.number("travel_mm", 0, 2000)),
                           .least = units::Millimetres(slide.number("least_mm", 0, 2000)),
                           .while_playing = slide.flag_or("while_playing", false)};
            if (slide.has("valve")) read.valve = valve_of(slide, "valve", slide.text("valve"), kind_.valves);
            if (kind_.slide(read.id) != nullptr) {
                slide.refuse("id",
                             fmt::format("is \"{}\" a second time; each slide needs its own.", read.id));
            }
            if (std::ranges::find(kind_.slides, read.name, &SlideKind::name) != kind_.slides.end()) {
                slide.refuse(
                    "name",
                    fmt::format("is \"{}\" a second time; sentences tell slides apart by it.", read.name));
            }
            if (read.least > read.designed || read.designed > read.travel) {
                slide.refuse("designed_mm", "must lie from least_mm to travel_mm.");
            }
            kind_.slides.push_back(std::move(read));
        }
        if (kind_.slides.empty()) top_.refuse("slide", "is missing; a kind has at least a main slide.");
    }

    Fingering read_fingering(const KindTable& table, std::string_view key, const std::string& text) const {
        const auto labels = kind_.valve_labels();
        const auto fingering = parse_fingering(text, labels);
        if (!fingering || !kind_.allows(*fingering)) {
            table.refuse(
                key, kind_.hand_slide
                         ? fmt::format("must be a position, with a valve where it is used, such as "
                                       "\"p1\" or \"p2+F\"; this kind's valves: {}.",
                                       labels.empty() ? "none" : fmt::format("{}", fmt::join(labels, ", ")))
                         : fmt::format("must be the valves down, such as \"12\", or \"0\" for none; this "
                                       "kind's valves: {}.",
                                       fmt::join(labels, ", ")));
        }
        return *fingering;
    }

    void refuse_what_does_not_sound(const KindTable& table, std::string_view key, const Fingering& fingering,
                                    units::Pitch note) const {
        if (!sounding_partial(kind_, fingering, note)) {
            table.refuse(key, fmt::format("has a fingering that does not sound {} within 100 cents.",
                                          units::file_name(note)));
        }
    }

    void read_tuning() {
        for (const toml::table* table : top_.tables("tuning")) {
            const KindTable step(*table, file_, "a tuning step", {"slide", "note", "fingering"});
            TuningStep read{step.text("slide"), step.pitch("note"),
                            read_fingering(step, "fingering", step.text("fingering"))};
            const SlideKind* slide = kind_.slide(read.slide);
            if (slide == nullptr) {
                std::vector<std::string> ids;
                for (const SlideKind& each : kind_.slides)
                    ids.push_back(each.id);
                step.refuse("slide",
                            fmt::format("must be one of the kind's slides: {}.", fmt::join(ids, ", ")));
            }
            if (slide->valve && !read.fingering.valves.contains(*slide->valve)) {
                step.refuse("fingering", "does not use the valve of the slide that is to be set by it.");
            }
            refuse_what_does_not_sound(step, "fingering", read.fingering, read.note);
            kind_.tuning_order.push_back(std::move(read));
        }
        if (kind_.tuning_order.empty())
            top_.refuse("tuning", "is missing; a kind has at least one tuning step.");
    }

    void read_checks() {
        for (const toml::table* table : top_.tables("check")) {
            const KindTable check(*table, file_, "a check", {"note", "fingering"});
            const CheckNote read{check.pitch("note"),
                                 read_fingering(check, "fingering", check.text("fingering"))};
            refuse_what_does_not_sound(check, "fingering", read.fingering, read.note);
            kind_.checks.push_back(read);
        }
    }

    void read_readers() {
        const auto clef = std::ranges::find(clefs, kind_.clef, &std::pair<std::string_view, Clef>::second);
        const std::string clef_name(clef->first);
        kind_.readers.push_back({clef_name, clef_name + " clef", kind_.clef, units::Semitones{0}});
        for (const toml::table* table : top_.tables("reader")) {
            const KindTable reader(*table, file_, "a reader",
                                   {"id", "name", "clef", "written_above_semitones"});
            const Reader read{reader.text("id"), reader.text("name"), read_clef(reader),
                              units::Semitones{reader.integer("written_above_semitones", 0, 36)}};
            if (std::ranges::find(kind_.readers, read.id, &Reader::id) != kind_.readers.end()) {
                reader.refuse("id",
                              fmt::format("is \"{}\" a second time; each reader needs its own.", read.id));
            }
            kind_.readers.push_back(read);
        }
    }

    void read_taught() {
        for (const toml::table* table : top_.tables("taught")) {
            const KindTable entry(*table, file_, "a taught fingering", {"note", "fingering"});
            const units::Pitch note = entry.pitch("note");
            const Fingering fingering = read_fingering(entry, "fingering", entry.text("fingering"));
            refuse_what_does_not_sound(entry, "fingering", fingering, note);
            if (!kind_.taught.emplace(note, fingering).second) {
                entry.refuse("note", "comes a second time; give each note once.");
            }
        }
    }

    std::string_view file_;
    KindTable top_;
    HornKind kind_;
};

}  // namespace

HornKind read_kind(std::string_view toml, std::string_view file_name) {
    try {
        const ::toml::table root = ::toml::parse(toml, file_name);
        return KindReader(root, toml, file_name).read();
    } catch (const ::toml::parse_error& error) {
        throw units::Refusal(fmt::format("{}, line {}: this is not TOML: {}.", file_name,
                                         error.source().begin.line, error.description()));
    }
}

}  // namespace lowledger::horns
