#pragma once

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/studio/own_words.h"
#include "model/studio/records.h"
#include "model/units/refusal.h"

namespace lowledger::store {

/// Why a studio did not open or a change was not made; each a sentence that names the file and what to do.
class StudioMissing : public units::Refusal {
    using Refusal::Refusal;
};
/// Something is at that path, but no studio: a folder, an empty file, another program's file.
class NotAStudio : public units::Refusal {
    using Refusal::Refusal;
};
class StudioDamaged : public units::Refusal {
    using Refusal::Refusal;
};
class StudioNewer : public units::Refusal {
    using Refusal::Refusal;
};
/// Another program is writing it now.
class StudioBusy : public units::Refusal {
    using Refusal::Refusal;
};
class StudioReadOnly : public units::Refusal {
    using Refusal::Refusal;
};
/// Undo or redo met a change that another program made since; nothing was changed.
class StudioChangedElsewhere : public units::Refusal {
    using Refusal::Refusal;
};

enum class Access { read_write, read_only };

/// Which records an edit touched, for windows that show them.
struct Change {
    std::int64_t revision = 0;
    /// The name of the edit, as the undo menu shows it.
    std::string name;
    /// Names of the tables touched.
    std::vector<std::string> tables;
};

class Edit;

/// One studio: the file NAME.lowledger. Reads return values; writes only through `edit`. One thread.
class StudioFile {
  public:
    /// Throws Refusal if something is at `path` already or the folder cannot be written.
    static StudioFile create(const std::filesystem::path& path, const studio::StudioFacts& facts);
    /// Throws StudioMissing, NotAStudio, StudioDamaged, StudioNewer, StudioBusy, and StudioReadOnly where the
    /// file or its folder cannot be written and read_write is asked. Brings an older file up to date after
    /// keeping a copy of it beside it, "NAME (version 1).lowledger".
    static StudioFile open(const std::filesystem::path& path, Access access = Access::read_write);
    StudioFile(StudioFile&&) noexcept;
    StudioFile& operator=(StudioFile&&) noexcept;
    ~StudioFile();

    [[nodiscard]] const std::filesystem::path& path() const;
    [[nodiscard]] Access access() const;
    /// Raised by every edit, undo and redo, and when another program was seen to have changed the file: what
    /// was worked out at this revision holds as long as it is the same. Counts from 0 at opening.
    [[nodiscard]] std::int64_t revision() const;

    [[nodiscard]] studio::StudioFacts facts() const;
    /// The teacher's own sentences, by id.
    [[nodiscard]] std::vector<studio::OwnText> own_texts() const;
    [[nodiscard]] std::optional<studio::HeadPicture> head_picture() const;
    /// By name; archived ones last.
    [[nodiscard]] std::vector<studio::Student> students() const;
    [[nodiscard]] std::optional<studio::Student> student(studio::StudentId id) const;
    /// By mark; archived ones last.
    [[nodiscard]] std::vector<studio::Horn> horns() const;
    [[nodiscard]] std::optional<studio::Horn> horn(studio::HornId id) const;
    /// All of a horn's positions, oldest first.
    [[nodiscard]] std::vector<studio::SlidePosition> slide_history(studio::HornId id) const;
    /// The latest position of every slide on or before `on`, by slide id.
    [[nodiscard]] std::map<std::string, units::Millimetres> slide_positions(studio::HornId id,
                                                                            studio::Date on) const;
    [[nodiscard]] std::vector<studio::HornUse> horn_uses() const;
    /// By first day.
    [[nodiscard]] std::vector<studio::HornUse> horn_uses(studio::StudentId id) const;
    [[nodiscard]] std::vector<studio::HornUse> horn_uses(studio::HornId id) const;
    /// Newest first, with their readings.
    [[nodiscard]] std::vector<studio::TuningSheet> sheets(studio::StudentId student) const;
    [[nodiscard]] std::vector<studio::TuningSheet> sheets(studio::HornId horn) const;
    [[nodiscard]] std::optional<studio::TuningSheet> sheet(studio::TuningSheetId id) const;
    /// Newest first.
    [[nodiscard]] std::vector<studio::GivenSettings> given_settings(studio::StudentId id) const;
    [[nodiscard]] std::vector<studio::GivenSettings> given_settings(studio::HornId id) const;

    /// One transaction, one undo step, one revision, one notice. If `change` throws nothing is changed and
    /// the exception goes on. `change` may read this studio and sees what it wrote so far; it may catch a
    /// refusal of one call to `Edit`, which then did nothing, and go on. An edit that changes nothing makes
    /// no step. Waits two seconds for another writer. Throws StudioReadOnly, StudioBusy, or Refusal (disk
    /// full, a value that breaks a rule). An edit inside an edit is a std::logic_error.
    void edit(std::string_view name, const std::function<void(Edit&)>& change);

    /// The name of the edit that would be undone or redone.
    [[nodiscard]] std::optional<std::string> undo_name() const;
    [[nodiscard]] std::optional<std::string> redo_name() const;
    /// Nothing happens when there is none. Throw StudioChangedElsewhere when another program's edit stands in
    /// the way (nothing is changed and the step stays), and what `edit` throws.
    void undo();
    void redo();

    /// Called after every edit, undo and redo, and when another program's change is noticed. One listener; it
    /// must not throw, and may read.
    void on_change(std::function<void(const Change&)> listener);
    /// For quiet moments and when the window comes to the front: if another program has changed the file
    /// since the last notice, tells the listener (no name, every table) and returns true.
    bool notice_changes_elsewhere();

    /// How long an edit waits for another writer before StudioBusy.
    void wait_for_others_at_most(std::chrono::milliseconds time);

    /// All record tables as SQL text in a fixed order: equal dumps are equal studios. For tests and support.
    [[nodiscard]] std::string dump() const;
    /// A whole copy at `path` (VACUUM INTO), complete or absent.
    void copy_to(const std::filesystem::path& path) const;
    /// Empty when sound; else what is wrong. Slow on large files: not on the opening path.
    [[nodiscard]] std::vector<std::string> check() const;

  private:
    struct Implementation;
    explicit StudioFile(std::unique_ptr<Implementation> implementation);
    std::unique_ptr<Implementation> implementation_;
    friend class Edit;
};

/// The writing side, alive only inside `StudioFile::edit`. `add` ignores the record's id and returns the new
/// one. `update` and `remove` throw Refusal if there is no such record. Removing takes what only belongs to
/// it along: with a student go their sheets, uses, settings given out and own horns (refused while others
/// have played one of these); with a horn its slides, history, sheets, uses and settings; with a sheet its
/// readings, while settings given from it stay. A slide that an updated horn no longer lists goes with its
/// history. Every call does all or nothing.
class Edit {
  public:
    void update(const studio::StudioFacts& facts);
    /// In place of what was there, if anything was; removing what is not there is nothing.
    void put(const studio::OwnText& text);
    void remove_own_text(std::string_view sentence);
    void put(const studio::HeadPicture& picture);
    void remove_head_picture();
    studio::StudentId add(const studio::Student& student);
    void update(const studio::Student& student);
    void remove(studio::StudentId id);
    studio::HornId add(const studio::Horn& horn);
    void update(const studio::Horn& horn);
    void remove(studio::HornId id);
    studio::SlidePositionId add(const studio::SlidePosition& position);
    void remove(studio::SlidePositionId id);
    studio::HornUseId add(const studio::HornUse& use);
    void update(const studio::HornUse& use);
    void remove(studio::HornUseId id);
    studio::TuningSheetId add(const studio::TuningSheet& sheet);
    void update(const studio::TuningSheet& sheet);
    void remove(studio::TuningSheetId id);
    studio::GivenSettingsId add(const studio::GivenSettings& settings);
    void update(const studio::GivenSettings& settings);
    void remove(studio::GivenSettingsId id);

  private:
    explicit Edit(StudioFile::Implementation& implementation) : implementation_(implementation) {}
    StudioFile::Implementation& implementation_;
    friend class StudioFile;
};

}  // namespace lowledger::store
