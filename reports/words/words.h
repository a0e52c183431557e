#pragma once

#include <initializer_list>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "reports/words/sentence.h"

namespace lowledger::words {

/// What goes into one place of a sentence.
struct Filling {
    /// The place's name, without braces.
    std::string_view place;
    std::string text;
};

/// A teacher's (or a translator's) own texts, by the sentence's id.
using OwnTexts = std::map<std::string, std::string, std::less<>>;

/// Every sentence for people: the program's English, with own texts in place of some.
class Words {
  public:
    /// The program's English alone.
    Words();
    /// Throws Refusal, naming the id, for an id that no sentence has, an empty text, or a text with a place
    /// that the sentence does not fill. Leaving a place out is allowed.
    explicit Words(const OwnTexts& own);

    /// The sentence with its places filled. `fillings` must name the places of the program's text, each once:
    /// anything else is a mistake of the caller's and throws std::logic_error.
    [[nodiscard]] std::string say(Sentence sentence, std::initializer_list<Filling> fillings = {}) const;
    /// The sentence for one thing or for many, with `{count}` filled.
    [[nodiscard]] std::string say_counted(Sentence one, Sentence many, int count,
                                          std::initializer_list<Filling> fillings = {}) const;

    /// As it stands, places in braces: for an editor of own texts.
    [[nodiscard]] const std::string& text(Sentence sentence) const;

  private:
    [[nodiscard]] std::string filled(Sentence sentence, std::vector<Filling> fillings) const;
    std::vector<std::string> texts_;
    std::vector<std::set<std::string, std::less<>>> places_;
};

/// The id that own texts and translations use.
std::string_view id(Sentence sentence);

/// The names in braces of a text. Throws Refusal for braces that do not pair or hold no plain name.
std::set<std::string, std::less<>> places_of(std::string_view text);

}  // namespace lowledger::words
