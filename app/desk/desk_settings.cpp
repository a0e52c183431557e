#include <algorithm>
#include <utility>

#include "app/desk/desk.h"
#include "model/exchange/settings_json.h"
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

const tuning::TeacherHand& Desk::hand() const {
    static const tuning::TeacherHand none;
    if (!student_ || !horn_) return none;
    const auto found = hands_.find({student_->id, horn_->id});
    return found == hands_.end() ? none : found->second;
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

studio::GivenSettings Desk::given_settings() const {
    studio::GivenSettings given{.id = {}, .student = student_->id, .horn = horn_->id, .on = today()};
    if (entry_ && entry_->sheet().id.filed()) given.sheet = entry_->sheet().id;
    given.engine = exchange::engine_version();
    auto answer = *answer_.answer;
    if (!answer.certificate) answer.certificate = tuning::certify(answer.question, answer.settings);
    given.json = exchange::settings_json(*answer_.inputs, answer);
    return given;
}

std::optional<studio::GivenSettings> Desk::given_already(const studio::GivenSettings& settings) const {
    for (const auto& given : file_->given_settings(settings.student))
        if (given.horn == settings.horn && given.on == settings.on && given.json == settings.json)
            return given;
    return std::nullopt;
}

void Desk::give_out() {
    if (!may_write() || !answer_.there()) return;
    const auto given = given_settings();
    if (given_already(given)) return;
    file_->edit(words_.say(Sentence::edit_give_out, {{"name", student_->name}}),
                [&](store::Edit& edit) { edit.add(given); });
}

void Desk::slides_moved() {
    auto given = given_settings();
    const auto before = given_already(given);
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
