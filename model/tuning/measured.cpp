#include "model/tuning/measured.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>
#include <numeric>
#include <tuple>

#include "model/acoustics/air.h"
#include "model/tuning/ways.h"
#include "model/units/refusal.h"

namespace lowledger::tuning {
namespace {

/// A slide written down twice at one place was measured once: the key is the place in tenths of a mm.
TermKey written_key(std::size_t slide, units::Millimetres at) {
    return {TermKind::place_written, static_cast<int>(slide),
            static_cast<int>(std::lround(10.0 * at.value()))};
}

/// Puts the readings of one sheet together with what is known of the sitting.
class Sitting {
  public:
    Sitting(const TuningInputs& inputs, const Figures& figures, const TermModel& model,
            const studio::TuningSheet& sheet, int number, int mouthpiece)
        : inputs_(inputs),
          figures_(figures),
          model_(model),
          sheet_(sheet),
          number_(number),
          mouthpiece_(mouthpiece),
          today_(slides_today(inputs)),
          positions_(today_.at) {
        for (std::size_t i = 0; i < positions_.size(); ++i) {
            if (const auto at = written(i)) positions_[i] = *at;
        }
        const double kappa = sheet.tuner_seen ? model.level().kappa_seen : model.level().kappa;
        horn_share_ = 1.0 - kappa;
    }

    [[nodiscard]] std::vector<MeasuredNote> notes(int& left_out) const {
        std::map<std::tuple<units::Pitch, horns::Fingering, int>, MeasuredNote> groups;
        for (const studio::Reading& reading : sheet_.readings) {
            const auto partial = partial_of(inputs_.kind, sheet_, reading);
            if (!partial) {
                ++left_out;
                continue;
            }
            const auto key = std::tuple(reading.note, reading.fingering, *partial);
            const Playing playing{reading.note, reading.fingering, *partial, positions_};
            MeasuredNote& note = groups.try_emplace(key, MeasuredNote{playing}).first->second;
            note.readings.push_back(&reading);
            note.takes.push_back(brought(reading.cents));
        }
        std::vector<MeasuredNote> notes;
        for (auto& [key, note] : groups) {
            finish(note);
            notes.push_back(std::move(note));
        }
        return notes;
    }

  private:
    [[nodiscard]] std::optional<units::Millimetres> written(std::size_t slide) const {
        const auto at = sheet_.positions.find(inputs_.kind.slides[slide].id);
        return at == sheet_.positions.end() ? std::nullopt : std::optional(at->second);
    }

    /// To the usual room and the studio's A4: a tuner set higher shows less.
    [[nodiscard]] units::Cents brought(units::Cents reading) const {
        const units::Cents to_studio = units::interval(inputs_.studio_a4, sheet_.tuner_a4);
        return reading + to_studio - figures_.room_beta * room_change();
    }

    /// Of air that follows the room whole.
    [[nodiscard]] units::Cents room_change() const {
        if (!sheet_.room) return units::Cents(0.0);
        return acoustics::room_change(inputs_.usual_room, *sheet_.room, 1.0);
    }

    void finish(MeasuredNote& note) const {
        note.sheet = &sheet_;
        const auto takes = static_cast<double>(note.takes.size());
        note.mean = std::accumulate(note.takes.begin(), note.takes.end(), units::Cents(0.0)) / takes;
        note.horn_share = horn_share_;
        note.expected = horn_share_ * model_.acoustic_lean(note.playing);
        note.noise =
            units::square(model_.level().note_by_sitting) + units::square(model_.level().take) / takes;
        note.terms = model_.terms(note.playing, {horn_share_, 1.0, 1.0, 1.0}, mouthpiece_);
        add_term(note.terms, {TermKind::sitting, number_}, 1.0);
        add_term(note.terms, {TermKind::tuner_of_sitting, number_}, 1.0);
        add_room(note.terms);
        add_places(note);
    }

    void add_room(Terms& terms) const {
        if (sheet_.room) {
            add_term(terms, {TermKind::room_beta}, room_change().value());
        } else {
            constexpr double half_octave = 600.0;
            const double cents_a_kelvin =
                half_octave * std::numbers::log2e / inputs_.usual_room.absolute().value();
            add_term(terms, {TermKind::room_of_sitting, number_}, figures_.room_beta * cents_a_kelvin);
        }
    }

    void add_places(MeasuredNote& note) const {
        const auto slopes = model_.pull_slopes(note.playing);
        for (std::size_t i = 0; i < slopes.size(); ++i) {
            const double coefficient = horn_share_ * slopes[i].value();
            if (const auto at = written(i)) {
                add_term(note.terms, written_key(i, *at), coefficient);
                continue;
            }
            const int slide = static_cast<int>(i);
            add_term(note.terms,
                     today_.known[i] ? written_key(i, today_.at[i]) : TermKey{TermKind::place_guessed, slide},
                     coefficient);
            add_term(note.terms, {TermKind::place_at_sitting, number_, slide}, coefficient);
        }
    }

    const TuningInputs& inputs_;
    const Figures& figures_;
    const TermModel& model_;
    const studio::TuningSheet& sheet_;
    int number_;
    int mouthpiece_;
    SlidesToday today_;
    std::vector<units::Millimetres> positions_;
    double horn_share_ = 1.0;
};

}  // namespace

SlidesToday slides_today(const TuningInputs& inputs) {
    SlidesToday today;
    for (const horns::SlideKind& slide : inputs.kind.slides) {
        const auto at = inputs.positions.find(slide.id);
        today.known.push_back(at != inputs.positions.end());
        today.at.push_back(today.known.back() ? at->second : slide.designed);
    }
    return today;
}

SheetsSorted sort_sheets(const std::vector<studio::TuningSheet>& sheets) {
    SheetsSorted sorted;
    for (const studio::TuningSheet& sheet : sheets) {
        if (sheet.mute) {
            sorted.not_used.push_back({sheet.id, sheet.on, WhyNotUsed::mute});
        } else if (!sheet.warm) {
            sorted.not_used.push_back({sheet.id, sheet.on, WhyNotUsed::cold});
        } else if (sheet.readings.empty()) {
            sorted.not_used.push_back({sheet.id, sheet.on, WhyNotUsed::no_readings});
        } else {
            sorted.used.push_back(&sheet);
        }
    }
    std::ranges::stable_sort(sorted.used, [](const auto* a, const auto* b) {
        return std::tie(a->on, a->id) < std::tie(b->on, b->id);
    });
    return sorted;
}

Mouthpieces::Mouthpieces(const std::vector<const studio::TuningSheet*>& used) {
    for (const studio::TuningSheet* sheet : used)
        latest_ = numbers_.try_emplace(sheet->mouthpiece, static_cast<int>(numbers_.size())).first->second;
}

std::vector<MeasuredNote> measured_notes(const TuningInputs& inputs, const Figures& figures,
                                         const TermModel& model,
                                         const std::vector<const studio::TuningSheet*>& used, int& left_out) {
    const Mouthpieces mouthpieces(used);
    std::vector<MeasuredNote> all;
    for (std::size_t i = 0; i < used.size(); ++i) {
        const Sitting sitting(inputs, figures, model, *used[i], static_cast<int>(i),
                              mouthpieces.number(used[i]->mouthpiece));
        for (MeasuredNote& note : sitting.notes(left_out))
            all.push_back(std::move(note));
    }
    return all;
}

void add_places_today(Terms& terms, const TermModel& model, const SlidesToday& today, const Playing& playing,
                      double share) {
    const auto slopes = model.pull_slopes(playing);
    for (std::size_t i = 0; i < slopes.size(); ++i) {
        const TermKey key = today.known[i] ? written_key(i, today.at[i])
                                           : TermKey{TermKind::place_guessed, static_cast<int>(i)};
        add_term(terms, key, share * slopes[i].value());
    }
}

}  // namespace lowledger::tuning
