#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/studio/date.h"

namespace lowledger::desk {

/// One thing that can be chosen on a slip.
struct SlipChoice {
    /// What the answer holds; never shown.
    std::string key;
    std::string text;
    bool operator==(const SlipChoice&) const = default;
};

/// What a filled-in slip says, by the fields' ids. Asking for an id that the slip has not, or for what a
/// field's kind does not hold, throws std::logic_error.
class SlipAnswers {
  public:
    explicit SlipAnswers(std::map<std::string, std::string, std::less<>> values)
        : values_(std::move(values)) {}

    /// As typed, without space at its ends.
    [[nodiscard]] std::string text(std::string_view id) const;
    [[nodiscard]] bool empty(std::string_view id) const { return text(id).empty(); }
    [[nodiscard]] bool checked(std::string_view id) const { return text(id) == "yes"; }
    [[nodiscard]] studio::Date date(std::string_view id) const;
    /// Empty where no day was given.
    [[nodiscard]] std::optional<studio::Date> date_or_none(std::string_view id) const;
    /// The key of what was chosen.
    [[nodiscard]] std::string chosen(std::string_view id) const { return text(id); }
    /// The keys of all that were chosen, in the order of the choices.
    [[nodiscard]] std::vector<std::string> several(std::string_view id) const;

  private:
    std::map<std::string, std::string, std::less<>> values_;
};

/// What is wrong with a field, as a sentence.
struct SlipProblem {
    std::string field;
    std::string sentence;
};

/// A form that an action asks to be filled in, without a window: labelled fields, what they start with, and
/// what makes sense. The window shows it as a dialog; tests fill it from a table.
class Slip {
  public:
    /// `boxes` is `several` of a few short choices, side by side.
    enum class Kind { text, lines, date, date_or_none, check, choice, several, boxes };
    struct Field {
        /// Never shown; what answers and tests call it by.
        std::string id;
        Kind kind = Kind::text;
        /// With its mnemonic and colon: "&Name:". A check's has no colon.
        std::string label;
        /// As `SlipAnswers` holds it: a date in ISO form, "yes" for a check, keys by lines for several.
        std::string start;
        std::string hint;
        std::vector<SlipChoice> choices{};
        /// It counts only while the choice of that id stands at that key; empty: always.
        std::string only_with_choice{};
        std::string only_with_key{};
    };
    using Check = std::function<std::optional<SlipProblem>(const SlipAnswers&)>;

    /// `verb` is what the agreeing button says, with its mnemonic.
    Slip(std::string title, std::string verb) : title_(std::move(title)), verb_(std::move(verb)) {}

    /// A sentence above the fields.
    Slip& note(std::string sentence);
    /// `hint` says what may stand in the field, or what an empty one means.
    Slip& text(std::string id, std::string label, std::string start, std::string hint = {});
    Slip& lines(std::string id, std::string label, std::string start);
    Slip& date(std::string id, std::string label, studio::Date start);
    Slip& date_or_none(std::string id, std::string label, std::optional<studio::Date> start);
    Slip& check(std::string id, std::string label, bool start);
    /// `start` is the key of one of the choices; the first where it is none of them.
    Slip& choice(std::string id, std::string label, std::vector<SlipChoice> choices, std::string_view start);
    Slip& several(std::string id, std::string label, std::vector<SlipChoice> choices,
                  const std::vector<std::string>& start);
    Slip& boxes(std::string id, std::string label, std::vector<SlipChoice> choices,
                const std::vector<std::string>& start);
    /// The field added last counts only while the choice `id` stands at `key`.
    Slip& only_with(std::string id, std::string key);
    /// Adds to what has to hold before the slip is taken; asked in the order they were added.
    Slip& must(Check check);
    /// The field must not be empty, else `sentence` is said.
    Slip& needs(std::string id, std::string sentence);

    [[nodiscard]] const std::string& title() const { return title_; }
    [[nodiscard]] const std::string& verb() const { return verb_; }
    [[nodiscard]] const std::string& note() const { return note_; }
    [[nodiscard]] const std::vector<Field>& fields() const { return fields_; }
    /// Nothing where all is well.
    [[nodiscard]] std::optional<SlipProblem> problem(const SlipAnswers& answers) const;
    /// What it says with these texts in its fields, and the others as they start. Throws std::logic_error for
    /// an id that no field has, or a choice that there is not.
    [[nodiscard]] SlipAnswers filled_in(const std::map<std::string, std::string>& texts) const;

  private:
    std::string title_;
    std::string verb_;
    std::string note_;
    std::vector<Field> fields_;
    std::vector<Check> checks_;
};

}  // namespace lowledger::desk
