#include "app/paper/who_has.h"

#include <algorithm>
#include <utility>

#include "model/studio/questions.h"

namespace lowledger::paper {

WhoHas::WhoHas(const Gathering& from) : loans_(from.file.loans_out()) {
    for (auto& student : from.file.students())
        names_[student.id] = std::move(student.name);
    std::erase_if(loans_, [&](const studio::Loan& loan) { return loan.from > from.day; });
    for (const auto& use : from.file.horn_uses())
        if (studio::holds_on(use, from.day)) players_[use.horn].push_back(use.student);
}

std::string WhoHas::name(studio::StudentId student) const {
    const auto found = names_.find(student);
    return found == names_.end() ? std::string() : found->second;
}

std::string WhoHas::name(const std::optional<studio::StudentId>& student) const {
    return student ? name(*student) : std::string();
}

Holders WhoHas::of(studio::HornId horn) const {
    Holders holders;
    const auto loan =
        std::ranges::find_if(loans_, [&](const studio::Loan& each) { return each.horn == horn; });
    if (loan != loans_.end()) holders.push_back({name(loan->student), true});
    const auto players = players_.find(horn);
    if (players == players_.end()) return holders;
    for (const auto student : players->second)
        if (loan == loans_.end() || loan->student != student) holders.push_back({name(student), false});
    return holders;
}

std::string WhoHas::of(studio::MouthpieceId mouthpiece) const {
    const auto loan =
        std::ranges::find_if(loans_, [&](const studio::Loan& each) { return each.mouthpiece == mouthpiece; });
    return loan == loans_.end() ? std::string() : name(loan->student);
}

}  // namespace lowledger::paper
