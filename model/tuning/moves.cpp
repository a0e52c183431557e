#include "model/tuning/moves.h"

#include <algorithm>
#include <cmath>

namespace lowledger::tuning {
namespace {

using Eigen::VectorXd;

/// A slide whose written place changed by less, in mm, was not moved.
constexpr double least_move = 0.5;

/// Millimetres by which each slide stands out of its written place.
using Offsets = std::vector<units::Millimetres>;

/// One of the answer's own sheets and what followed it.
class LaterSheet {
  public:
    LaterSheet(const Examined& examined, const Figures& figures, std::size_t index)
        : examined_(examined),
          own_(examined.evidence.own()),
          figures_(figures),
          index_(index),
          sheet_(*own_.sheets.used[index]),
          before_(*own_.sheets.used[index - 1]),
          slides_(own_.model.kind().slides) {
        for (std::size_t i = 0; i < slides_.size(); ++i) {
            const auto now = sheet_.positions.find(slides_[i].id);
            const auto then = before_.positions.find(slides_[i].id);
            if (now == sheet_.positions.end() || then == before_.positions.end()) continue;
            written_.push_back(i);
            if (std::abs((now->second - then->second).value()) < least_move) continue;
            moved_.push_back(i);
            by_.push_back(now->second - then->second);
        }
    }

    [[nodiscard]] bool can_tell() const { return !written_.empty(); }

    [[nodiscard]] MoveStory story() {
        story_.sheet = index_;
        story_.check.sheet = sheet_.id;
        for (std::size_t m = 0; m < moved_.size(); ++m)
            story_.check.moved.emplace_back(slides_[moved_[m]].id, by_[m]);
        if (moved_.size() > 1) try_all_moved();
        for (std::size_t m = 0; m < moved_.size(); ++m)
            try_one_moved(m);
        for (const std::size_t slide : written_)
            try_elsewhere(slide);
        return story_;
    }

  private:
    /// The rows of the sheet and of those after it that have the slide at the same place.
    [[nodiscard]] bool covers(const MeasuredNote& note, std::size_t slide) const {
        if (note.source != 0) return false;
        const auto& used = own_.sheets.used;
        const std::string& id = slides_[slide].id;
        for (std::size_t k = index_; k < used.size(); ++k) {
            const auto at = used[k]->positions.find(id);
            if (at == used[k]->positions.end() || at->second != sheet_.positions.at(id)) return false;
            if (used[k] == note.sheet) return true;
        }
        return false;
    }

    /// What standing off by that much does to each row.
    [[nodiscard]] VectorXd effect(const Offsets& off) const {
        VectorXd j = VectorXd::Zero(static_cast<Eigen::Index>(examined_.rows.size()));
        const auto& notes = examined_.evidence.notes;
        for (std::size_t row = 0; row < notes.size(); ++row) {
            Playing there = notes[row].playing;
            for (std::size_t i = 0; i < off.size(); ++i) {
                if (off[i].value() != 0.0 && covers(notes[row], i)) there.positions[i] += off[i];
            }
            if (there.positions == notes[row].playing.positions) continue;
            const units::Cents change =
                own_.model.acoustic_lean(there) - own_.model.acoustic_lean(notes[row].playing);
            j[static_cast<Eigen::Index>(row)] = notes[row].horn_share * change.value();
        }
        return j;
    }

    void try_account(MoveAccount account, const Offsets& off) {
        account.log_ratio = log_ratio(examined_, effect(off));
        consider(account, std::sqrt(2.0 * std::max(0.0, account.log_ratio)));
    }

    void consider(const MoveAccount& account, double z) {
        ++story_.tests;
        story_.z = std::max(story_.z, z);
        if (account.log_ratio > story_.check.likeliest.log_ratio) story_.check.likeliest = account;
    }

    void try_all_moved() {
        Offsets off(slides_.size());
        for (std::size_t m = 0; m < moved_.size(); ++m)
            off[moved_[m]] = -by_[m];
        try_account({.what = MoveKind::nothing_moved}, off);
        for (std::size_t m = 0; m < moved_.size(); ++m)
            off[moved_[m]] = -2.0 * by_[m];
        try_account({.what = MoveKind::wrong_way}, off);
    }

    void try_one_moved(std::size_t m) {
        const std::string& id = slides_[moved_[m]].id;
        Offsets off(slides_.size());
        off[moved_[m]] = -by_[m];
        try_account({.what = MoveKind::nothing_moved, .slide = id}, off);
        for (const std::size_t other : written_) {
            if (std::ranges::find(moved_, other) != moved_.end()) continue;
            Offsets swapped = off;
            swapped[other] = by_[m];
            try_account({.what = MoveKind::another_slide, .slide = id, .instead = slides_[other].id},
                        swapped);
        }
        off[moved_[m]] = -2.0 * by_[m];
        try_account({.what = MoveKind::wrong_way, .slide = id}, off);
    }

    /// A place that is off by N(0, s^2): the ratio of the likelihoods, that being averaged over.
    void try_elsewhere(std::size_t slide) {
        Offsets off(slides_.size());
        off[slide] = units::Millimetres(1.0);
        const Score found = score(examined_, effect(off));
        if (found.spread <= 0.0) return;
        const double known = std::pow(figures_.position_unknown.value() / found.spread, 2);
        MoveAccount account{.what = MoveKind::elsewhere, .slide = slides_[slide].id};
        account.off = units::Millimetres(found.size);
        account.off_spread = units::Millimetres(found.spread);
        account.log_ratio = 0.5 * (found.z * found.z * known / (1.0 + known) - std::log1p(known));
        consider(account, std::abs(found.z));
    }

    const Examined& examined_;
    const PlayerOnHorn& own_;
    const Figures& figures_;
    std::size_t index_;
    const studio::TuningSheet& sheet_;
    const studio::TuningSheet& before_;
    const std::vector<horns::SlideKind>& slides_;
    /// Slides that are written on both sheets, and those of them that were moved, by how much.
    std::vector<std::size_t> written_;
    std::vector<std::size_t> moved_;
    std::vector<units::Millimetres> by_;
    MoveStory story_{.check = {.sheet = {}, .on = sheet_.on, .since = before_.on}};
};

}  // namespace

std::vector<MoveStory> move_stories(const Examined& examined, const Figures& figures) {
    std::vector<MoveStory> stories;
    for (std::size_t k = 1; k < examined.evidence.own().sheets.used.size(); ++k) {
        LaterSheet later(examined, figures, k);
        if (later.can_tell()) stories.push_back(later.story());
    }
    return stories;
}

void loosen(std::vector<Row>& rows, const Evidence& evidence, std::size_t sheet, const MoveCheck& check) {
    constexpr TermLaw anywhere{1000.0};
    const PlayerOnHorn& own = evidence.own();
    const auto& slides = own.model.kind().slides;
    const MoveAccount& account = check.likeliest;
    const auto is_meant = [&](const std::string& id) {
        if (id == account.slide || id == account.instead) return true;
        return account.slide.empty() &&
               std::ranges::any_of(check.moved, [&](const auto& moved) { return moved.first == id; });
    };
    for (std::size_t row = 0; row < evidence.notes.size(); ++row) {
        const MeasuredNote& note = evidence.notes[row];
        const bool later = std::find(own.sheets.used.begin() + static_cast<std::ptrdiff_t>(sheet),
                                     own.sheets.used.end(), note.sheet) != own.sheets.used.end();
        if (note.source != 0 || !later) continue;
        const auto slopes = own.model.pull_slopes(note.playing);
        for (std::size_t i = 0; i < slides.size(); ++i) {
            if (!is_meant(slides[i].id)) continue;
            constexpr int loosened = 1;
            const TermKey key{TermKind::place_at_sitting, static_cast<int>(sheet), static_cast<int>(i),
                              loosened};
            add_term(rows[row].terms, key, note.horn_share * slopes[i].value(), anywhere);
        }
    }
}

}  // namespace lowledger::tuning
