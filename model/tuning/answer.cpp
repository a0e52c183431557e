#include "model/tuning/answer.h"

#include "model/tuning/belief.h"
#include "model/tuning/both_mains.h"
#include "model/tuning/families.h"
#include "model/tuning/make_card.h"
#include "model/tuning/next_note.h"
#include "model/tuning/notes_for_slides.h"
#include "model/tuning/question.h"
#include "model/tuning/slide_places.h"
#include "model/tuning/tubes_off.h"
#include "model/tuning/what_remains.h"

namespace lowledger::tuning {

TuningAnswer answer(const TuningInputs& inputs, const Figures& figures) {
    check_inputs(inputs);
    Belief belief = believe(inputs, figures);
    TuningAnswer answer;
    answer.enough = enough_readings(inputs);
    answer.question = question_of(inputs, belief.profile, answer.enough, figures);
    answer.settings = recommend(answer.question);
    answer.card = card_of(inputs, belief, answer.question, answer.settings, figures);
    if (answer.enough.tuning_notes_in()) {
        answer.remains = remains_of(inputs, belief.profile, answer.question, answer.settings, figures);
    }
    answer.places_on_slide = places_on_slide(inputs, belief.profile, answer.question, answer.settings);
    answer.next_note = next_note(inputs, belief, answer.question, answer.settings, answer.enough);
    if (answer.enough.tuning_notes_in())
        answer.both_mains = both_mains(belief.profile, answer.question, answer.settings);
    answer.notes_for_slides = notes_for_slides(inputs, belief, answer.question, answer.settings);
    if (answer.enough.tuning_notes_in()) answer.tubes_off = tubes_off(answer.question, answer.settings);
    if (answer.enough.tuning_notes_in()) answer.families = family_rules(answer.question, answer.settings);
    answer.profile = std::move(belief.profile);
    return answer;
}

}  // namespace lowledger::tuning
