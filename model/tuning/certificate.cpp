#include "model/tuning/certificate.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <numeric>
#include <optional>
#include <queue>
#include <utility>

#include "model/tuning/box_bound.h"
#include "model/tuning/settings_check.h"
#include "model/tuning/slide_search.h"

namespace lowledger::tuning {
namespace {

/// Of the objective: gaps smaller than this are none.
constexpr double closed_part = 1e-6;
/// Positions nearer than this, in mm, are the same.
constexpr double same_place = 1e-6;

/// The problem that the settings answer: slides that stay are held.
SlideProblem answered_problem(const SettingsQuestion& question, const SlideSettings& settings) {
    SlideProblem problem = problem_of(question);
    cap_mean(problem);
    const bool every_move_is_worth_it = question.may_move && question.constants.chance_of_better <= 0.0;
    for (std::size_t i = 0; i < problem.slides.size(); ++i) {
        if (every_move_is_worth_it || settings.slides[i].advice == Advice::move) continue;
        SlideProblem::Slide& slide = problem.slides[i];
        slide.low = slide.high = slide.now;
        slide.places.clear();
    }
    return problem;
}

/// Best first: the box with the lowest bound is looked at next.
class BranchAndBound {
  public:
    BranchAndBound(const SlideProblem& problem, Positions at, const Choice& ways)
        : problem_(problem), bounding_(problem), best_(std::move(at)) {
        start_value_ = value_ = guarded_objective(problem, best_, ways);
        tolerance_ = 0.5 * closed_part * objective_at(problem, best_, ways);
        lowest_closed_ = value_;
    }

    void run(const std::stop_token& stop, std::size_t most_boxes) {
        SearchBox whole;
        for (const SlideProblem::Slide& slide : problem_.slides) {
            whole.low.push_back(slide.places.empty() ? slide.low : slide.places.front());
            whole.high.push_back(slide.places.empty() ? slide.high : slide.places.back());
        }
        for (const SlideProblem::Note& note : problem_.notes)
            whole.open.push_back((1U << note.ways.size()) - 1U);
        whole.at = best_;
        look_at(std::move(whole));
        while (!boxes_.empty() && looked_at_ < most_boxes && !stop.stop_requested()) {
            if (boxes_.top().box.bound >= value_ - tolerance_) break;
            const Waiting next = boxes_.top();
            boxes_.pop();
            branch(next);
        }
    }

    [[nodiscard]] double bound() const {
        const double waiting = boxes_.empty() ? value_ : boxes_.top().box.bound;
        return std::min({waiting, lowest_closed_, value_});
    }
    [[nodiscard]] std::size_t looked_at() const { return looked_at_; }
    [[nodiscard]] double start_value() const { return start_value_; }
    [[nodiscard]] bool found_better() const { return value_ < start_value_ - tolerance_; }
    [[nodiscard]] const Positions& best() const { return best_; }

  private:
    struct Waiting {
        SearchBox box;
        std::vector<double> slack;
    };
    struct Later {
        bool operator()(const Waiting& a, const Waiting& b) const { return a.box.bound > b.box.bound; }
    };

    void look_at(SearchBox box) {
        ++looked_at_;
        std::vector<double> slack = bounding_.bound(box);
        try_in(box);
        if (box.bound >= value_ - tolerance_) {
            lowest_closed_ = std::min(lowest_closed_, box.bound);
            return;
        }
        boxes_.push({std::move(box), std::move(slack)});
    }

    /// What the box's lowest place gives, on the places where there are some.
    void try_in(const SearchBox& box) {
        Positions at = box.at;
        for (std::size_t i = 0; i < at.size(); ++i) {
            const auto& places = problem_.slides[i].places;
            if (places.empty()) continue;
            at[i] = *std::ranges::min_element(places, {},
                                              [&](double place) { return std::abs(place - box.at[i]); });
        }
        Choice ways = best_ways(problem_, at);
        for (std::size_t n = 0; n < ways.size(); ++n)
            if (std::has_single_bit(box.open[n]))
                ways[n] = static_cast<std::size_t>(std::countr_zero(box.open[n]));
        const double value = guarded_objective(problem_, at, ways);
        if (value < value_) {
            value_ = value;
            best_ = at;
        }
    }

    void branch(const Waiting& waiting) {
        const double all = std::accumulate(waiting.slack.begin(), waiting.slack.end(), 0.0);
        if (all <= 0.0) {
            if (const auto slide = off_its_places(waiting.box))
                split_at_places(waiting.box, *slide);
            else
                // Convex, and bounded where it is lowest: nothing is left to part.
                lowest_closed_ = std::min(lowest_closed_, waiting.box.bound);
            return;
        }
        const auto note = std::ranges::max_element(waiting.slack);
        const auto slide = slide_to_part(waiting);
        // One note that keeps the bound low is settled; many are told apart by their positions.
        constexpr double most_of_it = 0.5;
        if (!slide || *note > most_of_it * all)
            settle(waiting.box, static_cast<std::size_t>(note - waiting.slack.begin()));
        else if (problem_.slides[*slide].places.empty())
            split(waiting.box, *slide);
        else
            split_at_places(waiting.box, *slide);
    }

    /// The slide whose span in the box lets the leans of open notes stray most; empty where all spans are
    /// short.
    [[nodiscard]] std::optional<std::size_t> slide_to_part(const Waiting& waiting) const {
        constexpr double short_span = 0.05;
        std::optional<std::size_t> widest;
        double most = 0.0;
        for (std::size_t i = 0; i < waiting.box.at.size(); ++i) {
            const double span = waiting.box.high[i] - waiting.box.low[i];
            if (span < short_span) continue;
            double strays = 0.0;
            for (std::size_t n = 0; n < problem_.notes.size(); ++n) {
                if (waiting.slack[n] == 0.0) continue;
                double pull = 0.0;
                for (const SlideProblem::Way& way : problem_.notes[n].ways)
                    pull = std::max(pull, way.pull[i] / way.length_now);
                strays += waiting.slack[n] * pull;
            }
            if (span * strays > most) {
                most = span * strays;
                widest = i;
            }
        }
        return widest;
    }

    void split(const SearchBox& box, std::size_t slide) {
        const double span = box.high[slide] - box.low[slide];
        const double at =
            std::clamp(box.at[slide], box.low[slide] + 0.25 * span, box.high[slide] - 0.25 * span);
        SearchBox part = box;
        part.high[slide] = at;
        look_at(std::move(part));
        part = box;
        part.low[slide] = at;
        look_at(std::move(part));
    }

    /// A box for each way that the note may be played.
    void settle(const SearchBox& box, std::size_t note) {
        for (std::size_t w = 0; w < problem_.notes[note].ways.size(); ++w) {
            if (((box.open[note] >> w) & 1U) == 0) continue;
            SearchBox part = box;
            part.open[note] = 1U << w;
            look_at(std::move(part));
        }
    }

    /// The slide furthest from a place of its own.
    [[nodiscard]] std::optional<std::size_t> off_its_places(const SearchBox& box) const {
        std::optional<std::size_t> furthest;
        double most = same_place;
        for (std::size_t i = 0; i < box.at.size(); ++i) {
            const auto& places = problem_.slides[i].places;
            if (places.empty()) continue;
            double off = std::abs(places.front() - box.at[i]);
            for (const double place : places)
                off = std::min(off, std::abs(place - box.at[i]));
            if (off > most) {
                most = off;
                furthest = i;
            }
        }
        return furthest;
    }

    /// Between the places on each side of where the bound lies.
    void split_at_places(const SearchBox& box, std::size_t slide) {
        const auto& places = problem_.slides[slide].places;
        // Below the box's upper end, or one part would be the box itself.
        const double at = std::min(box.at[slide], box.high[slide] - 2.0 * same_place);
        const auto above = std::ranges::upper_bound(places, at);
        if (above != places.begin() && *std::prev(above) >= box.low[slide] - same_place) {
            SearchBox part = box;
            part.high[slide] = *std::prev(above);
            look_at(std::move(part));
        }
        if (above != places.end() && *above <= box.high[slide] + same_place) {
            SearchBox part = box;
            part.low[slide] = *above;
            look_at(std::move(part));
        }
    }

    const SlideProblem& problem_;
    BoxBounding bounding_;
    Positions best_;
    double value_ = 0.0;
    double start_value_ = 0.0;
    double tolerance_ = 0.0;
    /// The lowest bound of the boxes that were put away.
    double lowest_closed_ = 0.0;
    std::size_t looked_at_ = 0;
    std::priority_queue<Waiting, std::vector<Waiting>, Later> boxes_;
};

Choice ways_of(const SettingsQuestion& question, const SlideSettings& settings) {
    Choice ways;
    for (std::size_t n = 0; n < question.notes.size(); ++n) {
        const auto& all = question.notes[n].ways;
        const auto found = std::ranges::find(all, settings.notes[n].way);
        ways.push_back(static_cast<std::size_t>(found - all.begin()));
    }
    return ways;
}

}  // namespace

Certificate certify(const SettingsQuestion& question, const SlideSettings& settings,
                    const std::stop_token& stop, std::size_t most_boxes) {
    check(question);
    const SlideProblem problem = answered_problem(question, settings);
    Positions at;
    for (const SlideAnswer& slide : settings.slides)
        at.push_back(slide.recommended.value());
    BranchAndBound search(problem, at, ways_of(question, settings));
    search.run(stop, most_boxes);
    Certificate certificate;
    certificate.gap = units::SquareCents(std::max(0.0, search.start_value() - search.bound()));
    certificate.bound = settings.objective_after - certificate.gap;
    certificate.closed = certificate.gap.value() <= closed_part * settings.objective_after.value();
    certificate.boxes = search.looked_at();
    if (search.found_better())
        for (const double place : search.best())
            certificate.better.emplace_back(place);
    return certificate;
}

}  // namespace lowledger::tuning
