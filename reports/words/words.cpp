#include "reports/words/words.h"

#include <algorithm>
#include <stdexcept>
#include <toml++/toml.h>

#include "model/units/refusal.h"

#include "sentence_texts.h"

namespace lowledger::words {
namespace {

using units::Refusal;

std::size_t index(Sentence sentence) {
    return static_cast<std::size_t>(sentence);
}

/// Read once; the texts are part of the program, so that an id without a text is a mistake of the build.
const std::vector<std::string>& english() {
    static const std::vector<std::string> texts = [] {
        toml::table table;
        for (const auto& [file, text] : embedded::sentence_texts())
            for (auto&& [id, sentence] : toml::parse(text, file))
                if (!table.insert(id, sentence).second)
                    throw std::logic_error("A second sentence '" + std::string(id.str()) + "' in " +
                                           std::string(file));
        std::vector<std::string> read;
        for (const auto name : sentence_ids) {
            const auto text = table[name].value<std::string>();
            if (!text) throw std::logic_error("No sentence for '" + std::string(name) + "'");
            read.push_back(*text);
        }
        return read;
    }();
    return texts;
}

/// Calls `text(piece)` and `place(name)` in the order of `source`.
template <typename OnText, typename OnPlace>
void walk(std::string_view source, OnText on_text, OnPlace on_place) {
    const std::string whole(source);
    while (!source.empty()) {
        const auto open = source.find_first_of("{}");
        on_text(source.substr(0, open));
        if (open == std::string_view::npos) return;
        const auto close = source.find('}', open);
        const auto name =
            close == std::string_view::npos ? std::string_view{} : source.substr(open + 1, close - open - 1);
        const bool plain =
            !name.empty() && name.find_first_not_of("abcdefghijklmnopqrstuvwxyz_") == std::string_view::npos;
        if (source[open] == '}' || !plain) {
            throw Refusal("The text \"" + whole +
                          "\" has a brace that opens or closes no place; a place is written {name}.");
        }
        on_place(name);
        source.remove_prefix(close + 1);
    }
}

}  // namespace

std::set<std::string, std::less<>> places_of(std::string_view text) {
    std::set<std::string, std::less<>> places;
    walk(
        text, [](std::string_view) {}, [&](std::string_view name) { places.emplace(name); });
    return places;
}

std::string_view id(Sentence sentence) {
    return sentence_ids.at(index(sentence));
}

Words::Words() : texts_(english()) {
    std::transform(texts_.begin(), texts_.end(), std::back_inserter(places_), places_of);
}

Words::Words(const OwnTexts& own) : Words() {
    for (const auto& [name, text] : own) {
        const auto* const found = std::find(sentence_ids.begin(), sentence_ids.end(), name);
        if (found == sentence_ids.end()) {
            throw Refusal("There is no sentence \"" + name + "\" to replace; its text was left out of use.");
        }
        const auto at = static_cast<std::size_t>(found - sentence_ids.begin());
        if (text.empty())
            throw Refusal("The text for \"" + name + "\" is empty; write a sentence or remove it.");
        for (const auto& place : places_of(text)) {
            if (places_[at].contains(place)) continue;
            std::string sentence = "The text for \"";
            sentence.append(name).append("\" has a place {").append(place);
            sentence.append("} that this sentence does not fill. The program's text is: ")
                .append(english()[at]);
            throw Refusal(sentence);
        }
        texts_[at] = text;
    }
}

std::string Words::say(Sentence sentence, std::initializer_list<Filling> fillings) const {
    return filled(sentence, fillings);
}

std::string Words::say_counted(Sentence one, Sentence many, int count,
                               std::initializer_list<Filling> fillings) const {
    std::vector<Filling> with_count(fillings);
    with_count.push_back({"count", std::to_string(count)});
    return filled(count == 1 ? one : many, std::move(with_count));
}

const std::string& Words::text(Sentence sentence) const {
    return texts_.at(index(sentence));
}

std::string Words::filled(Sentence sentence, std::vector<Filling> fillings) const {
    const auto& wanted = places_.at(index(sentence));
    const auto is_wanted = [&](const Filling& f) { return wanted.contains(f.place); };
    if (fillings.size() != wanted.size() || !std::all_of(fillings.begin(), fillings.end(), is_wanted)) {
        throw std::logic_error("Sentence '" + std::string(id(sentence)) +
                               "' filled with other places than it has");
    }
    std::string said;
    walk(
        texts_[index(sentence)], [&](std::string_view piece) { said += piece; },
        [&](std::string_view name) {
            said += std::find_if(fillings.begin(), fillings.end(), [&](const Filling& f) {
                        return f.place == name;
                    })->text;
        });
    return said;
}

}  // namespace lowledger::words
