#include "app/desk/desk.h"
#include "model/units/refusal.h"

namespace lowledger::desk {

HornChart* Desk::horn_chart() {
    if (view_.place != Place::horns || !horn_) return nullptr;
    if (horn_chart_ && !chart_is_old_) return &*horn_chart_;
    HornChart made(*file_, *horn_, *kind_, today());
    if (horn_chart_) {
        try {
            made.keep_look_of(*horn_chart_, *file_, today());
        } catch (const units::Refusal&) {
            made.lean_as(std::nullopt, *file_, today());
        }
    }
    horn_chart_ = std::move(made);
    chart_is_old_ = false;
    return &*horn_chart_;
}

void Desk::lean_as(std::optional<std::size_t> player) {
    if (HornChart* const chart = horn_chart()) chart->lean_as(player, *file_, today());
    tell({.view = true});
}

void Desk::show_chart_as_table(bool table) {
    chart_as_table_ = table;
    tell({.view = true});
}

}  // namespace lowledger::desk
