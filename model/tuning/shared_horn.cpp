#include "model/tuning/shared_horn.h"

#include <algorithm>
#include <cmath>

#include "model/tuning/settings_check.h"
#include "model/tuning/settings_worth.h"
#include "model/tuning/slide_search.h"
#include "model/units/refusal.h"

namespace lowledger::tuning {
namespace {

/// The horn without what each one's readings say of how its slides act.
acoustics::Tube as_built(acoustics::Tube tube) {
    for (acoustics::SlideTube& slide : tube.slides)
        slide.bore = 1.0;
    return tube;
}

void check_shared(const std::vector<SettingsQuestion>& players) {
    if (players.empty()) throw units::Refusal("A shared horn needs at least one player's readings.");
    for (const SettingsQuestion& player : players) {
        check(player);
        if (player.held_note)
            throw units::Refusal("A shared horn has no one band note at zero; leave that choice out.");
        if (as_built(player.tube) != as_built(players.front().tube))
            throw units::Refusal("The players' readings are of different horns; give those of one horn.");
        for (std::size_t i = 0; i < player.slides.size(); ++i) {
            if (player.slides[i].now != players.front().slides[i].now) {
                throw units::Refusal(
                    "The slide '" + player.slides[i].slide +
                    "' stands in two places for two players of one horn; say where it stands "
                    "today.");
            }
        }
    }
}

/// Every question with the narrowest limits of all and the first one's constants.
std::vector<SettingsQuestion> with_shared_limits(std::vector<SettingsQuestion> players) {
    for (std::size_t i = 0; i < players.front().slides.size(); ++i) {
        QuestionSlide narrow = players.front().slides[i];
        for (const SettingsQuestion& player : players) {
            const QuestionSlide& slide = player.slides[i];
            narrow.least = std::max(narrow.least, slide.least);
            narrow.travel = std::min(narrow.travel, slide.travel);
            narrow.fixed = narrow.fixed || slide.fixed;
            narrow.position_known = narrow.position_known && slide.position_known;
        }
        for (SettingsQuestion& player : players)
            player.slides[i] = narrow;
    }
    const SettingsConstants constants = players.front().constants;
    for (SettingsQuestion& player : players) {
        player.constants = constants;
        check(player);
    }
    return players;
}

/// The joint problem's slide of each player's: `slide_of[player][slide]`. A slide on a valve is one for all.
std::vector<std::vector<std::size_t>> joint_slides(const std::vector<SettingsQuestion>& players,
                                                   std::size_t& count) {
    const auto& slides = players.front().tube.slides;
    std::vector<std::vector<std::size_t>> slide_of(players.size(), std::vector<std::size_t>(slides.size()));
    count = 0;
    for (std::size_t i = 0; i < slides.size(); ++i) {
        for (std::size_t p = 0; p < players.size(); ++p)
            slide_of[p][i] = p > 0 && slides[i].valve ? slide_of[0][i] : count++;
    }
    return slide_of;
}

SlideProblem joint_problem(const std::vector<SlideProblem>& alone,
                           const std::vector<std::vector<std::size_t>>& slide_of, std::size_t count) {
    SlideProblem joint;
    joint.flat_weight = alone.front().flat_weight;
    joint.most_mean_sharp = alone.front().most_mean_sharp;
    joint.slides.resize(count);
    const double share = 1.0 / static_cast<double>(alone.size());
    for (std::size_t p = 0; p < alone.size(); ++p) {
        for (std::size_t i = 0; i < alone[p].slides.size(); ++i) {
            SlideProblem::Slide& slide = joint.slides[slide_of[p][i]];
            const double cost = slide.cost + share * alone[p].slides[i].cost;
            slide = alone[p].slides[i];
            slide.cost = cost;
        }
        for (SlideProblem::Note note : alone[p].notes) {
            note.weight *= share;
            for (SlideProblem::Way& way : note.ways) {
                std::vector<double> pull(count, 0.0);
                for (std::size_t i = 0; i < way.pull.size(); ++i)
                    pull[slide_of[p][i]] = way.pull[i];
                way.pull = std::move(pull);
            }
            joint.notes.push_back(std::move(note));
        }
    }
    return joint;
}

Positions now_of(const SlideProblem& problem) {
    Positions now;
    for (const SlideProblem::Slide& slide : problem.slides)
        now.push_back(slide.now);
    return now;
}

units::Cents mean_at(const SlideProblem& problem, const Positions& at) {
    return units::Cents(mean_size(problem, {at, best_ways(problem, at)}));
}

}  // namespace

SharedSettings share(const std::vector<SettingsQuestion>& players) {
    check_shared(players);
    const std::vector<SettingsQuestion> questions = with_shared_limits(players);
    std::vector<SlideProblem> alone;
    for (const SettingsQuestion& question : questions)
        cap_mean(alone.emplace_back(problem_of(question)));
    std::size_t count = 0;
    const auto slide_of = joint_slides(questions, count);
    SlideProblem joint = joint_problem(alone, slide_of, count);
    cap_mean(joint);
    const Found best = minimise(joint);
    SharedSettings settings;
    for (std::size_t i = 0; i < questions.front().slides.size(); ++i) {
        const QuestionSlide& slide = questions.front().slides[i];
        SharedSlide& shared = settings.slides.emplace_back(
            SharedSlide{slide.slide, slide.now, {}, slide.fixed, slide.position_known});
        const std::size_t marks = questions.front().tube.slides[i].valve ? 1 : questions.size();
        for (std::size_t p = 0; p < marks; ++p)
            shared.recommended.emplace_back(best.at[slide_of[p][i]]);
    }
    for (std::size_t p = 0; p < alone.size(); ++p) {
        Positions own;
        for (const std::size_t slide : slide_of[p])
            own.push_back(best.at[slide]);
        settings.players.push_back({mean_at(alone[p], now_of(alone[p])), mean_at(alone[p], own),
                                    mean_at(alone[p], minimise(alone[p]).at)});
    }
    const Positions now = now_of(joint);
    settings.objective_before = units::SquareCents(objective_at(joint, now, best_ways(joint, now)));
    settings.objective_after = units::SquareCents(objective_at(joint, best.at, best.ways));
    return settings;
}

}  // namespace lowledger::tuning
