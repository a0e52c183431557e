#include "app/desk/given.h"

#include "model/exchange/settings_json.h"

namespace lowledger::desk {

studio::GivenSettings given_settings(const tuning::TuningInputs& question, tuning::TuningAnswer answer,
                                     studio::StudentId student, studio::HornId horn, studio::Date on) {
    studio::GivenSettings given{.id = {}, .student = student, .horn = horn, .on = on};
    given.engine = exchange::engine_version();
    if (!answer.certificate) answer.certificate = tuning::certify(answer.question, answer.settings);
    given.json = exchange::settings_json(question, answer);
    return given;
}

std::optional<studio::GivenSettings> given_already(const store::StudioFile& file,
                                                   const studio::GivenSettings& settings) {
    for (const auto& given : file.given_settings(settings.student))
        if (given.horn == settings.horn && given.on == settings.on && given.json == settings.json)
            return given;
    return std::nullopt;
}

}  // namespace lowledger::desk
