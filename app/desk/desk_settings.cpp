#include <algorithm>
#include <utility>

#include "app/desk/desk.h"
#include "app/desk/given.h"
#include "model/tuning/inputs.h"

namespace lowledger::desk {

using words::Sentence;

void Desk::ask_for_answer() {
    worker_.drop();
    answer_ = {};
    if (!student_ || !horn_ || !entry_) return;
    auto inputs = tuning::inputs_of_studio(
        file_->facts(), *student_, *horn_, *kind_, file_->students(), file_->horns(),
        [&](studio::HornId id) { return file_->slide_history(id); }, file_->sheets(student_->id),
        file_->sheets(horn_->id), today());
    inputs.hand = hand();
    answer_.inputs = inputs;
    worker_.ask([this, inputs = std::move(inputs)](const std::stop_token& stop) -> Worker::Delivery {
        if (stop.stop_requested()) return nullptr;
        LiveAnswer live = worked_out(inputs);
        return [this, live = std::move(live)] {
            answer_ = live;
            tell({.answer = true});
            ask_for_certificate();
        };
    });
}

void Desk::ask_for_certificate() {
    if (!answer_.there()) return;
    worker_.ask([this, question = answer_.answer->question,
                 settings = answer_.answer->settings](const std::stop_token& stop) -> Worker::Delivery {
        auto certificate = tuning::certify(question, settings, stop);
        if (stop.stop_requested()) return nullptr;
        return [this, certificate = std::move(certificate)] {
            answer_.answer->certificate = certificate;
            tell({.answer = true});
        };
    });
}

const tuning::TeacherHand& Desk::hand_of(studio::StudentId student, studio::HornId horn) const {
    static const tuning::TeacherHand none;
    const auto found = hands_.find({student, horn});
    return found == hands_.end() ? none : found->second;
}

const tuning::TeacherHand& Desk::hand() const {
    return hand_of(student_ ? student_->id : studio::StudentId{}, horn_ ? horn_->id : studio::HornId{});
}

void Desk::set_hand(const tuning::TeacherHand& hand) {
    if (!student_ || !horn_ || hand == this->hand()) return;
    hands_[{student_->id, horn_->id}] = hand;
    ask_for_answer();
}

std::optional<int> Desk::outlying_take(std::size_t row) const {
    if (!entry_ || !answer_.there()) return std::nullopt;
    const auto& of_row = entry_->rows().at(row);
    for (const auto& outlying : answer_.answer->profile.outlying)
        if (outlying.sheet == entry_->sheet().id && outlying.note == of_row.note &&
            outlying.fingering == of_row.fingering && entry_->reading({row, outlying.take}))
            return outlying.take;
    return std::nullopt;
}

studio::GivenSettings Desk::settings_to_give() const {
    auto given = given_settings(*answer_.inputs, *answer_.answer, student_->id, horn_->id, today());
    if (entry_ && entry_->sheet().id.filed()) given.sheet = entry_->sheet().id;
    return given;
}

void Desk::give_out() {
    if (!may_write() || !answer_.there()) return;
    const auto given = settings_to_give();
    if (given_already(*file_, given)) return;
    file_->edit(words_.say(Sentence::edit_give_out, {{"name", student_->name}}),
                [&](store::Edit& edit) { edit.add(given); });
}

void Desk::slides_moved() {
    auto given = settings_to_give();
    const auto before = given_already(*file_, given);
    if (before) given = *before;
    given.moved_on = today();
    const auto slides = answer_.answer->settings.slides;
    file_->edit(words_.say(Sentence::edit_slides_moved, {{"mark", horn_->mark}}), [&](store::Edit& edit) {
        if (before)
            edit.update(given);
        else
            edit.add(given);
        for (const auto& slide : slides) {
            // Where a slide of unknown position ends up is unknown too.
            if (!slide.position_known) continue;
            edit.add(studio::SlidePosition{.id = {},
                                           .horn = given.horn,
                                           .slide = slide.slide,
                                           .on = today(),
                                           .position = slide.recommended,
                                           .origin = studio::SlidePosition::Origin::moved});
        }
    });
}

}  // namespace lowledger::desk
