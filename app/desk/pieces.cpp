#include <algorithm>
#include <optional>

#include "app/desk/desk.h"
#include "app/desk/practice.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

bool has_student(const Desk& desk) {
    return desk.may_write() && desk.student();
}

/// The row chosen in the table of pieces, or its first.
std::optional<studio::Piece> chosen_piece(const Desk& desk) {
    if (!desk.student()) return std::nullopt;
    const auto pieces = desk.file().pieces(desk.student()->id);
    const auto chosen = desk.chosen(Table::pieces);
    const auto found =
        std::ranges::find_if(pieces, [&](const auto& piece) { return piece.id.number == chosen; });
    if (found != pieces.end()) return *found;
    return pieces.empty() ? std::nullopt : std::optional(pieces.front());
}

bool has_piece(const Desk& desk) {
    return desk.may_write() && chosen_piece(desk).has_value();
}

bool has_open_piece(const Desk& desk) {
    const auto piece = desk.may_write() ? chosen_piece(desk) : std::nullopt;
    return piece && !piece->until;
}

std::optional<studio::Piece> ask_piece(Desk& desk, studio::Piece piece, Sentence title, Sentence verb) {
    const auto& words = desk.words();
    Slip slip(words.say(title), words.say(verb));
    slip.text("title", words.say(Sentence::label_title), piece.title)
        .text("composer", words.say(Sentence::label_composer), piece.composer)
        .text("part", words.say(Sentence::label_part), piece.part)
        .date("from", words.say(Sentence::label_from), piece.from)
        .date_or_none("until", words.say(Sentence::label_until), piece.until)
        .text("remarks", words.say(Sentence::label_remarks), piece.remarks)
        .needs("title", words.say(Sentence::needs_piece))
        .must([early = words.say(Sentence::until_after_from)](
                  const SlipAnswers& answers) -> std::optional<SlipProblem> {
            const auto until = answers.date_or_none("until");
            if (until && *until <= answers.date("from")) return SlipProblem{"until", early};
            return std::nullopt;
        });
    const auto answers = desk.front().ask(slip);
    if (!answers) return std::nullopt;
    piece.title = answers->text("title");
    piece.composer = answers->text("composer");
    piece.part = answers->text("part");
    piece.from = answers->date("from");
    piece.until = answers->date_or_none("until");
    piece.remarks = answers->text("remarks");
    return piece;
}

void add_piece(Desk& desk) {
    const auto piece =
        ask_piece(desk, {.id = {}, .student = desk.student()->id, .title = {}, .from = desk.today()},
                  Sentence::slip_piece, Sentence::verb_add);
    if (!piece) return;
    studio::PieceId added;
    desk.file().edit(desk.words().say(Sentence::edit_add_piece, {{"title", piece->title}}),
                     [&](store::Edit& edit) { added = edit.add(*piece); });
    desk.choose(Table::pieces, added.number);
}

void change_piece(Desk& desk) {
    const auto piece =
        ask_piece(desk, *chosen_piece(desk), Sentence::slip_change_piece, Sentence::verb_change);
    if (!piece) return;
    desk.file().edit(desk.words().say(Sentence::edit_change_piece, {{"title", piece->title}}),
                     [&](store::Edit& edit) { edit.update(*piece); });
}

void finish_piece(Desk& desk) {
    auto piece = *chosen_piece(desk);
    // Half-open: a piece begun today is worked on today at least.
    piece.until = std::max(desk.today(), piece.from + 1);
    desk.file().edit(desk.words().say(Sentence::edit_finish_piece, {{"title", piece.title}}),
                     [&](store::Edit& edit) { edit.update(piece); });
}

void remove_piece(Desk& desk) {
    const auto piece = *chosen_piece(desk);
    const auto& words = desk.words();
    if (!desk.front().confirm(words.say(Sentence::ask_remove_piece, {{"title", piece.title}}),
                              words.say(Sentence::verb_remove)))
        return;
    desk.file().edit(words.say(Sentence::edit_remove, {{"name", piece.title}}),
                     [&](store::Edit& edit) { edit.remove(piece.id); });
}

}  // namespace

Listing pieces_listing(const Desk& desk) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {{words.say(Sentence::column_piece)},
                       {words.say(Sentence::column_part)},
                       {words.say(Sentence::column_when), false, true}};
    if (!desk.student()) return listing;
    for (const auto& piece : desk.file().pieces(desk.student()->id)) {
        const std::string title = piece.composer.empty() ? piece.title : piece.title + " · " + piece.composer;
        listing.rows.push_back(
            {piece.id.number,
             {title, piece.part,
              piece.until ? ListingCell(words.say(Sentence::piece_until,
                                                  {{"date", words::date_text(words, *piece.until)}}),
                                        *piece.until)
                          : ListingCell(words.say(Sentence::piece_since,
                                                  {{"date", words::date_text(words, piece.from)}}),
                                        piece.from)},
             piece.until && *piece.until <= desk.today()});
    }
    return listing;
}

std::vector<Action> piece_actions() {
    const auto action = [](std::string_view id, std::string_view text, auto may_run, auto run) {
        return Action{
            .id = id, .menu = Menu::routine, .text = text, .edits = true, .may_run = may_run, .run = run};
    };
    std::vector<Action> all = {action("piece.add", "Add &piece…", has_student, add_piece),
                               action("piece.change", "Change p&iece…", has_piece, change_piece),
                               action("piece.finish", "&Finish piece", has_open_piece, finish_piece),
                               action("piece.remove", "Remo&ve piece…", has_piece, remove_piece)};
    all.front().starts_group = true;
    return all;
}

}  // namespace lowledger::desk
