#pragma once

#include <string>
#include <vector>

namespace lowledger::truth {

/// The tables as Markdown, and what they were to show.
class Report {
  public:
    using Row = std::vector<std::string>;

    /// `share` of the whole run, above 0 to 1.
    explicit Report(double share) : share_(share) {}

    void heading(const std::string& text);
    void paragraph(const std::string& text);
    void table(const Row& head, const std::vector<Row>& rows);
    /// What must be so in the whole run and in any share of it.
    void verdict(bool holds, const std::string& what);
    /// What is aimed at: told, and no reason to fail.
    void aim(bool reached, const std::string& what);

    /// That share of a whole run's number, at least `least`.
    [[nodiscard]] int count(int whole, int least = 1) const;
    [[nodiscard]] const std::string& text() const { return text_; }
    [[nodiscard]] const std::vector<std::string>& failed() const { return failed_; }

  private:
    double share_;
    std::string text_;
    std::vector<std::string> failed_;
};

}  // namespace lowledger::truth
