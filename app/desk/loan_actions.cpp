#include <algorithm>

#include "app/desk/action.h"
#include "app/desk/lending.h"
#include "app/desk/places.h"
#include "model/studio/due.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using studio::Loan;
using words::Sentence;

bool shows_loans(const Desk& desk) {
    return desk.view().place == Place::horns && section_of(desk.view()) == Section::loans;
}

bool has_loan(const Desk& desk) {
    return desk.may_write() && chosen_loan(desk).has_value();
}

bool may_lend(const Desk& desk) {
    return desk.may_write() && desk.horn() && !desk.horn()->archived && !loan_out(desk, desk.horn()->id);
}

/// The loan to bring back: the one out, whatever row is chosen.
bool may_bring_back(const Desk& desk) {
    return desk.may_write() && desk.horn() && loan_out(desk, desk.horn()->id);
}

/// What the fields of a loan say; those it has not stay as they are.
Loan loan_of(const SlipAnswers& answers, Loan loan) {
    loan.student = *id_of<studio::StudentId>(answers.chosen("student"));
    loan.mouthpiece = id_of<studio::MouthpieceId>(answers.chosen("mouthpiece"));
    loan.from = answers.date("from");
    loan.due = answers.date_or_none("due");
    loan.accessories = answers.text("accessories");
    loan.condition_out = answers.text("condition_out");
    loan.signed_on = answers.date_or_none("signed_on");
    loan.remarks = answers.text("remarks");
    return loan;
}

void ask_loan(Slip& slip, const Desk& desk, const Loan& start) {
    const auto& words = desk.words();
    slip.choice("student", words.say(Sentence::field_student), student_choices(desk, start.student),
                key_of(start.student))
        .choice("mouthpiece", words.say(Sentence::field_mouthpiece),
                mouthpiece_choices(desk, start.mouthpiece),
                start.mouthpiece ? key_of(*start.mouthpiece) : std::string())
        .date("from", words.say(Sentence::field_from), start.from)
        .date_or_none("due", words.say(Sentence::field_due), start.due)
        .text("accessories", words.say(Sentence::field_accessories), start.accessories)
        .text("condition_out", words.say(Sentence::field_condition_out), start.condition_out)
        .date_or_none("signed_on", words.say(Sentence::field_signed_on), start.signed_on)
        .text("remarks", words.say(Sentence::field_remarks), start.remarks);
}

/// Holds a loan, as `read` takes it from the answers, to the store's rules before anything is lost.
void must_be_free(Slip& slip, const Desk& desk, std::function<Loan(const SlipAnswers&)> read) {
    slip.must([&desk, read = std::move(read)](const SlipAnswers& answers) -> std::optional<SlipProblem> {
        const auto& words = desk.words();
        const Loan loan = read(answers);
        if (loan.due && *loan.due < loan.from)
            return SlipProblem{"due", words.say(Sentence::loan_due_before)};
        if (loan.until && *loan.until < loan.from)
            return SlipProblem{"until", words.say(Sentence::loan_back_before)};
        for (const auto& other : desk.file().loans(loan.horn))
            if (other.id != loan.id && studio::share_a_day(loan.from, loan.until, other.from, other.until))
                return SlipProblem{
                    "from", words.say(Sentence::loan_shares_day, {{"name", name_of(desk, other.student)}})};
        return std::nullopt;
    });
}

/// The mouthpiece, or without one the horn, was disinfected on hand-over.
studio::Upkeep disinfected(const Loan& loan, studio::Date on) {
    studio::Upkeep work{.id = {}, .work = studio::Upkeep::Work::disinfected, .noted_on = on, .done_on = on};
    if (loan.mouthpiece)
        work.mouthpiece = loan.mouthpiece;
    else
        work.horn = loan.horn;
    work.disinfected = true;
    return work;
}

/// Who plays the horn now, as whoever is to take it home; else the first student.
studio::StudentId likely_borrower(const Desk& desk, const std::vector<SlipChoice>& students) {
    if (desk.student()) return desk.student()->id;
    for (const auto& use : desk.file().horn_uses(desk.horn()->id))
        if (studio::holds_on(use.from, use.until, desk.today())) return use.student;
    return *id_of<studio::StudentId>(students.front().key);
}

void lend(Desk& desk) {
    const auto& words = desk.words();
    const studio::Horn horn = *desk.horn();
    const auto students = student_choices(desk);
    if (students.empty()) throw units::Refusal(words.say(Sentence::loan_needs_student));
    Loan start{.id = {}, .horn = horn.id, .student = likely_borrower(desk, students), .from = desk.today()};
    start.accessories = horn.accessories;
    start.condition_out = horn.condition;
    for (const auto& mouthpiece : desk.file().mouthpieces())
        if (mouthpiece.horn == horn.id && !mouthpiece.archived) start.mouthpiece = mouthpiece.id;

    Slip slip(words.say(Sentence::lend_title, {{"mark", horn.mark}}), words.say(Sentence::lend_verb));
    slip.note(words.say(Sentence::lend_caution));
    ask_loan(slip, desk, start);
    slip.check("disinfected", words.say(Sentence::field_disinfected_now), false);
    must_be_free(slip, desk, [&](const SlipAnswers& answers) { return loan_of(answers, start); });
    const auto answers = desk.front().ask(slip);
    if (!answers) return;
    const Loan loan = loan_of(*answers, start);
    desk.file().edit(
        words.say(Sentence::edit_lend, {{"mark", horn.mark}, {"name", name_of(desk, loan.student)}}),
        [&](store::Edit& edit) {
            edit.add(loan);
            if (answers->checked("disinfected")) edit.add(disinfected(loan, desk.today()));
        });
}

/// The horn's condition is what it came back in, and what is to be repaired stands on the list.
void note_condition(store::Edit& edit, studio::Horn horn, const SlipAnswers& answers, studio::Date on) {
    if (const auto condition = answers.text("condition_in"); condition != horn.condition) {
        horn.condition = condition;
        edit.update(horn);
    }
    if (answers.empty("to_repair")) return;
    studio::Upkeep work{.id = {}, .horn = horn.id, .work = studio::Upkeep::Work::repaired, .noted_on = on};
    work.what = answers.text("to_repair");
    edit.add(work);
}

void bring_back_of_page(Desk& desk) {
    const studio::Horn horn = *desk.horn();
    bring_back(desk, horn, *loan_out(desk, horn.id));
}

void change_loan(Desk& desk) {
    const auto& words = desk.words();
    const Loan start = *chosen_loan(desk);
    const auto mark = desk.horn()->mark;
    const auto title =
        words.say(Sentence::loan_title, {{"mark", mark}, {"name", name_of(desk, start.student)}});
    Slip slip(title, words.say(Sentence::verb_keep));
    ask_loan(slip, desk, start);
    slip.date_or_none("until", words.say(Sentence::field_until), start.until)
        .text("condition_in", words.say(Sentence::field_condition_in), start.condition_in);
    const auto read = [start](const SlipAnswers& answers) {
        Loan loan = loan_of(answers, start);
        loan.until = answers.date_or_none("until");
        loan.condition_in = answers.text("condition_in");
        return loan;
    };
    must_be_free(slip, desk, read);
    if (const auto answers = desk.front().ask(slip))
        desk.file().edit(words.say(Sentence::edit_change_loan, {{"mark", mark}}),
                         [&](store::Edit& edit) { edit.update(read(*answers)); });
}

void sign_loan(Desk& desk) {
    Loan loan = *chosen_loan(desk);
    const auto name = loan.signed_on ? Sentence::edit_loan_not_signed : Sentence::edit_loan_signed;
    loan.signed_on = loan.signed_on ? std::nullopt : std::optional(desk.today());
    desk.file().edit(desk.words().say(name, {{"mark", desk.horn()->mark}}),
                     [&](store::Edit& edit) { edit.update(loan); });
}

void remove_loan(Desk& desk) {
    const auto& words = desk.words();
    const Loan loan = *chosen_loan(desk);
    const auto mark = desk.horn()->mark;
    const auto question =
        words.say(Sentence::ask_remove_loan, {{"mark", mark},
                                              {"name", name_of(desk, loan.student)},
                                              {"date", words::date_text(words, loan.from)}});
    if (!desk.front().confirm(question, words.say(Sentence::verb_remove))) return;
    desk.file().edit(words.say(Sentence::edit_remove_loan, {{"mark", mark}}),
                     [&](store::Edit& edit) { edit.remove(loan.id); });
}

}  // namespace

void bring_back(Desk& desk, const studio::Horn& horn, Loan loan) {
    const auto& words = desk.words();
    const auto name = name_of(desk, loan.student);
    const std::initializer_list<words::Filling> who = {{"mark", horn.mark}, {"name", name}};
    Slip slip(words.say(Sentence::back_title, who), words.say(Sentence::back_verb));
    slip.note(words.say(Sentence::lend_caution))
        .date("until", words.say(Sentence::field_on), std::max(desk.today(), loan.from))
        .text("condition_in", words.say(Sentence::field_condition_in_now), loan.condition_out)
        .text("to_repair", words.say(Sentence::field_to_repair), {}, words.say(Sentence::hint_to_repair))
        .check("disinfected", words.say(Sentence::field_disinfected_now), false);
    must_be_free(slip, desk, [loan](const SlipAnswers& answers) {
        Loan back = loan;
        back.until = answers.date("until");
        return back;
    });
    const auto answers = desk.front().ask(slip);
    if (!answers) return;
    loan.until = answers->date("until");
    loan.condition_in = answers->text("condition_in");
    desk.file().edit(words.say(Sentence::edit_bring_back, who), [&](store::Edit& edit) {
        edit.update(loan);
        note_condition(edit, horn, *answers, *loan.until);
        if (answers->checked("disinfected")) edit.add(disinfected(loan, desk.today()));
    });
}

std::vector<Action> loan_actions() {
    return {
        {.id = "loan.lend",
         .menu = Menu::horn,
         .text = "&Lend horn…",
         .key = "Ctrl+Shift+L",
         .edits = true,
         .starts_group = true,
         .may_run = may_lend,
         .run = lend},
        {.id = "loan.back",
         .menu = Menu::horn,
         .text = "&Bring back…",
         .key = "Ctrl+Shift+B",
         .edits = true,
         .may_run = may_bring_back,
         .run = bring_back_of_page},
        {.id = "loan.change",
         .menu = Menu::horn,
         .text = "Cha&nge loan…",
         .edits = true,
         .may_run = has_loan,
         .run = change_loan,
         .shown = shows_loans},
        {.id = "loan.signed",
         .menu = Menu::horn,
         .text = "Form si&gned today",
         .key = "Ctrl+Shift+G",
         .edits = true,
         .may_run = has_loan,
         .run = sign_loan,
         .shown = shows_loans,
         .full_text =
             [](const Desk& desk) {
                 const auto loan = desk.has_studio() ? chosen_loan(desk) : std::nullopt;
                 return std::string(loan && loan->signed_on ? "Form not si&gned" : "Form si&gned today");
             }},
        {.id = "loan.remove",
         .menu = Menu::horn,
         .text = "Rem&ove loan…",
         .edits = true,
         .may_run = has_loan,
         .run = remove_loan,
         .shown = shows_loans},
    };
}

}  // namespace lowledger::desk
