#include "model/exchange/checks_json.h"

#include <string>
#include <string_view>

namespace lowledger::exchange {
namespace {

using Json = nlohmann::json;

std::string_view word(tuning::MoveKind what) {
    switch (what) {
        case tuning::MoveKind::nothing_moved:
            return "nothing_moved";
        case tuning::MoveKind::wrong_way:
            return "wrong_way";
        case tuning::MoveKind::another_slide:
            return "another_slide";
        case tuning::MoveKind::elsewhere:
            return "elsewhere";
        case tuning::MoveKind::as_told:
            break;
    }
    return "as_told";
}

Json or_null(const std::string& slide) {
    return slide.empty() ? Json(nullptr) : Json(slide);
}

Json account(const tuning::MoveAccount& account) {
    const bool elsewhere = account.what == tuning::MoveKind::elsewhere;
    return {{"what", word(account.what)},
            {"slide", or_null(account.slide)},
            {"instead", or_null(account.instead)},
            {"off_mm", elsewhere ? Json(account.off.value()) : Json(nullptr)},
            {"off_spread_mm", elsewhere ? Json(account.off_spread.value()) : Json(nullptr)},
            {"log_ratio", account.log_ratio}};
}

Json moves(const tuning::TuningProfile& profile) {
    Json all = Json::array();
    for (const tuning::MoveCheck& check : profile.moves) {
        Json moved = Json::array();
        for (const auto& [slide, by] : check.moved)
            moved.push_back({{"slide", slide}, {"by_mm", by.value()}});
        all.push_back({{"date", check.on.iso()},
                       {"since", check.since.iso()},
                       {"moved", moved},
                       {"told", check.told},
                       {"likeliest", account(check.likeliest)}});
    }
    return all;
}

Json other_horn(const tuning::TuningProfile& profile) {
    Json all = Json::array();
    for (const tuning::OtherHornWarning& warning : profile.other_horn)
        all.push_back({{"date", warning.on.iso()},
                       {"log_ratio", warning.log_ratio},
                       {"is_students_other", warning.fits.has_value()}});
    return all;
}

Json slides(const tuning::TuningProfile& profile) {
    Json all = Json::array();
    for (const tuning::SlideBelief& slide : profile.slides)
        all.push_back({{"slide", slide.slide}, {"bore", slide.bore}, {"bore_spread", slide.bore_spread}});
    return all;
}

Json arm(const tuning::TuningProfile& profile) {
    Json all = Json::array();
    for (const tuning::ArmBelief& place : profile.arm)
        all.push_back({{"position", place.position},
                       {"out_mm", place.out.value()},
                       {"spread_mm", place.spread.value()},
                       {"share_of_data", place.share_of_data}});
    return all;
}

}  // namespace

Json checks_json(const tuning::TuningProfile& profile) {
    const tuning::Correction& correction = profile.correction;
    return {{"sheets_of_other_horns", profile.sheets_of_other_horns},
            {"sheets_of_other_players", profile.sheets_of_other_players},
            {"moves", moves(profile)},
            {"other_horn", other_horn(profile)},
            {"correction",
             {{"part", correction.part},
              {"spread", correction.spread},
              {"low", correction.low},
              {"high", correction.high},
              {"share_of_data", correction.share_of_data}}},
            {"slides", slides(profile)},
            {"arm", arm(profile)}};
}

}  // namespace lowledger::exchange
