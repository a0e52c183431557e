#include "model/store/refusals.h"

#include <fmt/format.h>
#include <sqlite3.h>
#include <string>
#include <string_view>

#include "model/store/studio_file.h"

namespace lowledger::store {
namespace {

std::string disk_full(Task task, const std::string& file) {
    switch (task) {
        case Task::create:
            return fmt::format(
                "The disk is full, so the studio {} was not made: free some space and try again.", file);
        case Task::copy:
            return fmt::format("The disk is full, so no copy of {} was made: free some space and try again.",
                               file);
        case Task::edit:
            return fmt::format(
                "The disk is full, so the change was not filed in {}: free some space and make the "
                "change again. Everything filed before is safe.",
                file);
        case Task::open:
        case Task::read:
            break;
    }
    return fmt::format("The disk is full, so {} could not be read: free some space and try again.", file);
}

std::string disk_failed(Task task, const std::string& file, std::string_view detail) {
    if (task == Task::edit) {
        return fmt::format(
            "The change was not filed in {}: the disk is full or failing ({}). Everything filed "
            "before is as it was; free some space or check the disk, then make the change again.",
            file, detail);
    }
    return fmt::format(
        "{} could not be read or written: the disk is full or failing ({}). Nothing was changed; "
        "free some space or check the disk.",
        file, detail);
}

/// SQLite says "CHECK constraint failed: a student has a name"; the rule is the constraint's name.
std::string broken_rule(const SQLite::Exception& failure, const std::string& file) {
    if (failure.getExtendedErrorCode() == SQLITE_CONSTRAINT_FOREIGNKEY) {
        return fmt::format(
            "The change was not filed in {}: it names a record that is not there. "
            "Choose it again.",
            file);
    }
    const std::string_view message = failure.what();
    const auto colon = message.find(": ");
    const std::string_view rule = colon == std::string_view::npos ? message : message.substr(colon + 2);
    return fmt::format("The change was not filed in {}: it breaks the rule that {}.", file, rule);
}

}  // namespace

void refuse(const SQLite::Exception& failure, Task task, const std::filesystem::path& path) {
    const std::string file = path.string();
    switch (failure.getErrorCode()) {
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            throw StudioBusy(
                fmt::format("Another program is writing {} now: nothing was changed here. Wait for it "
                            "or close it there, then try again.",
                            file));
        case SQLITE_READONLY:
            throw StudioReadOnly(
                fmt::format("{} cannot be written: nothing was changed. Copy it to a folder of "
                            "yours, or open it for reading only.",
                            file));
        case SQLITE_NOTADB:
            throw NotAStudio(
                fmt::format("{} is not a studio of this program, or its beginning is damaged: choose "
                            "another file, or go back to a copy.",
                            file));
        case SQLITE_CORRUPT:
            throw StudioDamaged(
                fmt::format("The studio {} is damaged ({}): leave the file as it is and go back to "
                            "a copy.",
                            file, failure.what()));
        case SQLITE_FULL:
            throw units::Refusal(disk_full(task, file));
        case SQLITE_IOERR:
            throw units::Refusal(disk_failed(task, file, failure.what()));
        case SQLITE_CONSTRAINT:
            throw units::Refusal(broken_rule(failure, file));
        case SQLITE_CANTOPEN:
            throw units::Refusal(
                fmt::format("{} could not be opened: check that the folder is there and that you "
                            "may use the file.",
                            file));
        default:
            throw units::Refusal(
                fmt::format("{} could not be used ({}): nothing was changed.", file, failure.what()));
    }
}

}  // namespace lowledger::store
