#include "model/horns/kind.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <set>

#include "model/horns/chart.h"
#include "model/units/hertz.h"

namespace lowledger::horns {
namespace {

using units::Cents;
using units::Millimetres;

std::vector<acoustics::ValveSet> sets_of(const HornKind& kind) {
    std::vector<acoustics::ValveSet> sets;
    for (unsigned bits = 0; bits < (1U << kind.valves.size()); ++bits) {
        acoustics::ValveSet down;
        for (unsigned i = 0; i < kind.valves.size(); ++i) {
            if ((bits >> i) & 1U) down = down.with(static_cast<int>(i) + 1);
        }
        sets.push_back(down);
    }
    return sets;
}

TEST(Kinds, HaveIdsOfTheirOwn) {
    std::set<std::string> ids;
    for (const HornKind& kind : built_in_kinds()) {
        EXPECT_TRUE(ids.insert(kind.id).second) << kind.id;
        EXPECT_EQ(find_kind(built_in_kinds(), kind.id), &kind);
    }
    EXPECT_EQ(find_kind(built_in_kinds(), "no-such-kind"), nullptr);
}

TEST(Kinds, ReadBackFromTheTextTheyKeep) {
    for (const HornKind& kind : built_in_kinds())
        EXPECT_EQ(read_kind(kind.source_text, "a copy"), kind) << kind.id;
}

TEST(Kinds, AddingAValveNeverRaises) {
    for (const HornKind& kind : built_in_kinds()) {
        const acoustics::Tube tube = tube_of(kind);
        for (const auto down : sets_of(kind)) {
            for (int valve = 1; valve <= static_cast<int>(kind.valves.size()); ++valve) {
                if (down.contains(valve)) continue;
                EXPECT_GT(acoustics::designed_length(tube, down.with(valve)),
                          acoustics::designed_length(tube, down))
                    << kind.id << " " << down.text() << " with " << valve;
            }
        }
    }
}

TEST(Kinds, EachValveLowersByWhatItWasBuiltFor) {
    for (const HornKind& kind : built_in_kinds()) {
        const acoustics::Tube tube = tube_of(kind);
        for (std::size_t i = 0; i < kind.valves.size(); ++i) {
            const ValveKind& valve = kind.valves[i];
            Millimetres length = tube.open + tube.valves[i];
            for (const int other : valve.built_with.valves())
                length += tube.valves[static_cast<std::size_t>(other - 1)];
            EXPECT_NEAR(units::interval_of_ratio(length / tube.open).value(), valve.built_for.value(), 1e-9)
                << kind.id << " valve " << valve.label;
        }
    }
}

TEST(Kinds, EveryPullActsOnlyWithItsValve) {
    for (const HornKind& kind : built_in_kinds()) {
        const acoustics::Tube tube = tube_of(kind);
        std::vector<Millimetres> positions;
        for (const SlideKind& slide : kind.slides)
            positions.push_back(slide.designed);
        for (std::size_t i = 0; i < kind.slides.size(); ++i) {
            auto pulled = positions;
            pulled[i] = kind.slides[i].travel;
            for (const auto down : sets_of(kind)) {
                const bool longer = acoustics::sounding_length(tube, down, pulled) >
                                    acoustics::sounding_length(tube, down, positions);
                EXPECT_EQ(longer, !kind.slides[i].valve || down.contains(*kind.slides[i].valve))
                    << kind.id << " " << kind.slides[i].id << " with " << down.text();
            }
        }
    }
}

TEST(Kinds, ALongerTubeIsLower) {
    for (const HornKind& kind : built_in_kinds()) {
        const acoustics::Tube tube = tube_of(kind);
        std::vector<Millimetres> positions;
        for (const SlideKind& slide : kind.slides)
            positions.push_back(slide.designed);
        for (std::size_t i = 0; i < kind.slides.size(); ++i) {
            auto pulled = positions;
            pulled[i] = kind.slides[i].travel;
            for (const auto down : sets_of(kind)) {
                const Millimetres before = acoustics::sounding_length(tube, down, positions);
                const Millimetres after = acoustics::sounding_length(tube, down, pulled);
                for (const int n : {2, 3, 8}) {
                    EXPECT_EQ(
                        acoustics::partial_frequency(after, n) < acoustics::partial_frequency(before, n),
                        after > before)
                        << kind.id << " " << kind.slides[i].id << " with " << down.text();
                }
            }
        }
    }
}

TEST(Kinds, AFourthSlideOfACompensatingHornChangesNothingWithoutItsValve) {
    int horns = 0;
    for (const HornKind& kind : built_in_kinds()) {
        const auto fourth = kind.slide_index("fourth");
        if (kind.loops.empty() || !fourth) continue;
        ++horns;
        const acoustics::Tube tube = tube_of(kind);
        std::vector<Millimetres> positions;
        for (const SlideKind& slide : kind.slides)
            positions.push_back(slide.designed);
        auto pulled = positions;
        pulled[*fourth] = kind.slides[*fourth].travel;
        for (const auto down : sets_of(kind)) {
            const Millimetres by = acoustics::sounding_length(tube, down, pulled) -
                                   acoustics::sounding_length(tube, down, positions);
            const Millimetres pull = kind.slides[*fourth].travel - kind.slides[*fourth].designed;
            EXPECT_NEAR(by.value(), down.contains(4) ? 2.0 * pull.value() : 0.0, 1e-9)
                << kind.id << " " << down.text();
        }
    }
    EXPECT_EQ(horns, 5);
}

/// Common practice: a horn is given five or six valves to choose by, and on a three-valve compensating horn
/// both the third and 1-2 are taught; a trombone's valve is its usual way already.
TEST(Kinds, BeginnersAreOfferedAlternatesWhereTheTradeTeachesThem) {
    for (const HornKind& kind : built_in_kinds()) {
        const bool three_compensating = !kind.loops.empty() && kind.valves.size() == 3;
        EXPECT_EQ(kind.alternates_for_beginners, three_compensating || kind.valves.size() > 4) << kind.id;
    }
}

TEST(Kinds, TheWorkingOrderSetsEverySlideOfAValveByANoteOfTheRange) {
    for (const HornKind& kind : built_in_kinds()) {
        for (const TuningStep& step : kind.tuning_order) {
            EXPECT_TRUE(kind.usual_range.contains(step.note))
                << kind.id << " " << units::file_name(step.note);
            EXPECT_LT(units::abs(sounding_partial(kind, step.fingering, step.note).value().lean), Cents(40.0))
                << kind.id << " " << units::file_name(step.note);
        }
        for (const SlideKind& slide : kind.slides) {
            if (!slide.valve) continue;
            EXPECT_TRUE(std::ranges::any_of(kind.tuning_order,
                                            [&](const TuningStep& step) { return step.slide == slide.id; }))
                << kind.id << " sets no note by " << slide.id;
        }
        EXPECT_TRUE(kind.usual_range.contains(kind.band_note)) << kind.id;
    }
}

TEST(Kinds, BothBuildsOfAThirdValveCanBeWritten) {
    const HornKind long_third = *find_kind(built_in_kinds(), "bbb-tuba-3");
    HornKind short_third = long_third;
    short_third.valves[2].built_for = Cents(300.0);
    short_third.valves[2].built_with = {};
    const Millimetres tube = tube_of(long_third).valves[2] - tube_of(short_third).valves[2];
    EXPECT_NEAR(tube.value() / 2.0, 33.2, 0.05) << "mm of pull between the two builds on BBb";
}

TEST(Kinds, ACompensatingHornErrsWithItsSwitchAsWithoutIt) {
    int compensating = 0;
    for (const HornKind& kind : built_in_kinds()) {
        if (kind.loops.empty()) continue;
        ++compensating;
        const acoustics::Tube tube = tube_of(kind);
        const int last = static_cast<int>(kind.valves.size());
        const auto lowering = [&](acoustics::ValveSet down) {
            return units::interval_of_ratio(acoustics::designed_length(tube, down) / tube.open);
        };
        for (const auto down : sets_of(kind)) {
            if (down.contains(last)) continue;
            const Cents with_switch = lowering(down.with(last)) - lowering(acoustics::ValveSet{last});
            EXPECT_NEAR(with_switch.value(), lowering(down).value(), 1e-9) << kind.id << " " << down.text();
        }
    }
    EXPECT_EQ(compensating, 9);
}

TEST(Kinds, AShareOfALoopIsAShareOfItsTube) {
    const HornKind ideal = *find_kind(built_in_kinds(), "euphonium-4-comp");
    HornKind short_loop = ideal;
    short_loop.loops[0].share = 0.9;
    EXPECT_NEAR(tube_of(short_loop).loops[0].tube / tube_of(ideal).loops[0].tube, 0.9, 1e-12);
    EXPECT_EQ(tube_of(short_loop).loops[1], tube_of(ideal).loops[1]);
}

TEST(Kinds, AllowWhatTheHornHas) {
    const HornKind& kind = *find_kind(built_in_kinds(), "bbb-tuba-3");
    EXPECT_TRUE(kind.allows({acoustics::ValveSet{1, 2, 3}, 0}));
    EXPECT_FALSE(kind.allows({acoustics::ValveSet{4}, 0})) << "it has no fourth valve";
    EXPECT_FALSE(kind.allows({{}, 1})) << "it has no hand slide";
    EXPECT_EQ(kind.slide("third")->valve, 3);
    EXPECT_EQ(kind.slide("fourth"), nullptr);
    EXPECT_EQ(kind.slide_index("main"), 0U);
    EXPECT_EQ(kind.valve_labels(), (std::vector<std::string>{"1", "2", "3"}));
}

}  // namespace
}  // namespace lowledger::horns
