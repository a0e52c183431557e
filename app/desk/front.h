#pragma once

#include <cstddef>
#include <filesystem>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/desk/slip.h"
#include "model/studio/found.h"
#include "model/studio/records.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"

namespace lowledger::desk {

struct NewStudio {
    std::filesystem::path path;
    studio::StudioFacts facts;
};

/// Which horn a student plays from a day on.
struct HornChoice {
    studio::HornId horn;
    studio::Date from;
    /// The horns played until now are given back on that day; else this one comes on top.
    bool instead = true;
};

/// Where the slides of a horn stand by the rule, on a day.
struct MeasuredSlides {
    studio::Date on;
    std::map<std::string, units::Millimetres> positions;
};

/// A horn to be added, and where its slides stand, as far as that is known.
struct NewHorn {
    studio::Horn horn;
    std::map<std::string, units::Millimetres> positions;
};

class NoteChart;
class PassEntry;

/// What an action asks of whoever sits before the desk, and what it shows them. The window opens dialogs;
/// tests answer from a list. An empty answer is 'never mind'.
class Front {
  public:
    virtual ~Front() = default;
    virtual std::optional<NewStudio> ask_new_studio(const NewStudio& start) = 0;
    virtual std::optional<std::filesystem::path> ask_studio_to_open() = 0;
    virtual std::optional<std::filesystem::path> ask_where_to_copy(const std::filesystem::path& start) = 0;
    virtual std::optional<studio::StudioFacts> ask_facts(const studio::StudioFacts& start) = 0;
    virtual std::optional<studio::Student> ask_student(const studio::Student& start) = 0;
    /// Of one of the kinds that the desk offers.
    virtual std::optional<NewHorn> ask_new_horn() = 0;
    virtual std::optional<studio::Horn> ask_horn(const studio::Horn& start) = 0;
    virtual std::optional<HornChoice> ask_horn_of(const studio::Student& student,
                                                  const HornChoice& start) = 0;
    virtual std::optional<MeasuredSlides> ask_measured(const studio::Horn& horn,
                                                       const MeasuredSlides& start) = 0;
    /// Lets the readings of a section pass be typed; false where they are to be thrown away. What is left of
    /// the pass has nothing that was not taken.
    virtual bool type_pass(const std::string& title, PassEntry& pass) = 0;
    /// The slip filled in, with nothing wrong.
    virtual std::optional<SlipAnswers> ask(const Slip& slip) = 0;
    /// `verb` is what the agreeing button says.
    virtual bool confirm(const std::string& question, const std::string& verb) = 0;
    /// The handout of what is on the desk, to look at, save or print.
    virtual void show_handout() = 0;
    /// The chart as it is printed, to look at, save or print.
    virtual void show_chart(const NoteChart& chart) = 0;
    /// The fonts that pages are laid out with.
    virtual const canvas::Faces& faces() = 0;
    /// Pages to look at, save or print; `handed_on` is called when they were saved, printed or opened
    /// elsewhere.
    virtual void show_document(canvas::Document document, const std::string& file_name,
                               std::function<void()> handed_on) = 0;
    /// Does a piece of work for each name in turn; where it takes long, shows how far it is and lets it be
    /// stopped. False if it was. What a piece throws goes on.
    virtual bool work_through(const std::vector<std::string>& names,
                              const std::function<void(std::size_t)>& piece) = 0;
    /// The chart of a kind that is chosen there, owned or not.
    virtual void show_kind_charts() = 0;
    virtual void show_find_field() = 0;
    /// A record anywhere in the studio, as `find_anything` finds it.
    virtual std::optional<studio::Found> ask_what_to_find() = 0;
    /// The manual, opened at the part of that title.
    virtual void show_manual(std::string_view title) = 0;
    /// Shows what stands beside the settings: what remains (0), the teacher's hand (1), what they rest on
    /// (2).
    virtual void show_beside_settings(int part) = 0;
    /// The keys go to the section that is shown.
    virtual void show_section() = 0;
    /// Says what became of an action where nothing else shows it.
    virtual void say(const std::string& sentence) = 0;
    virtual void close() = 0;
};

}  // namespace lowledger::desk
