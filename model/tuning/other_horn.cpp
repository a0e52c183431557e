#include "model/tuning/other_horn.h"

#include <algorithm>

namespace lowledger::tuning {
namespace {

constexpr int horn_nobody_read = -1;

Terms on_horn(const Terms& terms, int horn) {
    Terms other;
    for (Term term : terms) {
        if (owner_of(term.key.kind) == TermOwner::horn) term.key.whose = horn;
        add_term(other, term.key, term.coefficient, term.law);
    }
    return other;
}

/// How much likelier the rows are if the sheet was read on that horn.
double log_ratio_of(const Examined& examined, const studio::TuningSheet* sheet, int horn,
                    studio::Date today) {
    std::vector<Row> rows = examined.rows;
    for (std::size_t row = 0; row < examined.evidence.notes.size(); ++row) {
        if (examined.evidence.notes[row].sheet == sheet) rows[row].terms = on_horn(rows[row].terms, horn);
    }
    return Conditioning(rows, today).log_likelihood() - examined.conditioning.log_likelihood();
}

}  // namespace

std::size_t sheets_examined(const Evidence& evidence) {
    std::size_t of_horn = 0;
    for (const PlayerOnHorn& source : evidence.sources) {
        if (source.model.owners().horn == 0) of_horn += source.sheets.used.size();
    }
    return of_horn > 1 ? evidence.own().sheets.used.size() : 0;
}

std::optional<SuspectSheet> least_like_this_horn(const Examined& examined, const TuningInputs& inputs) {
    const auto& used = examined.evidence.own().sheets.used;
    std::optional<SuspectSheet> suspect;
    if (sheets_examined(examined.evidence) == 0) return suspect;
    // Of two sheets that do not agree neither is more suspect; the later is the one to look at.
    constexpr double clearly = 1e-6;
    for (std::size_t k = used.size(); k-- > 0;) {
        const auto try_horn = [&](int horn, std::optional<std::size_t> fits) {
            const double ratio = log_ratio_of(examined, used[k], horn, inputs.today);
            if (suspect && ratio < suspect->warning.log_ratio + clearly) return;
            suspect = {{used[k]->id, used[k]->on, ratio, fits}, k};
        };
        try_horn(horn_nobody_read, std::nullopt);
        for (std::size_t other = 0; other < inputs.other_horns.size(); ++other) {
            if (inputs.other_horns[other].kind.id == inputs.kind.id)
                try_horn(static_cast<int>(other) + 1, other);
        }
    }
    return suspect;
}

}  // namespace lowledger::tuning
