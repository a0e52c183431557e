#pragma once

#include <filesystem>
#include <string>

#include "model/store/studio_file.h"

/// Invented records and a folder of its own for each test.
namespace lowledger::store::invented {

/// Removed, with all in it, at the end.
class Folder {
  public:
    Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder();
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }
    [[nodiscard]] std::filesystem::path operator/(const std::string& name) const { return path_ / name; }
    /// Names of what is in it, sorted.
    [[nodiscard]] std::vector<std::string> names() const;

  private:
    std::filesystem::path path_;
};

studio::StudioFacts facts();
/// Every optional value and text empty, or all of them there.
studio::Student plain_student(const std::string& name = "Mara Lindqvist");
studio::Student full_student();
studio::Horn plain_horn(const std::string& mark = "T-4");
studio::Horn full_horn(studio::StudentId owner);
studio::SlidePosition position(studio::HornId horn, const std::string& slide, studio::Date on, double mm);
studio::HornUse use(studio::StudentId student, studio::HornId horn);
studio::TuningSheet plain_sheet(studio::StudentId student, studio::HornId horn);
studio::TuningSheet full_sheet(studio::StudentId student, studio::HornId horn);
studio::GivenSettings settings(studio::StudentId student, studio::HornId horn);

/// The sentence of the refusal that `work` throws; empty when it throws none.
template <typename Refused = units::Refusal, typename Work>
std::string sentence_of(Work&& work) {
    try {
        std::forward<Work>(work)();
    } catch (const Refused& refusal) {
        return refusal.what();
    }
    return {};
}

}  // namespace lowledger::store::invented
