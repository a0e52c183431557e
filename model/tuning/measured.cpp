#include "model/tuning/measured.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>
#include <numeric>
#include <span>
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

std::optional<units::Millimetres> written(const studio::TuningSheet& sheet, const horns::SlideKind& slide) {
    const auto at = sheet.positions.find(slide.id);
    return at == sheet.positions.end() ? std::nullopt : std::optional(at->second);
}

/// Where the slides stood at a sitting: as written, else as they stand today.
std::vector<units::Millimetres> places_at(const PlayerOnHorn& source, const studio::TuningSheet& sheet) {
    std::vector<units::Millimetres> at = source.today.at;
    for (std::size_t i = 0; i < at.size(); ++i)
        at[i] = written(sheet, source.model.kind().slides[i]).value_or(at[i]);
    return at;
}

/// Puts the readings of one sheet together with what is known of the sitting.
class Sitting {
  public:
    Sitting(const TuningInputs& inputs, const Figures& figures, const PlayerOnHorn& source,
            const studio::TuningSheet& sheet, int number, int mouthpiece, double corrects_more,
            const std::vector<OutlyingTake>& told)
        : inputs_(inputs),
          figures_(figures),
          source_(source),
          model_(source.model),
          sheet_(sheet),
          number_(number),
          mouthpiece_(mouthpiece),
          corrects_more_(corrects_more),
          told_(told),
          positions_(places_at(source, sheet)) {
        const LevelFigures& level = model_.level();
        horn_share_ = horn_share(sheet.tuner_seen ? level.kappa_seen : level.kappa, corrects_more);
        for (const studio::Reading& reading : sheet.readings)
            last_round_ = std::max(last_round_, reading.take);
    }

    [[nodiscard]] std::vector<MeasuredNote> notes(int& left_out) const {
        std::map<std::tuple<units::Pitch, horns::Fingering, int>, MeasuredNote> groups;
        for (const studio::Reading& reading : sheet_.readings) {
            const auto partial = partial_of(model_.kind(), sheet_, reading);
            if (!partial) {
                ++left_out;
                continue;
            }
            const auto key = std::tuple(reading.note, reading.fingering, *partial);
            const Playing playing{reading.note, reading.fingering, *partial, positions_};
            MeasuredNote& note = groups.try_emplace(key, MeasuredNote{playing}).first->second;
            note.readings.push_back(&reading);
            note.takes.push_back(brought(reading.cents));
            note.counted.push_back(counted(reading));
        }
        std::vector<MeasuredNote> notes;
        for (auto& [key, note] : groups) {
            finish(note);
            notes.push_back(std::move(note));
        }
        return notes;
    }

    /// Empty where every note was played once.
    [[nodiscard]] std::optional<Warming> warming(std::span<const MeasuredNote> notes) const {
        Warming warming{static_cast<std::size_t>(number_), &sheet_};
        units::Cents sum(0.0);
        for (const MeasuredNote& note : notes) {
            const double mean = mean_round(note);
            for (std::size_t i = 0; i < note.takes.size(); ++i) {
                const double later = note.readings[i]->take - mean;
                warming.squares += note.counted[i] * later * later;
                sum += note.counted[i] * later * (note.takes[i] - note.mean);
            }
        }
        if (warming.squares <= 0.0) return std::nullopt;
        warming.each_round = sum / warming.squares;
        warming.noise = units::square(model_.level().take) / warming.squares;
        model_.add(warming.terms, {TermKind::warming, number_}, 1.0);
        return warming;
    }

  private:
    [[nodiscard]] static double all_counted(const MeasuredNote& note) {
        return std::accumulate(note.counted.begin(), note.counted.end(), 0.0);
    }

    [[nodiscard]] static double mean_round(const MeasuredNote& note) {
        double sum = 0.0;
        for (std::size_t i = 0; i < note.readings.size(); ++i)
            sum += note.counted[i] * note.readings[i]->take;
        return sum / all_counted(note);
    }

    [[nodiscard]] double counted(const studio::Reading& reading) const {
        if (source_.model.owners() != Owners{}) return 1.0;
        const auto told = std::ranges::find_if(told_, [&](const OutlyingTake& take) {
            return take.sheet == sheet_.id && take.on == sheet_.on && take.note == reading.note &&
                   take.fingering == reading.fingering && take.take == reading.take &&
                   take.reading == reading.cents;
        });
        return told == told_.end() ? 1.0 : told->counted;
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
        note.sitting = static_cast<std::size_t>(number_);
        const double takes = all_counted(note);
        for (std::size_t i = 0; i < note.takes.size(); ++i)
            note.mean += note.counted[i] * note.takes[i];
        note.mean = note.mean / takes;
        note.horn_share = horn_share_;
        note.expected = horn_share_ * model_.acoustic_lean(note.playing);
        note.noise =
            units::square(model_.level().note_by_sitting) + units::square(model_.level().take) / takes;
        note.terms = model_.terms(note.playing, {horn_share_, 1.0, 1.0, 1.0, 1.0}, mouthpiece_);
        model_.add(note.terms, {TermKind::sitting, number_}, 1.0);
        model_.add(note.terms, {TermKind::tuner_of_sitting, number_}, 1.0);
        // The pitch of a sitting is that of its last time round, when the horn was warmest.
        model_.add(note.terms, {TermKind::warming, number_}, mean_round(note) - last_round_);
        add_correction(note);
        add_room(note.terms);
        add_places(note);
    }

    /// Only a known move tells how much a player corrects: the term is the part of it they take back.
    void add_correction(MeasuredNote& note) const {
        Playing first = note.playing;
        first.positions = source_.first_at;
        const units::Cents moved = model_.acoustic_lean(note.playing) - model_.acoustic_lean(first);
        model_.add(note.terms, {TermKind::correction}, -moved.value());
        // It is counted from `corrects_more_`, and expected to be none beyond the level's.
        note.expected += corrects_more_ * moved;
    }

    void add_room(Terms& terms) const {
        if (sheet_.room) {
            model_.add(terms, {TermKind::room_beta}, room_change().value());
        } else {
            constexpr double half_octave = 600.0;
            const double cents_a_kelvin =
                half_octave * std::numbers::log2e / inputs_.usual_room.absolute().value();
            model_.add(terms, {TermKind::room_of_sitting, number_}, figures_.room_beta * cents_a_kelvin);
        }
    }

    void add_places(MeasuredNote& note) const {
        const auto slopes = model_.pull_slopes(note.playing);
        const double left = (source_.shared ? figures_.position_shared : figures_.position_as_left).value();
        for (std::size_t i = 0; i < slopes.size(); ++i) {
            const double coefficient = horn_share_ * slopes[i].value();
            if (const auto at = written(sheet_, model_.kind().slides[i])) {
                model_.add(note.terms, written_key(i, *at), coefficient);
                continue;
            }
            const int slide = static_cast<int>(i);
            model_.add(note.terms,
                       source_.today.known[i] ? written_key(i, source_.today.at[i])
                                              : TermKey{TermKind::place_guessed, slide},
                       coefficient);
            add_term(note.terms, {TermKind::place_at_sitting, number_, slide}, coefficient, {left});
        }
    }

    const TuningInputs& inputs_;
    const Figures& figures_;
    const PlayerOnHorn& source_;
    const TermModel& model_;
    const studio::TuningSheet& sheet_;
    int number_;
    int mouthpiece_;
    double corrects_more_;
    const std::vector<OutlyingTake>& told_;
    std::vector<units::Millimetres> positions_;
    double horn_share_ = 1.0;
    int last_round_ = 1;
};

std::vector<PlayerOnHorn> sources_of(const TuningInputs& inputs, const Figures& figures) {
    std::vector<PlayerOnHorn> sources;
    std::vector<const horns::HornKind*> kinds;
    const auto add = [&](const horns::HornKind& kind, studio::Level level, SlidesToday today,
                         const std::vector<studio::TuningSheet>& sheets, int horn, int player) {
        const auto same =
            std::ranges::find_if(kinds, [&](const auto* other) { return other->id == kind.id; });
        const Owners owners{horn, static_cast<int>(same - kinds.begin()), player};
        if (same == kinds.end()) kinds.push_back(&kind);
        sources.push_back({TermModel(kind, level, figures, inputs.studio_a4, owners), std::move(today),
                           sort_sheets(sheets), horn == 0 && !inputs.other_players.empty()});
    };
    const SlidesToday today = slides_today(inputs);
    add(inputs.kind, inputs.level, today, inputs.sheets, 0, 0);
    int number = 0;
    for (const OtherHorn& other : inputs.other_horns)
        add(other.kind, inputs.level, slides_today(other.kind, other.positions), other.sheets, ++number, 0);
    number = 0;
    for (const OtherPlayer& other : inputs.other_players)
        add(inputs.kind, other.level, today, other.sheets, 0, ++number);
    for (PlayerOnHorn& source : sources) {
        const auto& used = source.sheets.used;
        source.first_at = used.empty() ? source.today.at : places_at(source, *used.front());
    }
    return sources;
}

}  // namespace

double part_corrected(double kappa, double corrects_more) {
    constexpr double most = 0.9;
    return std::clamp(kappa + corrects_more, 0.0, most);
}

double horn_share(double kappa, double corrects_more) {
    return 1.0 - part_corrected(kappa, corrects_more);
}

SlidesToday slides_today(const horns::HornKind& kind,
                         const std::map<std::string, units::Millimetres>& positions) {
    SlidesToday today;
    for (const horns::SlideKind& slide : kind.slides) {
        const auto at = positions.find(slide.id);
        today.known.push_back(at != positions.end());
        today.at.push_back(today.known.back() ? at->second : slide.designed);
    }
    return today;
}

SlidesToday slides_today(const TuningInputs& inputs) {
    return slides_today(inputs.kind, inputs.positions);
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

Evidence evidence_of(const TuningInputs& inputs, const Figures& figures, double corrects_more,
                     const std::vector<OutlyingTake>& told) {
    Evidence all;
    all.sources = sources_of(inputs, figures);
    std::map<std::string, int> mouthpieces;
    int number = 0;
    int others_left_out = 0;
    for (std::size_t source = 0; source < all.sources.size(); ++source) {
        const PlayerOnHorn& from = all.sources[source];
        const double more = from.model.owners().player == 0 ? corrects_more : 0.0;
        for (const studio::TuningSheet* sheet : from.sheets.used) {
            const int mouthpiece =
                mouthpieces.try_emplace(sheet->mouthpiece, static_cast<int>(mouthpieces.size()))
                    .first->second;
            if (source == 0) all.mouthpiece = mouthpiece;
            const Sitting sitting(inputs, figures, from, *sheet, number++, mouthpiece, more, told);
            auto notes = sitting.notes(source == 0 ? all.false_tones : others_left_out);
            if (auto warming = sitting.warming(notes)) all.warmings.push_back(std::move(*warming));
            for (MeasuredNote& note : notes) {
                note.source = source;
                all.notes.push_back(std::move(note));
            }
        }
    }
    return all;
}

void add_places_today(Terms& terms, const PlayerOnHorn& source, const Playing& playing, double share) {
    const auto slopes = source.model.pull_slopes(playing);
    for (std::size_t i = 0; i < slopes.size(); ++i) {
        const TermKey key = source.today.known[i] ? written_key(i, source.today.at[i])
                                                  : TermKey{TermKind::place_guessed, static_cast<int>(i)};
        source.model.add(terms, key, share * slopes[i].value());
    }
}

}  // namespace lowledger::tuning
