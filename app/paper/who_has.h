#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/paper/gathering.h"
#include "reports/pages/inventory.h"

namespace lowledger::paper {

using Holders = std::vector<pages::Inventory::Holder>;

/// Whoever has a horn on the day: it is lent to one, or one or several play it.
class WhoHas {
  public:
    explicit WhoHas(const Gathering& from);
    [[nodiscard]] std::string name(studio::StudentId student) const;
    /// Empty for nobody.
    [[nodiscard]] std::string name(const std::optional<studio::StudentId>& student) const;
    [[nodiscard]] Holders of(studio::HornId horn) const;
    /// Out with a loan.
    [[nodiscard]] std::string of(studio::MouthpieceId mouthpiece) const;

  private:
    std::map<studio::StudentId, std::string> names_;
    std::vector<studio::Loan> loans_;
    std::map<studio::HornId, std::vector<studio::StudentId>> players_;
};

}  // namespace lowledger::paper
