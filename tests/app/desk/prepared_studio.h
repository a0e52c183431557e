#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "app/desk/desk.h"
#include "app/desk/pass_entry.h"

namespace lowledger::desk {

/// The day that all tests of the desk are played on.
inline const studio::Date test_day{2026, 11, 25};

/// Answers what actions ask with what a test has laid out; where nothing is laid out, 'never mind'.
class ScriptedFront : public Front {
  public:
    std::optional<NewStudio> new_studio;
    std::optional<std::filesystem::path> path;
    std::optional<studio::StudioFacts> facts;
    std::optional<studio::Student> student;
    std::optional<studio::Horn> horn;
    std::optional<NewHorn> new_horn;
    std::optional<HornChoice> choice;
    std::optional<MeasuredSlides> measured;
    /// What slips are filled in with, by the fields' ids; other fields stay as they start. Empty: 'never
    /// mind'.
    std::optional<std::map<std::string, std::string>> slip;
    /// Types a section pass; false throws it away.
    std::function<bool(PassEntry&)> types_pass;
    std::optional<studio::Found> found;
    bool agrees = true;
    /// What was asked or shown, one a line.
    std::string said;
    int handouts = 0;
    struct Shown {
        canvas::Document document;
        std::string file_name;
        std::function<void()> handed_on;
    };
    std::vector<Shown> documents;
    /// What work is stopped before; none if beyond the end.
    std::size_t stops_before = 1000;

    std::optional<NewStudio> ask_new_studio(const NewStudio& /*start*/) override { return new_studio; }
    std::optional<std::filesystem::path> ask_studio_to_open() override { return path; }
    std::optional<std::filesystem::path> ask_where_to_copy(const std::filesystem::path& /*start*/) override {
        return path;
    }
    std::optional<studio::StudioFacts> ask_facts(const studio::StudioFacts& /*start*/) override {
        return facts;
    }
    std::optional<studio::Student> ask_student(const studio::Student& start) override {
        if (student) student->id = start.id;
        return student;
    }
    std::optional<NewHorn> ask_new_horn() override { return new_horn; }
    std::optional<studio::Horn> ask_horn(const studio::Horn& start) override {
        if (horn) horn->id = start.id;
        return horn;
    }
    std::optional<HornChoice> ask_horn_of(const studio::Student& /*student*/,
                                          const HornChoice& /*start*/) override {
        return choice;
    }
    std::optional<MeasuredSlides> ask_measured(const studio::Horn& /*horn*/,
                                               const MeasuredSlides& /*start*/) override {
        return measured;
    }
    bool type_pass(const std::string& title, PassEntry& pass) override {
        said += title + "\n";
        return types_pass && types_pass(pass);
    }
    std::optional<SlipAnswers> ask(const Slip& asked) override;
    bool confirm(const std::string& question, const std::string& /*verb*/) override {
        said += question + "\n";
        return agrees;
    }
    void show_handout() override { ++handouts; }
    void show_chart(const NoteChart& /*chart*/) override { said += "chart\n"; }
    const canvas::Faces& faces() override;
    void show_document(canvas::Document document, const std::string& file_name,
                       std::function<void()> handed_on) override {
        documents.push_back({std::move(document), file_name, std::move(handed_on)});
    }
    bool work_through(const std::vector<std::string>& names,
                      const std::function<void(std::size_t)>& piece) override {
        for (std::size_t i = 0; i < names.size(); ++i) {
            if (i == stops_before) return false;
            piece(i);
        }
        return true;
    }
    void show_kind_charts() override { said += "charts of kinds\n"; }
    void show_find_field() override { said += "find\n"; }
    std::optional<studio::Found> ask_what_to_find() override { return found; }
    void show_manual(std::string_view title) override { said += std::string(title) + "\n"; }
    void show_beside_settings(int part) override { said += "beside " + std::to_string(part) + "\n"; }
    void show_section() override {}
    void say(const std::string& sentence) override { said += sentence + "\n"; }
    void close() override { said += "closed\n"; }
};

/// A small invented studio in a folder of its own: Ada plays the three-valve tuba T-1 with a full sheet whose
/// second valve reads sharp; Ben plays nothing; T-2 is a four-valve tuba that nobody plays. Ben
/// has a lesson today, and last week's, cancelled, is owed.
class PreparedStudio {
  public:
    PreparedStudio();
    ~PreparedStudio();
    PreparedStudio(const PreparedStudio&) = delete;
    PreparedStudio& operator=(const PreparedStudio&) = delete;

    ScriptedFront front;
    std::unique_ptr<Desk> desk;
    std::filesystem::path folder;
    studio::StudentId ada;
    studio::StudentId ben;
    studio::HornId tuba;
    studio::HornId spare;

    /// Ada has T-1 at home, Ben had it before; one work on it is to be done, one is done and due again.
    void lend_and_note();
    /// A lesson today of a group of both.
    studio::LessonId add_group_lesson();
    /// A term from 31 August to 18 December with a holiday, the group of both, their lesson on Mondays at
    /// three and Ada's on Wednesdays at four; none of its lessons is made, but the group's of today stands.
    void plan_a_term();
    studio::TermId term;
    studio::GroupId group;

    /// Ada's page, her horn and today's sheet before one; the answer is worked out.
    void turn_to_ada();
    [[nodiscard]] std::string dump() const { return desk->file().dump(); }
};

}  // namespace lowledger::desk
