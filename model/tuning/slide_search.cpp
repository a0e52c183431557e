#include "model/tuning/slide_search.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <set>
#include <utility>

#include "model/tuning/model_step.h"

namespace lowledger::tuning {
namespace {

/// Steps shorter than this, in mm, are none.
constexpr double still = 1e-7;

Positions stepped(const Positions& from, const Positions& step, double part) {
    Positions to(from);
    for (std::size_t i = 0; i < to.size(); ++i)
        to[i] += part * step[i];
    return to;
}

/// Halton's sequence (1960): the `index`-th point of the base.
double halton(unsigned index, unsigned base) {
    double part = 1.0;
    double value = 0.0;
    for (; index > 0; index /= base) {
        part /= base;
        value += part * (index % base);
    }
    return value;
}

/// Where slides stand, the middle and the ends of their travel, and points spread evenly between.
std::vector<Positions> starts(const SlideProblem& problem) {
    constexpr unsigned evenly = 8;
    constexpr unsigned bases[] = {2, 3, 5, 7, 11, 13, 17, 19};
    Positions now;
    for (const SlideProblem::Slide& slide : problem.slides)
        now.push_back(slide.now);
    std::vector<Positions> all{now};
    const auto add = [&](auto part) {
        Positions at;
        for (std::size_t i = 0; i < problem.slides.size(); ++i) {
            const SlideProblem::Slide& slide = problem.slides[i];
            at.push_back(slide.low + part(i) * (slide.high - slide.low));
        }
        all.push_back(at);
    };
    for (const double part : {0.0, 0.5, 1.0})
        add([part](std::size_t) { return part; });
    for (unsigned k = 1; k <= evenly; ++k)
        add([&](std::size_t i) { return halton(k, bases[i % std::size(bases)]); });
    return all;
}

/// The first of them: where slides stand, the ends and the middle.
std::vector<Positions> few_starts(const SlideProblem& problem) {
    constexpr std::size_t few = 4;
    std::vector<Positions> some = starts(problem);
    some.resize(std::min(some.size(), few));
    return some;
}

/// Turns about between the best positions for the ways and the best ways for the positions; remembers what
/// each set of ways led to, so that a way seen before ends a start at once.
class Descent {
  public:
    explicit Descent(const SlideProblem& problem) : problem_(problem) {}

    void from(const Positions& start) { with(best_ways(problem_, start), start); }

    void with(Choice ways, Positions at) {
        while (!found_.contains(ways)) {
            const Found& here = found_.emplace(ways, minimise_with_ways(problem_, ways, at)).first->second;
            at = here.at;
            ways = best_ways(problem_, at);
        }
    }

    /// By value, the best first.
    [[nodiscard]] std::vector<Found> ranked() const {
        std::vector<Found> all;
        for (const auto& [ways, found] : found_)
            all.push_back(found);
        std::ranges::stable_sort(all, {}, &Found::value);
        return all;
    }

  private:
    const SlideProblem& problem_;
    std::map<Choice, Found> found_;
};

/// Searches the places of the slides with the ways fixed: slide by slide, nearest places first, each branch
/// bounded by the optimum of the slides still free.
class PlaceSearch {
  public:
    PlaceSearch(const SlideProblem& problem, const Choice& ways, Found& best)
        : problem_(problem), ways_(ways), best_(best) {}

    void run(const Found& free) { branch(problem_, free, 0); }

  private:
    void branch(const SlideProblem& problem, const Found& free, std::size_t slide) {
        if (free.value >= best_.value) return;
        while (slide < problem.slides.size() && problem.slides[slide].places.empty())
            ++slide;
        if (slide == problem.slides.size()) {
            best_ = free;
            return;
        }
        std::vector<double> places = problem.slides[slide].places;
        std::ranges::sort(places, {}, [&](double place) { return std::abs(place - free.at[slide]); });
        bool below_open = true;
        bool above_open = true;
        for (const double place : places) {
            bool& open = place < free.at[slide] ? below_open : above_open;
            if (!open) continue;
            SlideProblem rest = problem;
            rest.slides[slide].low = rest.slides[slide].high = place;
            Positions start = free.at;
            start[slide] = place;
            const Found bound = minimise_with_ways(rest, ways_, start);
            // Convex: further out on this side is no better.
            if (bound.value >= best_.value) {
                open = false;
            } else {
                branch(rest, bound, slide + 1);
            }
        }
    }

    const SlideProblem& problem_;
    const Choice& ways_;
    Found& best_;
};

/// One step by that model; empty unless it leads lower, whatever the ways are there.
std::optional<Positions> lower_with(const SlideProblem& problem, const Found& from, const LocalModel& model) {
    Positions to = stepped(from.at, model_step(problem, model, from.at), 1.0);
    constexpr double rounding = 1e-12;
    const double lower = from.value * (1.0 - rounding);
    if (best_guarded_objective(problem, to, lower) < lower) return to;
    return std::nullopt;
}

/// Tries every set of ways that differs from those found in one note. True if one of them is better.
bool improve_one_note(const SlideProblem& problem, const Found& found, Descent& descent) {
    bool better = false;
    ModelAt model(problem, found.at, found.ways);
    for (std::size_t n = 0; n < problem.notes.size(); ++n) {
        const std::size_t others = problem.notes[n].weight == 0.0 ? 0 : problem.notes[n].ways.size();
        std::size_t played = found.ways[n];
        for (std::size_t way = 0; way < others; ++way) {
            if (way == found.ways[n]) continue;
            model.change(n, played, way);
            played = way;
            if (const auto lower = lower_with(problem, found, model.model())) {
                descent.from(*lower);
                better = true;
            }
        }
        if (played != found.ways[n]) model.change(n, played, found.ways[n]);
    }
    return better;
}

/// From the best sets of ways found tries every set that differs in one note, until none of them is better.
void improve_note_by_note(const SlideProblem& problem, Descent& descent) {
    constexpr std::size_t most_sets = 8;
    std::set<Choice> tried;
    for (bool better = true; better;) {
        better = false;
        std::vector<Found> best = descent.ranked();
        best.resize(std::min(best.size(), most_sets));
        for (const Found& found : best)
            if (tried.insert(found.ways).second && improve_one_note(problem, found, descent)) better = true;
    }
}

std::vector<Found> all_descents(const SlideProblem& problem) {
    Descent descent(problem);
    for (const Positions& start : starts(problem))
        descent.from(start);
    improve_note_by_note(problem, descent);
    return descent.ranked();
}

bool on_places(const SlideProblem& problem) {
    return std::ranges::any_of(problem.slides, [](const auto& slide) { return !slide.places.empty(); });
}

Found best_of(const SlideProblem& problem, const std::vector<Found>& ranked) {
    if (!on_places(problem)) return ranked.front();
    Found best;
    best.value = std::numeric_limits<double>::infinity();
    for (const Found& free : ranked) {
        if (free.value >= best.value) break;
        PlaceSearch(problem, free.ways, best).run(free);
    }
    // Between places other ways may be better: go on until the ways stay.
    for (Choice ways = best_ways(problem, best.at); ways != best.ways; ways = best_ways(problem, best.at)) {
        const double before = best.value;
        const Found free = minimise_with_ways(problem, ways, best.at);
        PlaceSearch(problem, ways, best).run(free);
        if (best.value >= before) break;
    }
    return best;
}

}  // namespace

Found minimise_with_ways(const SlideProblem& problem, const Choice& ways, Positions start) {
    for (std::size_t i = 0; i < start.size(); ++i)
        start[i] = std::clamp(start[i], problem.slides[i].low, problem.slides[i].high);
    Found here{std::move(start), ways, 0.0};
    here.value = guarded_objective(problem, here.at, ways);
    constexpr int most_steps = 100;
    for (int k = 0; k < most_steps; ++k) {
        const LocalModel model = local_model(problem, here.at, ways);
        const Positions step = model_step(problem, model, here.at);
        double longest = 0.0;
        for (const double part : step)
            longest = std::max(longest, std::abs(part));
        if (longest < still) break;
        bool better = false;
        for (double part = 1.0; part > 1e-6 && !better; part *= 0.5) {
            Positions to = stepped(here.at, step, part);
            const double value = guarded_objective(problem, to, ways);
            better = value < here.value;
            if (better) {
                here.at = std::move(to);
                here.value = value;
            }
        }
        if (!better) break;
    }
    return here;
}

Found minimise(const SlideProblem& problem) {
    return best_of(problem, all_descents(problem));
}

Found minimise_from(const SlideProblem& problem, const Positions& start) {
    Descent descent(problem);
    descent.from(start);
    for (const Positions& other : few_starts(problem))
        descent.from(other);
    improve_note_by_note(problem, descent);
    return best_of(problem, descent.ranked());
}

Found minimise_anywhere(const SlideProblem& problem) {
    return all_descents(problem).front();
}

Found cap_mean(SlideProblem& problem) {
    Found free = minimise_anywhere(problem);
    problem.mean_ways = free.ways;
    if (capped_mean(problem, free.at) <= problem.most_mean_sharp) return free;
    return minimise_anywhere(problem);
}

Found minimise_near(const SlideProblem& problem, const Positions& start) {
    Descent descent(problem);
    descent.from(start);
    return descent.ranked().front();
}

}  // namespace lowledger::tuning
