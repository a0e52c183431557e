#include "model/tuning/predictions.h"

namespace lowledger::tuning {
namespace {

Prediction predict(const Evidence& evidence, const std::vector<WayToPlay>& ways, const Shares& shares,
                   double corrects_more, bool as_played) {
    const PlayerOnHorn& own = evidence.own();
    Prediction all;
    for (const WayToPlay& way : ways) {
        const Playing today{way.note, way.fingering, way.partial, own.today.at};
        all.terms.push_back(own.model.terms(today, shares, evidence.mouthpiece));
        Terms& terms = all.terms.back();
        add_places_today(terms, own, today, shares.horn);
        const units::Cents lean = own.model.acoustic_lean(today);
        units::Cents expected = shares.horn * lean;
        if (as_played) {
            Playing first = today;
            first.positions = own.first_at;
            const units::Cents moved = lean - own.model.acoustic_lean(first);
            own.model.add(terms, {TermKind::correction}, -moved.value());
            expected += corrects_more * moved;
        }
        all.expected.push_back(expected.value());
    }
    return all;
}

}  // namespace

Predictions predictions_of(const Evidence& evidence, const std::vector<WayToPlay>& ways,
                           double corrects_more) {
    const LevelFigures& level = evidence.own().model.level();
    const double horn = horn_share(level.kappa, corrects_more);
    // A slack or tight embouchure that the teacher still works on is not all given to the slides.
    const double gamma = level.gamma;
    return {.as_played = predict(evidence, ways, {horn, 1.0, 1.0, 1.0, 1.0}, corrects_more, true),
            .placed = predict(evidence, ways, {horn, 1.0, 1.0, 1.0, 0.0}, corrects_more, true),
            .for_slides = predict(evidence, ways, {1.0, gamma, 0.0, 0.0, 0.0}, corrects_more, false),
            .aim = predict(evidence, ways, {horn, 1.0, 1.0, 0.0, 0.0}, corrects_more, true)};
}

}  // namespace lowledger::tuning
