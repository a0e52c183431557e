#include "model/studio/questions.h"

#include <algorithm>
#include <tuple>

namespace lowledger::studio {

std::string called(const Student& student) {
    if (!student.called.empty()) return student.called;
    const auto start = student.name.find_first_not_of(' ');
    if (start == std::string::npos) return {};
    const auto end = student.name.find(' ', start);
    return student.name.substr(start, end == std::string::npos ? end : end - start);
}

Horn horn_of(const horns::HornKind& kind) {
    Horn horn;
    horn.kind_id = kind.id;
    horn.kind_text = kind.source_text;
    for (const horns::SlideKind& slide : kind.slides)
        horn.slides.push_back({.slide = slide.id, .least = slide.least, .travel = slide.travel});
    return horn;
}

std::vector<SlidePosition> designed_positions(const horns::HornKind& kind, HornId horn, Date on) {
    std::vector<SlidePosition> positions;
    for (const horns::SlideKind& slide : kind.slides) {
        positions.push_back({.id = {},
                             .horn = horn,
                             .slide = slide.id,
                             .on = on,
                             .position = slide.designed,
                             .origin = SlidePosition::Origin::start});
    }
    return positions;
}

std::map<std::string, units::Millimetres> positions_on(std::span<const SlidePosition> history, Date on) {
    std::map<std::string, const SlidePosition*> latest;
    for (const SlidePosition& entry : history) {
        if (entry.on > on) continue;
        const SlidePosition*& kept = latest[entry.slide];
        if (kept == nullptr || std::tie(kept->on, kept->id) < std::tie(entry.on, entry.id)) kept = &entry;
    }
    std::map<std::string, units::Millimetres> positions;
    for (const auto& [slide, entry] : latest)
        positions.emplace(slide, entry->position);
    return positions;
}

bool holds_on(const HornUse& use, Date on) {
    return use.from <= on && (!use.until || on < *use.until);
}

std::vector<HornId> horns_on(std::span<const HornUse> uses, StudentId student, Date on) {
    std::vector<HornId> horns;
    for (const HornUse& use : uses) {
        if (use.student == student && holds_on(use, on)) horns.push_back(use.horn);
    }
    return horns;
}

}  // namespace lowledger::studio
