#include "tests/truth/known.h"

namespace lowledger::truth {
namespace {

/// Every lean known, every move worth it, any position.
void know(tuning::SettingsQuestion& question, const TrueLean& lean) {
    for (tuning::QuestionNote& note : question.notes) {
        for (tuning::PlayedNote& way : note.ways) {
            way.mean = lean({note.note, way.fingering, way.partial});
            way.spread = units::Cents(0.0);
        }
    }
    question.covariance.clear();
    question.may_move = true;
    question.constants.step = units::Millimetres(0.0);
    question.constants.chance_of_better = 0.0;
}

/// Further than any slide goes; slides are moved out so far first, as none may stand below zero.
constexpr units::Millimetres far(500.0);

}  // namespace

TrueLean true_leans(const World& world, const Places& written_now, int mouthpiece) {
    return [&world, truly = world.truly(written_now), mouthpiece](const Played& played) {
        return world.answered(played, truly, mouthpiece);
    };
}

tuning::SlideSettings settings_knowing_all(tuning::SettingsQuestion question, const TrueLean& lean) {
    know(question, lean);
    return tuning::recommend(question);
}

Places where_they_belong(tuning::SettingsQuestion question, const tuning::SlideSettings& settings,
                         const TrueLean& lean) {
    for (std::size_t n = 0; n < question.notes.size(); ++n) {
        question.notes[n].ways = {settings.notes[n].way};
        question.notes[n].ways.front().penalty = units::SquareCents(0.0);
    }
    for (std::size_t i = 0; i < question.slides.size(); ++i) {
        question.tube.slides[i].designed += far;
        question.slides[i].now += far;
        question.slides[i].least = units::Millimetres(0.0);
        question.slides[i].travel = 2.0 * far;
    }
    question.constants.cost_per_cent_moved = 1e-9;
    know(question, lean);
    Places places = recommended(tuning::recommend(question));
    for (auto& [slide, at] : places)
        at -= far;
    return places;
}

Places recommended(const tuning::SlideSettings& settings) {
    Places places;
    for (const tuning::SlideAnswer& slide : settings.slides)
        places[slide.slide] = slide.recommended;
    return places;
}

}  // namespace lowledger::truth
