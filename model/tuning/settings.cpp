#include "model/tuning/settings.h"

#include <algorithm>
#include <cmath>

#include "model/tuning/settings_check.h"
#include "model/tuning/settings_worth.h"
#include "model/tuning/slide_search.h"
#include "model/units/refusal.h"

namespace lowledger::tuning {
namespace {

/// Half-width of a 90 % interval of a normal, in standard deviations.
constexpr double ninety_percent = 1.6448536269514722;
/// Positions nearer than this, in mm, are the same.
constexpr double same_place = 1e-6;

bool moved(const SlideProblem& problem, const Positions& at, std::size_t slide) {
    return std::abs(at[slide] - problem.slides[slide].now) > same_place;
}

void hold(SlideProblem& problem, std::size_t slide) {
    SlideProblem::Slide& held = problem.slides[slide];
    held.low = held.high = held.now;
    held.places.clear();
}

/// Where slides stand, best ways.
Found as_they_stand(const SlideProblem& problem) {
    Found now;
    for (const SlideProblem::Slide& slide : problem.slides)
        now.at.push_back(slide.now);
    now.ways = best_ways(problem, now.at);
    now.value = guarded_objective(problem, now.at, now.ways);
    return now;
}

/// The search, and the rule for moving at all. Begins with all slides that the whole optimum moves and leaves
/// out, one by one, the one that is missed least among those whose move adds too little to the others; then
/// as many more as it takes until the moves left are worth it together.
class Recommendation {
  public:
    /// `whole` is the optimum with any position for every slide.
    Recommendation(const SlideProblem& problem, const SettingsQuestion& question, const Found& whole)
        : problem_(problem),
          question_(question),
          now_(as_they_stand(problem)),
          best_(now_),
          chance_(problem.slides.size(), 0.0),
          taken_(problem.slides.size(), false) {
        if (!question.may_move) return;
        if (question.constants.chance_of_better <= 0.0) {
            best_ = minimise(problem_);
            return;
        }
        best_ = whole;
        for (std::size_t i = 0; i < taken_.size(); ++i)
            taken_[i] = moved(problem_, whole.at, i);
        while (leave_out([this](const Worth& move) { return !adds_enough(move); })) {
        }
        settle();
    }

    [[nodiscard]] const Found& best() const { return best_; }
    [[nodiscard]] const Found& now() const { return now_; }
    [[nodiscard]] double chance_of(std::size_t slide) const { return chance_[slide]; }
    [[nodiscard]] Worth all() const {
        return worth(problem_, question_.covariance, {now_.at, now_.ways}, {best_.at, best_.ways});
    }

  private:
    [[nodiscard]] bool falls_enough(const Worth& worth) const {
        return worth.fall >= question_.constants.worth_moving.value();
    }
    [[nodiscard]] bool adds_enough(const Worth& move) const {
        return falls_enough(move) || move.chance >= question_.constants.chance_of_each;
    }
    [[nodiscard]] bool worth_it(const Worth& worth) const {
        return falls_enough(worth) || worth.chance >= question_.constants.chance_of_better;
    }

    /// The teacher wants the band's note at zero: what that takes is not for us to weigh.
    [[nodiscard]] bool asked_for(std::size_t slide) const {
        return question_.held_note &&
               problem_.notes[question_.held_note->note].ways.front().pull[slide] != 0.0;
    }

    /// All slides held but those taken.
    [[nodiscard]] SlideProblem with_taken(std::optional<std::size_t> without = std::nullopt) const {
        SlideProblem problem = problem_;
        for (std::size_t i = 0; i < problem.slides.size(); ++i) {
            if (!taken_[i] || i == without) hold(problem, i);
        }
        return problem;
    }

    /// Leaves out the slide that is missed least among those taken whose move `may_go`. False where there is
    /// none.
    template <typename MayGo>
    bool leave_out(MayGo may_go) {
        std::optional<std::size_t> least;
        Found without_least;
        for (std::size_t i = 0; i < taken_.size(); ++i) {
            if (!taken_[i]) continue;
            const Found without = minimise_near(with_taken(i), best_.at);
            const Worth move =
                worth(problem_, question_.covariance, {without.at, without.ways}, {best_.at, best_.ways}, i);
            chance_[i] = move.chance;
            if (asked_for(i) || !may_go(move)) continue;
            if (!least || without.value < without_least.value) {
                least = i;
                without_least = without;
            }
        }
        if (!least) return false;
        taken_[*least] = false;
        best_ = without_least;
        return true;
    }

    /// Searches the slides taken together; leaves more of them out until what is left is worth it.
    void settle() {
        while (std::ranges::find(taken_, true) != taken_.end()) {
            best_ = minimise_from(with_taken(), best_.at);
            if (question_.held_note || worth_it(all())) return;
            if (!leave_out([](const Worth&) { return true; })) return;
        }
        best_ = now_;
    }

    const SlideProblem& problem_;
    const SettingsQuestion& question_;
    Found now_;
    Found best_;
    std::vector<double> chance_;
    std::vector<bool> taken_;
};

Limit limit_of(const QuestionSlide& slide, double at) {
    if (std::abs(at - slide.travel.value()) < same_place) return Limit::travel;
    if (at < slide.least.value() + same_place) return Limit::least;
    return Limit::none;
}

SlideAnswer slide_answer(const SettingsQuestion& question, const SlideProblem& problem, std::size_t i,
                         const Positions& at) {
    const QuestionSlide& slide = question.slides[i];
    SlideAnswer answer;
    answer.slide = slide.slide;
    answer.now = slide.now;
    answer.least = slide.least;
    answer.travel = slide.travel;
    answer.position_known = slide.position_known;
    const bool moves = moved(problem, at, i);
    answer.recommended = moves ? units::Millimetres(at[i]) : slide.now;
    answer.limit = limit_of(slide, answer.recommended.value());
    answer.advice = slide.fixed ? Advice::fixed : moves ? Advice::move : Advice::leave;
    const acoustics::SlideTube& tube = question.tube.slides[i];
    const acoustics::ValveSet own = tube.valve ? acoustics::ValveSet{*tube.valve} : acoustics::ValveSet{};
    answer.cents_per_mm =
        units::abs(acoustics::pull_slope(tube, own, acoustics::designed_length(question.tube, own)));
    return answer;
}

NoteAnswer note_answer(const QuestionNote& note, const SlideProblem::Note& laid, const SlideProblem& problem,
                       const Found& now, const Found& best, std::size_t way) {
    NoteAnswer answer{note.note, laid.weight, note.ways[way], way == 0, {}, {}};
    answer.lean_before = units::Cents(lean_at(laid.ways.front(), problem, now.at));
    answer.lean_after = units::Cents(lean_at(laid.ways[way], problem, best.at));
    return answer;
}

}  // namespace

bool SlideSettings::anything_moves() const {
    return std::ranges::any_of(slides, [](const SlideAnswer& s) { return s.advice == Advice::move; });
}

units::SquareCents objective(const SettingsQuestion& question,
                             std::span<const units::Millimetres> positions) {
    check(question);
    if (positions.size() != question.slides.size()) {
        throw units::Refusal("The horn has " + std::to_string(question.slides.size()) +
                             " tuning slides; give a position for each, not " +
                             std::to_string(positions.size()) + ".");
    }
    const SlideProblem problem = problem_of(question);
    Positions at;
    for (const units::Millimetres position : positions)
        at.push_back(position.value());
    return units::SquareCents(objective_at(problem, at, best_ways(problem, at)));
}

SlideSettings recommend(const SettingsQuestion& question) {
    check(question);
    SlideProblem problem = problem_of(question);
    const Found whole = cap_mean(problem);
    const Recommendation found(problem, question, whole);
    const Found& best = found.best();
    const Found& now = found.now();
    SlideSettings settings;
    settings.constants = question.constants;
    const auto spread = place_spread(problem, question.covariance, {best.at, best.ways});
    for (std::size_t i = 0; i < question.slides.size(); ++i) {
        settings.slides.push_back(slide_answer(question, problem, i, best.at));
        settings.slides.back().chance_of_better = found.chance_of(i);
        if (spread[i]) settings.slides.back().half_width = units::Millimetres(ninety_percent * *spread[i]);
    }
    for (std::size_t n = 0; n < question.notes.size(); ++n) {
        settings.notes.push_back(
            note_answer(question.notes[n], problem.notes[n], problem, now, best, best.ways[n]));
    }
    settings.objective_before = units::SquareCents(objective_at(problem, now.at, now.ways));
    settings.objective_after = units::SquareCents(objective_at(problem, best.at, best.ways));
    settings.mean_before = units::Cents(mean_size(problem, {now.at, now.ways}));
    settings.mean_after = units::Cents(mean_size(problem, {best.at, best.ways}));
    settings.mean_lean_after = units::Cents(mean_lean(problem, {best.at, best.ways}));
    settings.chance_of_better = found.all().chance;
    return settings;
}

}  // namespace lowledger::tuning
