#include "reports/engraving/staff.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace lowledger::engraving {
namespace {

using units::Letter;
using units::Spelling;

constexpr std::array<Letter, 7> order_of_sharps = {Letter::f, Letter::c, Letter::g, Letter::d,
                                                   Letter::a, Letter::e, Letter::b};
constexpr double octave_stem = 3.5;

/// The note that the clef's sign names.
Spelling note_of_clef(horns::Clef clef) {
    switch (clef) {
        case horns::Clef::bass:
            return {Letter::f, 0, 3};
        case horns::Clef::treble:
            return {Letter::g, 0, 4};
        case horns::Clef::tenor:
        case horns::Clef::alto:
            break;
    }
    return {Letter::c, 0, 4};
}

/// The highest position that a key's accidentals may take in a clef (common practice; sharps in the tenor
/// clef start low, so that they have one ceiling with its flats).
int highest_key_position(horns::Clef clef, bool sharps) {
    switch (clef) {
        case horns::Clef::treble:
            return sharps ? 9 : 7;
        case horns::Clef::alto:
            return sharps ? 8 : 6;
        case horns::Clef::bass:
            return sharps ? 7 : 5;
        case horns::Clef::tenor:
            break;
    }
    return 8;
}

}  // namespace

StaffPosition line_of_clef(horns::Clef clef) {
    switch (clef) {
        case horns::Clef::treble:
            return {2};
        case horns::Clef::alto:
            return {4};
        case horns::Clef::bass:
        case horns::Clef::tenor:
            break;
    }
    return {6};
}

StaffPosition position_of(horns::Clef clef, const Spelling& spelling) {
    return {line_of_clef(clef).half_spaces + spelling.diatonic_step() - note_of_clef(clef).diatonic_step()};
}

std::vector<StaffPosition> ledger_lines(StaffPosition note) {
    std::vector<StaffPosition> lines;
    for (int p = bottom_line.half_spaces - 2; p >= note.half_spaces; p -= 2)
        lines.push_back({p});
    for (int p = top_line.half_spaces + 2; p <= note.half_spaces; p += 2)
        lines.push_back({p});
    return lines;
}

bool reads_better_8va_bassa(StaffPosition note) {
    constexpr std::size_t most_ledger_lines = 4;
    return note < bottom_line && ledger_lines(note).size() > most_ledger_lines;
}

bool stem_goes_up(StaffPosition note) {
    return note < middle_line;
}

StaffSpaces stem_length(StaffPosition note) {
    const double to_middle = std::abs(note.half_spaces - middle_line.half_spaces) / 2.0;
    return StaffSpaces(std::max(octave_stem, to_middle));
}

int alteration_in(KeySignature key, Letter letter) {
    const auto place = std::find(order_of_sharps.begin(), order_of_sharps.end(), letter);
    const auto rank = static_cast<int>(place - order_of_sharps.begin());
    if (rank < key.fifths) return 1;
    if (6 - rank < -key.fifths) return -1;
    return 0;
}

std::vector<StaffPosition> key_positions(horns::Clef clef, KeySignature key) {
    std::vector<StaffPosition> positions;
    const bool sharps = key.fifths > 0;
    const int highest = highest_key_position(clef, sharps);
    for (int i = 0; i < std::min(std::abs(key.fifths), 7); ++i) {
        const auto rank = static_cast<std::size_t>(sharps ? i : 6 - i);
        int p = position_of(clef, {order_of_sharps.at(rank), 0, 9}).half_spaces;
        while (p > highest)
            p -= 7;
        positions.push_back({p});
    }
    return positions;
}

}  // namespace lowledger::engraving
