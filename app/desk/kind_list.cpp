#include "app/desk/kind_list.h"

#include <algorithm>
#include <array>
#include <utility>

#include "app/desk/desk.h"
#include "app/desk/lists.h"
#include "model/units/note_names.h"
#include "model/units/refusal.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

struct Family {
    /// What the ids of its kinds have in them.
    std::string_view part_of_id;
    Sentence name;
};
/// The first that fits counts: a marching tuba is asked for among the marching horns.
constexpr std::array<Family, 8> families = {{{"marching", Sentence::kinds_family_marching},
                                             {"valve-trombone", Sentence::kinds_family_valve_trombone},
                                             {"cimbasso", Sentence::kinds_family_valve_trombone},
                                             {"sousaphone", Sentence::kinds_family_sousaphone},
                                             {"euphonium", Sentence::kinds_family_euphonium},
                                             {"baritone", Sentence::kinds_family_baritone},
                                             {"trombone", Sentence::kinds_family_trombone},
                                             {"tuba", Sentence::kinds_family_tuba}}};
/// In the order that a list shows them.
constexpr std::array<Sentence, 8> order = {
    Sentence::kinds_family_tuba,      Sentence::kinds_family_sousaphone,
    Sentence::kinds_family_euphonium, Sentence::kinds_family_baritone,
    Sentence::kinds_family_trombone,  Sentence::kinds_family_valve_trombone,
    Sentence::kinds_family_marching,  Sentence::kinds_own};

Sentence family_of(const horns::HornKind& kind) {
    if (horns::find_kind(horns::built_in_kinds(), kind.id) == nullptr) return Sentence::kinds_own;
    for (const auto& family : families)
        if (kind.id.find(family.part_of_id) != std::string::npos) return family.name;
    return Sentence::kinds_own;
}

/// The lowest note that the open horn speaks well: its second partial.
std::string open_note(const horns::HornKind& kind) {
    return words::note_name_with_octave(kind.fundamental + units::Semitones{12}, {});
}

/// Flats as a keyboard has them besides, so that "Bb" finds B♭.
std::string with_typed_flats(const std::string& text) {
    constexpr std::string_view flat = "\u266D";
    std::string typed = text;
    for (auto at = typed.find(flat); at != std::string::npos; at = typed.find(flat, at))
        typed.replace(at, flat.size(), "b");
    return text + " " + typed;
}

}  // namespace

KindsOffered kinds_offered(const Desk& desk) {
    auto read = desk.kinds();
    std::string problem;
    for (const auto& why : read.problems)
        problem += (problem.empty() ? "" : "\n") +
                   desk.words().say(Sentence::kinds_file_refused, {{"problem", why}});
    return {std::move(read.kinds), std::move(problem)};
}

std::string kind_family(const words::Words& words, const horns::HornKind& kind) {
    return words.say(family_of(kind));
}

Listing kinds_listing(const std::vector<horns::HornKind>& kinds, const words::Words& words,
                      std::string_view find) {
    Listing listing;
    listing.columns = {{words.say(Sentence::kinds_family), false, true},
                       {words.say(Sentence::kinds_kind)},
                       {words.say(Sentence::kinds_sounds), false, true}};
    for (const Sentence family : order) {
        for (std::size_t i = 0; i < kinds.size(); ++i) {
            if (family_of(kinds[i]) != family) continue;
            const auto name = words::kind_name(kinds[i]);
            const auto open = open_note(kinds[i]);
            const std::string text = words.say(family).append(" ").append(name).append(" ").append(open);
            if (!found_in(with_typed_flats(text), find)) continue;
            listing.rows.push_back({static_cast<std::int64_t>(i), {words.say(family), name, open}, false});
        }
    }
    return listing;
}

}  // namespace lowledger::desk
