#include <CLI/CLI.hpp>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <optional>
#include <string>
#include <vector>
#include <wx/app.h>
#include <wx/config.h>
#include <wx/filename.h>
#include <wx/log.h>
#include <wx/stdpaths.h>
#include <wx/uilocale.h>
#include <wx/utils.h>

#include "app/desk/recent.h"
#include "app/window/errors.h"
#include "app/window/frame.h"
#include "app/window/text.h"

namespace lowledger::window {
namespace {

/// By the XDG base directory specification: $XDG_DATA_HOME/lowledger, else ~/.local/share/lowledger.
std::filesystem::path user_data_folder() {
    const char* set = std::getenv("XDG_DATA_HOME");
    const std::filesystem::path base =
        set != nullptr && *set == '/'
            ? std::filesystem::path(set)
            : std::filesystem::path(utf8(wxFileName::GetHomeDir())) / ".local/share";
    return base / "lowledger";
}

studio::Date clock_date() {
    const wxDateTime now = wxDateTime::Now();
    return {now.GetYear(), static_cast<int>(now.GetMonth()) + 1, now.GetDay()};
}

/// Down to five minutes, as lessons are planned.
studio::TimeOfDay clock_time() {
    constexpr int step = 5;
    const wxDateTime now = wxDateTime::Now();
    return {now.GetHour(), now.GetMinute() / step * step};
}

/// Asks the program for the command line, which holds the generator and stands beside this one.
void make_sample(const std::filesystem::path& path, studio::Date as_of) {
    const words::Words words;
    const std::filesystem::path here(utf8(wxStandardPaths::Get().GetExecutablePath()));
    const auto batch = here.parent_path() / "lowledger-batch";
    if (!std::filesystem::exists(batch)) throw units::Refusal(words.say(words::Sentence::no_sample_program));
    const std::vector<std::string> arguments = {batch.string(), "make-studio", path.string(), "--as-of",
                                                as_of.iso()};
    std::vector<const char*> command;
    command.reserve(arguments.size() + 1);
    for (const auto& argument : arguments)
        command.push_back(argument.c_str());
    command.push_back(nullptr);
    const wxBusyCursor busy;
    if (wxExecute(command.data(), wxEXEC_SYNC) != 0)
        throw units::Refusal(words.say(words::Sentence::sample_failed));
}

struct Options {
    std::filesystem::path studio;
    std::optional<studio::Date> as_of;
};

class App : public wxApp {
  public:
    explicit App(Options options) : options_(std::move(options)) {}

    bool OnInit() override {
        SetAppName("lowledger");
        SetAppDisplayName("Lowledger");
        wxUILocale::UseDefault();
        wxStandardPaths::Get().SetFileLayout(wxStandardPaths::FileLayout_XDG);
        // The toolkit does not make the folder, and fails at the end of the program without it.
        wxFileName::Mkdir(wxStandardPaths::Get().GetUserConfigDir(), wxS_DIR_DEFAULT, wxPATH_MKDIR_FULL);
        const auto data = user_data_folder();
        std::error_code ignored;
        std::filesystem::create_directories(data, ignored);
        return told(nullptr, [&] {
            auto today = options_.as_of ? [date = *options_.as_of] { return date; }
                                        : std::function<studio::Date()>(clock_date);
            auto* frame = new MainFrame(
                {today, data, [today](const auto& path) { make_sample(path, today()); }, clock_time});
            frame->Show();
            if (const auto studio = studio_to_open(data); !studio.empty()) frame->open_studio(studio);
        });
    }
    /// A mistake in an event is told; the program and the studio go on.
    bool OnExceptionInMainLoop() override {
        told(GetTopWindow(), [] { throw; });
        return true;
    }
    int OnExit() override {
        delete wxConfigBase::Set(nullptr);
        return wxApp::OnExit();
    }

  private:
    /// The one asked for, else the last one, else the sample.
    [[nodiscard]] std::filesystem::path studio_to_open(const std::filesystem::path& data) const {
        if (!options_.studio.empty()) return options_.studio;
        if (const auto recent = desk::recent_studios(data); !recent.empty()) return recent.front();
        const auto sample = data / "sample.lowledger";
        return std::filesystem::exists(sample) ? sample : std::filesystem::path();
    }

    Options options_;
};

}  // namespace
}  // namespace lowledger::window

int main(int argc, char** argv) {
    using namespace lowledger;
    CLI::App line("The studio book of a teacher of low brass.", "lowledger");
    std::string file;
    std::string as_of;
    line.add_option("FILE", file, "The studio to open; without it the last one, or the sample");
    line.add_option("--as-of", as_of, "Take this date, as in 2026-11-25, for today");
    line.set_version_flag("--version", LOWLEDGER_VERSION);
    CLI11_PARSE(line, argc, argv);
    window::Options options{file, std::nullopt};
    if (!as_of.empty()) {
        options.as_of = studio::Date::parse_iso(as_of);
        if (!options.as_of) {
            std::cerr << "--as-of: \"" << as_of << "\" is no date; write it as in 2026-11-25.\n";
            return 2;
        }
    }
    int none = 1;
    wxApp::SetInstance(new window::App(std::move(options)));
    return wxEntry(none, argv);
}
