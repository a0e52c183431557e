#include "app/desk/desk.h"

#include <algorithm>
#include <utility>

#include "app/desk/lessons.h"
#include "app/desk/note_names.h"
#include "app/desk/recent.h"
#include "app/desk/routine_lists.h"
#include "app/desk/term_lists.h"
#include "model/exchange/kind_files.h"
#include "model/studio/kind_of.h"
#include "model/studio/questions.h"
#include "model/tuning/inputs.h"
#include "model/units/refusal.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

constexpr std::size_t most_steps_back = 50;

}  // namespace

Desk::Desk(Surroundings surroundings, Front& front)
    : surroundings_(std::move(surroundings)),
      front_(front),
      recent_(recent_studios(surroundings_.data_folder)),
      worker_(surroundings_.wake) {}

Desk::~Desk() {
    worker_.drop();
}

studio::TimeOfDay Desk::now() const {
    constexpr int afternoon = 15;
    return surroundings_.now ? surroundings_.now() : studio::TimeOfDay(afternoon, 0);
}

bool Desk::may_write() const {
    return file_ && file_->access() == store::Access::read_write;
}

void Desk::open(const std::filesystem::path& path) {
    try {
        take(store::StudioFile::open(path, store::Access::read_write));
    } catch (const store::StudioReadOnly&) {
        take(store::StudioFile::open(path, store::Access::read_only));
    }
}

void Desk::create(const NewStudio& studio) {
    {
        auto file = store::StudioFile::create(studio.path, studio.facts);
        add_missing_routines(file, words_);
    }
    // Opened anew, so that what a studio begins with is no step to undo.
    open(studio.path);
}

void Desk::open_sample() {
    const auto path = surroundings_.data_folder / "sample.lowledger";
    if (!std::filesystem::exists(path)) surroundings_.make_sample(path);
    open(path);
}

void Desk::take(store::StudioFile file) {
    worker_.drop();
    file_ = std::make_unique<store::StudioFile>(std::move(file));
    remember_studio(surroundings_.data_folder, file_->path());
    recent_ = recent_studios(surroundings_.data_folder);
    file_->on_change([this](const store::Change&) { records_changed(); });
    view_ = {.section = Section::last_time};
    if (!file_->students().empty()) view_.place = Place::today;
    been_.clear();
    chosen_.clear();
    hands_.clear();
    sheet_shown_.reset();
    new_sheet_wanted_ = false;
    read_subject();
    tell({.studio = true, .records = true, .view = true, .sheet = true, .answer = true});
}

void Desk::go(const View& view) {
    if (view == view_) return;
    const bool other_page =
        view.place != view_.place || view.student != view_.student || view.routine != view_.routine;
    const bool other_subject = other_page || view.horn != view_.horn || view.term != view_.term;
    if (other_page) {
        been_.push_back(view_);
        if (been_.size() > most_steps_back) been_.erase(been_.begin());
    }
    view_ = view;
    if (other_subject) {
        sheet_shown_.reset();
        new_sheet_wanted_ = false;
        if (file_) read_subject();
    } else if (file_) {
        read_lesson();
    }
    tell({.view = true, .sheet = other_subject, .answer = other_subject});
}

std::optional<std::int64_t> Desk::chosen(Table table) const {
    const auto found = chosen_.find(table);
    return found == chosen_.end() ? std::nullopt : std::optional(found->second);
}

void Desk::choose(Table table, std::int64_t row) {
    chosen_[table] = row;
    if (table == Table::lessons) read_lesson();
    tell({.view = true});
}

void Desk::go_back() {
    if (been_.empty()) return;
    const View last = been_.back();
    been_.pop_back();
    go(last);
    // Going there put the place just left on the list; back and back again must not swing between two.
    if (!been_.empty()) been_.pop_back();
}

void Desk::records_changed() {
    read_subject();
    tell({.records = true, .view = true, .sheet = true, .answer = true});
}

void Desk::read_subject() {
    student_.reset();
    horn_.reset();
    kind_.reset();
    term_.reset();
    horns_of_student_.clear();
    if (view_.place == Place::students && view_.student) {
        student_ = file_->student(*view_.student);
        if (student_) {
            for (const auto id : studio::horns_on(file_->horn_uses(student_->id), student_->id, today()))
                if (auto horn = file_->horn(id)) horns_of_student_.push_back(std::move(*horn));
        }
        const auto chosen =
            std::ranges::find_if(horns_of_student_, [&](const auto& horn) { return view_.horn == horn.id; });
        if (chosen != horns_of_student_.end())
            horn_ = *chosen;
        else if (!horns_of_student_.empty())
            horn_ = horns_of_student_.back();
    } else if (view_.place == Place::horns && view_.horn) {
        horn_ = file_->horn(*view_.horn);
    } else if (view_.place == Place::terms && view_.term) {
        term_ = file_->term(*view_.term);
    }
    if (horn_) kind_ = studio::kind_of(*horn_);
    chart_is_old_ = true;
    read_lesson();
    read_entry();
    ask_for_answer();
}

void Desk::read_lesson() {
    lesson_ = view_.place == Place::terms ? chosen_lesson(*this) : lesson_at(*file_, view_, today());
}

exchange::ReadableKinds Desk::kinds() const {
    if (file_) return exchange::readable_kinds(file_->path());
    return {horns::built_in_kinds(), {}};
}

bool Desk::kind_has_vanished() const {
    if (!horn_ || horns::find_kind(horns::built_in_kinds(), horn_->kind_id) != nullptr) return false;
    // A file that cannot be read may be the one.
    const auto read = kinds();
    return read.problems.empty() && horns::find_kind(read.kinds, horn_->kind_id) == nullptr;
}

studio::TuningSheet Desk::new_sheet() const {
    studio::TuningSheet sheet{.id = {}, .student = student_->id, .horn = horn_->id, .on = today()};
    sheet.tuner_a4 = file_->facts().a4;
    sheet.positions =
        tuning::known_positions(file_->slide_history(horn_->id), file_->sheets(horn_->id), sheet.on);
    return sheet;
}

void Desk::read_entry() {
    sheets_.clear();
    const auto before = std::exchange(entry_, std::nullopt);
    if (!student_ || !horn_) return;
    for (auto& sheet : file_->sheets(student_->id))
        if (sheet.horn == horn_->id) sheets_.push_back(std::move(sheet));

    const auto filed = std::ranges::find_if(sheets_, [&](const studio::TuningSheet& sheet) {
        if (sheet_shown_) return sheet.id == *sheet_shown_;
        return !new_sheet_wanted_ && sheet.on == today();
    });
    studio::TuningSheet sheet = new_sheet();
    const bool same_subject =
        before && before->sheet().student == student_->id && before->sheet().horn == horn_->id;
    if (filed != sheets_.end()) {
        sheet = *filed;
        sheet_shown_ = sheet.id;
    } else if (same_subject && (!before->sheet().id.filed() || before->sheet().id == sheet_shown_)) {
        // Not filed yet, or its filing was undone: what stands in its head stays.
        sheet = before->sheet();
        sheet.id = {};
        sheet.readings.clear();
    }
    entry_.emplace(*kind_, std::move(sheet), more_notes_);
    if (same_subject) entry_->keep_pending_of(*before);
}

void Desk::tell(const News& news) const {
    if (listener_) listener_(news);
}

void Desk::file_sheet(std::string_view name) {
    const studio::TuningSheet sheet = entry_->sheet();
    file_->edit(name, [&](store::Edit& edit) {
        if (sheet.id.filed())
            edit.update(sheet);
        else
            sheet_shown_ = edit.add(sheet);
    });
}

SheetEntry::Outcome Desk::type(Cell cell, std::string_view typed) {
    const SheetEntry before = *entry_;
    auto outcome = entry_->type(cell, typed);
    if (outcome.kind == SheetEntry::Outcome::Kind::taken) {
        const auto note = words::note_name_with_octave(entry_->rows().at(cell.row).note, note_style(*this));
        try {
            file_sheet(words_.say(Sentence::edit_reading, {{"note", note}}));
        } catch (...) {
            entry_ = before;
            throw;
        }
    } else if (outcome.kind != SheetEntry::Outcome::Kind::unchanged) {
        tell({.sheet = true});
    }
    return outcome;
}

void Desk::restore(Cell cell) {
    entry_->restore(cell);
    tell({.sheet = true});
}

void Desk::set_head(const studio::TuningSheet& head) {
    if (!entry_) return;
    auto with_readings = head;
    with_readings.readings = entry_->sheet().readings;
    if (with_readings == entry_->sheet()) return;
    const SheetEntry before = *entry_;
    entry_->set_head(head);
    if (!entry_->sheet().id.filed()) {
        tell({.sheet = true});
        return;
    }
    try {
        file_sheet(words_.say(Sentence::edit_sheet_head));
    } catch (...) {
        entry_ = before;
        throw;
    }
}

void Desk::show_sheet(std::optional<studio::TuningSheetId> sheet) {
    sheet_shown_ = sheet;
    new_sheet_wanted_ = !sheet;
    entry_.reset();
    read_entry();
    ask_for_answer();
    tell({.sheet = true, .answer = true});
}

void Desk::show_more_notes(bool more) {
    more_notes_ = more;
    if (!entry_) return;
    read_entry();
    tell({.sheet = true});
}

}  // namespace lowledger::desk
