#include "reports/pages/watch_list.h"

#include <array>

#include "model/units/number_text.h"
#include "reports/words/names.h"
#include "reports/words/tuning_words.h"

namespace lowledger::pages {
namespace {

using tuning::RemainingNote;
using tuning::Remedy;
using words::Sentence;
using words::Speech;

struct GroupKind {
    Remedy remedy;
    /// Which notes: sharp ones, flat ones, or both where the sentence is the same.
    enum class Side { sharp, flat, both } side;
    Sentence label;
    Sentence text;
};

constexpr std::array<GroupKind, 9> group_kinds = {{
    {Remedy::hand_slide, GroupKind::Side::sharp, Sentence::watch_slide, Sentence::watch_slide_out},
    {Remedy::hand_slide, GroupKind::Side::flat, Sentence::watch_slide, Sentence::watch_slide_in},
    {Remedy::slide_while_playing, GroupKind::Side::both, Sentence::watch_while_playing,
     Sentence::watch_while_playing_how},
    {Remedy::other_fingering, GroupKind::Side::both, Sentence::watch_horn, Sentence::watch_horn_how},
    {Remedy::air, GroupKind::Side::sharp, Sentence::watch_air, Sentence::watch_air_sharp},
    {Remedy::air, GroupKind::Side::flat, Sentence::watch_air, Sentence::watch_air_flat},
    {Remedy::embouchure, GroupKind::Side::sharp, Sentence::watch_lips, Sentence::watch_lips_sharp},
    {Remedy::embouchure, GroupKind::Side::flat, Sentence::watch_lips, Sentence::watch_lips_flat},
    {Remedy::beyond_player, GroupKind::Side::both, Sentence::watch_teacher, Sentence::watch_teacher_how},
}};

bool belongs(const RemainingNote& note, const GroupKind& kind) {
    if (note.next != kind.remedy) return false;
    const bool sharp = note.lean > units::Cents(0.0);
    return kind.side == GroupKind::Side::both || sharp == (kind.side == GroupKind::Side::sharp);
}

std::string listed(const Speech& speech, const tuning::Remains& remains, const RemainingNote& note) {
    const std::string name = words::told_apart(speech, remains, note.note);
    if (note.next == Remedy::other_fingering && note.instead) {
        return speech.words.say(
            Sentence::watch_note_instead,
            {{"note", name}, {"fingering", words::fingering_label(speech.kind, *note.instead)}});
    }
    if (note.next == Remedy::slide_while_playing && note.slide && note.slide_by) {
        const auto* const slide = speech.kind.slide(*note.slide);
        return speech.words.say(Sentence::watch_note_pulled,
                                {{"note", name},
                                 {"slide", slide != nullptr ? slide->name : *note.slide},
                                 {"length", words::millimetres_text(*note.slide_by)}});
    }
    if (note.next == Remedy::hand_slide && note.slide_by) {
        return speech.words.say(Sentence::watch_note_slide,
                                {{"note", name},
                                 {"fingering", words::fingering_label(speech.kind, note.fingering)},
                                 {"length", units::signed_text(note.slide_by->value(), 0, true)}});
    }
    return speech.words.say(Sentence::watch_note,
                            {{"note", name},
                             {"fingering", words::fingering_label(speech.kind, note.fingering)},
                             {"cents", words::cents_text(note.lean)}});
}

}  // namespace

std::vector<WatchGroup> watch_groups(const Speech& speech, const tuning::Remains& remains, std::size_t most) {
    std::vector<WatchGroup> groups;
    for (const GroupKind& kind : group_kinds) {
        std::string notes;
        std::size_t named = 0;
        int more = 0;
        for (const auto& note : remains.notes) {
            if (!belongs(note, kind)) continue;
            if (named == most) {
                ++more;
                continue;
            }
            if (named++ > 0) notes += ", ";
            notes += listed(speech, remains, note);
        }
        if (named == 0) continue;
        if (more > 0) {
            notes = speech.words.say_counted(Sentence::watch_and_more_one, Sentence::watch_and_more_many,
                                             more, {{"notes", notes}});
        }
        groups.push_back({speech.words.say(kind.label), speech.words.say(kind.text, {{"notes", notes}})});
    }
    return groups;
}

}  // namespace lowledger::pages
