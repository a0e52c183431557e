#include "model/tuning/warnings.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "model/tuning/moves.h"
#include "model/tuning/other_horn.h"
#include "model/tuning/outlying.h"

namespace lowledger::tuning {
namespace {

bool is_sheet(const studio::TuningSheet& sheet, studio::TuningSheetId id, studio::Date on) {
    return sheet.id == id && sheet.on == on;
}

class Examiner {
  public:
    Examiner(const TuningInputs& inputs, const Figures& figures, double corrects_more)
        : left_(inputs), figures_(figures), corrects_more_(corrects_more) {}

    [[nodiscard]] Warnings examine() {
        // Each round tells one error; more than this is no error but another horn or player.
        constexpr int most = 8;
        for (int k = 0; k < most; ++k) {
            if (!round()) break;
        }
        std::ranges::sort(warnings_.moves, {}, [](const MoveCheck& check) { return check.on; });
        return std::move(warnings_);
    }

  private:
    /// False when nothing more is told.
    bool round() {
        const Evidence evidence = evidence_of(left_, figures_, corrects_more_);
        if (evidence.own().sheets.used.empty()) return false;
        std::vector<Row> rows = rows_of(evidence);
        for (const MoveCheck& check : warnings_.moves) {
            if (const auto sheet = index_of(evidence, check)) loosen(rows, evidence, *sheet, check);
        }
        const Conditioning conditioning(rows, left_.today);
        const Examined examined{evidence, rows, conditioning, conditioning.inverse()};
        const auto take = furthest_take(examined, figures_);
        std::vector<MoveStory> stories = move_stories(examined, figures_);
        const auto other_horn = least_like_this_horn(examined, left_);
        if (tests_ == 0) count_tests(evidence, stories);
        std::erase_if(stories, [&](const MoveStory& story) { return told(story.check); });

        const double from = told_from(tests_, figures_.false_alarms, figures_.outlying);
        const auto worst = std::ranges::max_element(stories, {}, &MoveStory::z);
        const double z_take = take ? std::abs(take->z) : 0.0;
        const double z_move = worst == stories.end() ? 0.0 : worst->z;
        const double z_horn = horn_distance(other_horn, from);
        if (std::max({z_take, z_move, z_horn}) <= from) {
            keep_untold(stories);
            return false;
        }
        if (z_horn >= std::max(z_take, z_move)) {
            tell(*other_horn);
        } else if (z_move >= z_take) {
            tell(*worst);
        } else {
            tell(*take);
        }
        return true;
    }

    void count_tests(const Evidence& evidence, const std::vector<MoveStory>& stories) {
        tests_ = takes_examined(evidence) + sheets_examined(evidence) * (1 + left_.other_horns.size());
        for (const MoveStory& story : stories)
            tests_ += story.tests;
    }

    /// In standard deviations, and none where the ratio of likelihoods may come by chance.
    [[nodiscard]] double horn_distance(const std::optional<SuspectSheet>& sheet, double from) const {
        if (!sheet) return 0.0;
        const double ratio = sheet->warning.log_ratio;
        if (ratio <= std::log(static_cast<double>(tests_) / figures_.false_alarms)) return 0.0;
        return std::max(from, std::sqrt(2.0 * ratio));
    }

    [[nodiscard]] static std::optional<std::size_t> index_of(const Evidence& evidence,
                                                             const MoveCheck& check) {
        const auto& used = evidence.own().sheets.used;
        for (std::size_t k = 0; k < used.size(); ++k) {
            if (is_sheet(*used[k], check.sheet, check.on)) return k;
        }
        return std::nullopt;
    }

    [[nodiscard]] bool told(const MoveCheck& check) const {
        return std::ranges::any_of(warnings_.moves, [&](const MoveCheck& other) {
            return other.sheet == check.sheet && other.on == check.on;
        });
    }

    void tell(const SuspectTake& take) {
        warnings_.takes.push_back(take.take);
        for (studio::TuningSheet& sheet : left_.sheets) {
            if (!is_sheet(sheet, take.take.sheet, take.take.on)) continue;
            const auto at = std::ranges::find_if(sheet.readings, [&](const studio::Reading& reading) {
                return reading.note == take.take.note && reading.fingering == take.take.fingering &&
                       reading.take == take.take.take && reading.cents == take.take.reading;
            });
            if (at != sheet.readings.end()) {
                sheet.readings.erase(at);
                return;
            }
        }
    }

    void tell(const MoveStory& story) {
        warnings_.moves.push_back(story.check);
        warnings_.moves.back().told = true;
    }

    void tell(const SuspectSheet& sheet) {
        warnings_.other_horn.push_back(sheet.warning);
        std::erase_if(left_.sheets, [&](const studio::TuningSheet& other) {
            return is_sheet(other, sheet.warning.sheet, sheet.warning.on);
        });
    }

    /// Moves that the readings bear out, or say nothing against.
    void keep_untold(const std::vector<MoveStory>& stories) {
        for (const MoveStory& story : stories) {
            if (!story.check.moved.empty()) warnings_.moves.push_back(story.check);
        }
    }

    TuningInputs left_;
    const Figures& figures_;
    double corrects_more_;
    std::size_t tests_ = 0;
    Warnings warnings_;
};

}  // namespace

Warnings warnings_of(const TuningInputs& inputs, const Figures& figures, double corrects_more) {
    return Examiner(inputs, figures, corrects_more).examine();
}

}  // namespace lowledger::tuning
