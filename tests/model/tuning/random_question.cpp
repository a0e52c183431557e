#include "tests/model/tuning/random_question.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace lowledger::tuning {
namespace {

using units::Cents;
using units::Millimetres;

class Draw {
  public:
    explicit Draw(unsigned seed) : random_(seed) {}
    double between(double low, double high) {
        // Not the library's distributions: their values differ from one standard library to another.
        const double part = static_cast<double>(random_() >> 5U) / static_cast<double>(1U << 27U);
        return low + part * (high - low);
    }
    int whole(int low, int high) {
        return low + static_cast<int>(random_() % static_cast<unsigned>(high - low + 1));
    }

  private:
    std::mt19937 random_;
};

acoustics::Tube draw_tube(Draw& draw) {
    acoustics::Tube tube;
    tube.open = Millimetres(draw.between(2800.0, 6000.0));
    const int valves = draw.whole(2, 5);
    const double lowering[] = {200, 100, 316, 500, 260};
    tube.slides.push_back({std::nullopt, 2.0, draw.between(0.9, 1.1), Millimetres(15.0)});
    for (int v = 1; v <= valves; ++v) {
        tube.valves.push_back(
            acoustics::ideal_valve_tube(tube.open, Cents(lowering[v - 1] + draw.between(-8.0, 8.0))));
        tube.slides.push_back({v, 2.0, draw.between(0.9, 1.1), Millimetres(10.0)});
    }
    return tube;
}

QuestionSlide draw_slide(Draw& draw, std::size_t number) {
    QuestionSlide slide;
    slide.slide = "slide " + std::to_string(number);
    slide.least = Millimetres(draw.between(1.0, 5.0));
    slide.travel = slide.least + Millimetres(draw.between(15.0, 80.0));
    slide.now = slide.least + draw.between(0.0, 1.0) * (slide.travel - slide.least);
    slide.fixed = draw.whole(0, 9) == 0;
    return slide;
}

PlayedNote draw_way(Draw& draw, int valves, double penalty) {
    PlayedNote way;
    for (int v = 1; v <= valves; ++v) {
        if (draw.whole(0, 2) == 0) way.fingering.valves = way.fingering.valves.with(v);
    }
    way.partial = draw.whole(2, 8);
    way.mean = Cents(draw.between(-40.0, 40.0));
    way.spread = Cents(draw.whole(0, 5) == 0 ? 0.0 : draw.between(0.5, 12.0));
    way.penalty = units::SquareCents(penalty);
    return way;
}

/// What a hand slide adds in a plain position: semitones of the length as designed.
double hand_slide_tube(const acoustics::Tube& tube, const horns::Fingering& fingering) {
    if (fingering.position <= 1) return 0.0;
    const double closed = acoustics::designed_length(tube, fingering.valves).value();
    return closed * (std::exp2((fingering.position - 1) / 12.0) - 1.0);
}

}  // namespace

SettingsQuestion random_question(unsigned seed) {
    Draw draw(seed);
    SettingsQuestion question;
    question.tube = draw_tube(draw);
    for (std::size_t i = 0; i < question.tube.slides.size(); ++i)
        question.slides.push_back(draw_slide(draw, i));
    const int valves = static_cast<int>(question.tube.valves.size());
    const int notes = draw.whole(3, 30);
    for (int n = 0; n < notes; ++n) {
        QuestionNote note{units::Pitch(30 + n), draw.between(0.1, 1.0), {draw_way(draw, valves, 0.0)}};
        while (draw.whole(0, 3) == 0 && note.ways.size() < 3)
            note.ways.push_back(draw_way(draw, valves, 25.0));
        question.notes.push_back(note);
    }
    question.constants.flat_weight = draw.whole(0, 1) == 0 ? 1.0 : 1.5;
    question.constants.chance_of_better = 0.0;
    question.constants.step = Millimetres(0.0);
    question.constants.most_mean_sharp = Cents(1000.0);
    return question;
}

PlainObjective::PlainObjective(const SettingsQuestion& question)
    : flat_weight_(question.constants.flat_weight) {
    std::vector<Millimetres> now;
    for (std::size_t i = 0; i < question.slides.size(); ++i) {
        now.push_back(question.slides[i].now);
        now_.push_back(question.slides[i].now.value());
        const acoustics::SlideTube& slide = question.tube.slides[i];
        double own = question.tube.open.value();
        if (slide.valve) own += question.tube.valves[static_cast<std::size_t>(*slide.valve - 1)].value();
        const double slope = 1200.0 / std::numbers::ln2 * slide.legs * slide.bore / own;
        moving_cost_.push_back(question.constants.cost_per_cent_moved * slope);
    }
    double total = 0.0;
    for (const QuestionNote& note : question.notes)
        total += note.weight;
    for (const QuestionNote& note : question.notes) {
        std::vector<Way>& ways = notes_.emplace_back();
        for (const PlayedNote& way : note.ways) {
            ways.push_back({note.weight / total,
                            way.mean.value(),
                            way.spread.value(),
                            way.penalty.value(),
                            acoustics::sounding_length(question.tube, way.fingering.valves, now).value() +
                                hand_slide_tube(question.tube, way.fingering),
                            {}});
            for (const acoustics::SlideTube& slide : question.tube.slides) {
                const bool acts = !slide.valve || way.fingering.valves.contains(*slide.valve);
                ways.back().pull.push_back(acts ? slide.legs * slide.bore : 0.0);
            }
        }
    }
}

double PlainObjective::lean(const Way& way, const std::vector<double>& positions) const {
    double extra = 0.0;
    for (std::size_t i = 0; i < positions.size(); ++i)
        extra += way.pull[i] * (positions[i] - now_[i]);
    return way.mean - 1200.0 * std::log2(1.0 + extra / way.length);
}

double PlainObjective::operator()(const std::vector<double>& positions) const {
    double sum = 0.0;
    for (std::size_t i = 0; i < positions.size(); ++i)
        sum += moving_cost_[i] * std::abs(positions[i] - now_[i]);
    for (const std::vector<Way>& ways : notes_) {
        double best = INFINITY;
        for (const Way& way : ways) {
            best = std::min(
                best, expected_cost(Cents(lean(way, positions)), Cents(way.spread), flat_weight_).value() +
                          way.penalty);
        }
        sum += ways.front().weight * best;
    }
    return sum;
}

double PlainObjective::mean_lean(const std::vector<double>& positions) const {
    double sum = 0.0;
    for (const std::vector<Way>& ways : notes_) {
        const auto cost = [&](const Way& way) {
            return expected_cost(Cents(lean(way, positions)), Cents(way.spread), flat_weight_).value() +
                   way.penalty;
        };
        const auto best = std::ranges::min_element(ways, {}, cost);
        sum += best->weight * lean(*best, positions);
    }
    return sum;
}

std::vector<double> positions_now(const SettingsQuestion& question) {
    std::vector<double> positions;
    for (const QuestionSlide& slide : question.slides)
        positions.push_back(slide.now.value());
    return positions;
}

std::vector<double> positions_recommended(const SlideSettings& settings) {
    std::vector<double> positions;
    for (const SlideAnswer& slide : settings.slides)
        positions.push_back(slide.recommended.value());
    return positions;
}

}  // namespace lowledger::tuning
