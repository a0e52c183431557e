#include "model/tuning/slide_places.h"

#include <algorithm>

#include "model/horns/hand_slide.h"

namespace lowledger::tuning {
namespace {

/// What the home position does to a note, with what the player takes back.
units::Cents change_by_home(const horns::HornKind& kind, const ProfileNote& note, double kappa,
                            units::Millimetres home) {
    return (1.0 - kappa) * horns::change_by_hand_slide(kind, note.fingering, home);
}

PlaceOnSlide place_of(const horns::HornKind& kind, const ProfileNote& note, units::Cents lean,
                      units::Millimetres home) {
    const units::Millimetres end = *kind.hand_slide;
    const units::Millimetres plain = horns::plain_position(kind, note.fingering) + home;
    const units::Millimetres wanted = plain + horns::slide_offset(kind, note.fingering, lean);
    PlaceOnSlide place{note.note, note.fingering, note.partial, plain};
    place.out = std::clamp(wanted, units::Millimetres(0.0), end);
    place.reach = wanted < units::Millimetres(0.0) ? Reach::closed : wanted > end ? Reach::end : Reach::there;
    if (place.reach != Reach::there)
        place.left = lean + horns::change_by_hand_slide(kind, note.fingering, place.out - plain);
    return place;
}

}  // namespace

units::Cents as_played_after(const horns::HornKind& kind, const ProfileNote& note, const MovedLeans& moved,
                             double kappa, units::Millimetres home) {
    return note.mean + moved.as_played(note.fingering) + change_by_home(kind, note, kappa, home);
}

std::vector<PlaceOnSlide> places_on_slide(const TuningInputs& inputs, const TuningProfile& profile,
                                          const SettingsQuestion& question, const SlideSettings& settings) {
    std::vector<PlaceOnSlide> places;
    if (!inputs.kind.hand_slide) return places;
    const double kappa = profile.correction.part;
    const units::Millimetres home = question.constants.hand_slide_home;
    const MovedLeans moved(question, settings, kappa);
    for (const ProfileNote& note : profile.notes) {
        if (!note.usual || !inputs.kind.usual_range.contains(note.note)) continue;
        const units::Cents lean =
            note.placed + moved.as_played(note.fingering) + change_by_home(inputs.kind, note, kappa, home);
        places.push_back(place_of(inputs.kind, note, lean, home));
    }
    return places;
}

}  // namespace lowledger::tuning
