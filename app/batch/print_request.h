#pragma once

#include <string>
#include <vector>

#include "app/batch/verbs.h"
#include "model/store/studio_file.h"
#include "reports/canvas/faces.h"
#include "reports/pages/handout.h"
#include "reports/pages/named.h"

namespace lowledger::batch {

/// What every verb that prints from a studio is asked.
struct PrintRequest {
    std::string studio;
    std::string into;
    std::vector<std::string> students;
    /// A class or a group; empty: everybody.
    std::string group;
    std::string paper;
    std::string date;
    bool large_print = false;
};

void add_print_options(CLI::App& verb, PrintRequest& request);

/// The day asked for, else today. Throws Refusal.
studio::Date day_of(const PrintRequest& request, studio::Date today);

/// The studio's facts with the paper asked for. Throws Refusal.
studio::StudioFacts facts_of(const store::StudioFile& file, const PrintRequest& request);

/// Those asked for by name or group, else everybody not archived, by name. Throws Refusal that lists the
/// groups where there is none of that name.
std::vector<studio::Student> students_asked(const store::StudioFile& file, const PrintRequest& request,
                                            studio::Date day);

/// A student with a horn they play on the day.
struct PlayerAsked {
    studio::Student student;
    studio::Horn horn;
};

/// Those asked for, else everybody not archived, with each horn they play; says on the error stream who
/// plays none and whose kind has vanished. Throws Refusal where nobody is left.
std::vector<PlayerAsked> players_of(const store::StudioFile& file, const PrintRequest& request,
                                    studio::Date day, std::ostream& errors);

/// "Ida Holm, T-4"
std::string name_of(const PlayerAsked& player);

/// All that the page for a player tells.
pages::HandoutInputs inputs_of(const store::StudioFile& file, const studio::StudioFacts& facts,
                               const PlayerAsked& player, studio::Date day, bool large_print);

/// Throws Refusal, before any work, where what is asked for cannot be written.
void require_place(const PrintRequest& request);
/// Says on the error stream which characters of the pages no font here can draw.
void tell_undrawable(const canvas::Document& document, const canvas::Faces& faces, std::ostream& errors);
/// One file with bookmarks or a file each, as the place asked for ends; all or none. Then tells what of them
/// cannot be drawn.
void write_documents(const PrintRequest& request, const std::vector<pages::NamedDocument>& documents,
                     const std::string& title, const canvas::Faces& faces, std::ostream& errors);

}  // namespace lowledger::batch
