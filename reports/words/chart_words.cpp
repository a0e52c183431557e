#include "reports/words/chart_words.h"

#include <algorithm>

#include "model/horns/hand_slide.h"
#include "model/units/note_names.h"
#include "model/units/number_text.h"
#include "reports/words/names.h"

namespace lowledger::words {
namespace {

using horns::ChartNote;
using horns::UsualBecause;
using horns::Way;

std::string figure(const Speech& speech, const Way& way) {
    return fingering_figure(speech.kind, way.fingering);
}

void add_item(std::string& list, const std::string& item) {
    if (!list.empty()) list += ", ";
    list += item;
}

/// A note with its usual way and, in brackets, the one that ranks first.
std::string item(const Speech& speech, const ChartNote& note) {
    return speech.words.say(Sentence::chart_item, {{"note", note_name_with_octave(note.note, speech.style)},
                                                   {"usual", figure(speech, note.usual)},
                                                   {"first", figure(speech, note.alternates.front())}});
}

Sentence sentence_of(const Speech& speech, UsualBecause because) {
    if (because == UsualBecause::easier_hands) return Sentence::chart_why_easier;
    if (because == UsualBecause::taught) return Sentence::chart_why_taught;
    return speech.kind.hand_slide ? Sentence::chart_why_partials_slide : Sentence::chart_why_partials;
}

Sentence sentence_of_note(const Speech& speech, UsualBecause because) {
    if (because == UsualBecause::easier_hands) return Sentence::chart_note_easier;
    if (because == UsualBecause::taught) return Sentence::chart_note_taught;
    return speech.kind.hand_slide ? Sentence::chart_note_partials_slide : Sentence::chart_note_partials;
}

/// How far past the end of the slide the way would lie.
units::Millimetres past_end(const horns::HornKind& kind, const Way& way) {
    return horns::plain_position(kind, way.fingering) + horns::slide_offset(kind, way.fingering, way.lean) -
           *kind.hand_slide;
}

}  // namespace

std::string both_written_names(const Speech& speech, units::Pitch note) {
    std::string first = note_name(note, speech.style);
    const units::Pitch written = note + speech.style.reader.written_above;
    for (const auto accidentals : {units::Accidentals::flats, units::Accidentals::sharps}) {
        const std::string other = units::note_name(units::spell(written, accidentals), speech.style.naming);
        if (other != first) return first.append("/").append(other);
    }
    return first;
}

std::string slide_move(const horns::HornKind& kind, const horns::Fingering& fingering, units::Cents lean) {
    constexpr units::Millimetres rounding(0.5);
    if (!kind.hand_slide) return {};
    const units::Millimetres move = horns::slide_offset(kind, fingering, lean);
    if (horns::plain_position(kind, fingering) + move < -rounding) return {};
    return units::signed_text(move.value(), 0, true);
}

std::string written_sentence(const Speech& speech) {
    if (!horns::calls_notes_otherwise(speech.style.reader))
        return speech.words.say(Sentence::chart_written, {{"reader", speech.style.reader.name}});
    return speech.words.say(Sentence::chart_written_tuner,
                            {{"reader", speech.style.reader.name},
                             {"written", note_name(speech.kind.band_note, speech.style)},
                             {"sounding", tuner_name(speech.kind.band_note, speech.style)}});
}

std::string usual_sentence(const Speech& speech, const ChartNote& note) {
    if (note.because == UsualBecause::ranks_first) return speech.words.say(Sentence::chart_note_first);
    return speech.words.say(sentence_of_note(speech, note.because),
                            {{"first", figure(speech, note.alternates.front())}});
}

std::vector<std::string> usual_sentences(const Speech& speech, std::span<const ChartNote> chart) {
    std::vector<std::string> sentences;
    for (const UsualBecause because :
         {UsualBecause::easier_hands, UsualBecause::chart_partials, UsualBecause::taught}) {
        std::string notes;
        for (const ChartNote& note : chart)
            if (note.because == because) add_item(notes, item(speech, note));
        if (!notes.empty())
            sentences.push_back(speech.words.say(sentence_of(speech, because), {{"notes", notes}}));
    }
    return sentences;
}

std::string false_tones_sentence(const Speech& speech, std::span<const ChartNote> chart) {
    std::string notes;
    for (const ChartNote& note : chart) {
        if (note.usual.tone != horns::Tone::false_tone) continue;
        add_item(notes, note_name_with_octave(note.note, speech.style) + " " + figure(speech, note.usual));
    }
    return notes.empty() ? notes : speech.words.say(Sentence::chart_false_tones, {{"notes", notes}});
}

std::vector<std::string> reach_sentences(const Speech& speech) {
    const horns::HornKind& kind = speech.kind;
    const units::Pitch low =
        kind.hand_slide ? std::min(kind.fundamental, kind.usual_range.low) : kind.usual_range.low;
    std::string beyond;
    std::string nowhere;
    for (int midi = low.midi(); midi <= kind.usual_range.high.midi(); ++midi) {
        const units::Pitch note(midi);
        const auto ways = horns::possible_fingerings(kind, note);
        if (ways.empty()) {
            add_item(nowhere, note_name_with_octave(note, speech.style));
        } else if (!ways.front().within_reach) {
            add_item(beyond, speech.words.say(Sentence::chart_too_far,
                                              {{"note", note_name_with_octave(note, speech.style)},
                                               {"way", figure(speech, ways.front())},
                                               {"length", millimetres_text(past_end(kind, ways.front()))}}));
        }
    }
    std::vector<std::string> sentences;
    if (!beyond.empty())
        sentences.push_back(speech.words.say(Sentence::chart_out_of_reach, {{"notes", beyond}}));
    if (!nowhere.empty())
        sentences.push_back(speech.words.say(
            kind.hand_slide ? Sentence::chart_no_way_slide : Sentence::chart_no_way, {{"notes", nowhere}}));
    return sentences;
}

}  // namespace lowledger::words
