#include "reports/engraving/music_text.h"

#include <array>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <utility>

#include "model/units/number_text.h"
#include "model/units/refusal.h"

namespace lowledger::engraving {
namespace {

template <typename Value>
using Named = std::pair<std::string_view, Value>;

constexpr std::array<Named<horns::Clef>, 4> clefs = {{{"bass", horns::Clef::bass},
                                                      {"treble", horns::Clef::treble},
                                                      {"tenor", horns::Clef::tenor},
                                                      {"alto", horns::Clef::alto}}};
constexpr std::array<Named<Dynamic>, 6> dynamics = {{{"pp", Dynamic::pp},
                                                     {"p", Dynamic::p},
                                                     {"mp", Dynamic::mp},
                                                     {"mf", Dynamic::mf},
                                                     {"f", Dynamic::f},
                                                     {"ff", Dynamic::ff}}};
constexpr std::array<Named<BarLine>, 5> bar_lines = {{{"|", BarLine::single},
                                                      {"||", BarLine::double_line},
                                                      {"|.", BarLine::final_line},
                                                      {"|:", BarLine::repeat_starts},
                                                      {":|", BarLine::repeat_ends}}};
constexpr std::array<Named<Duration>, 4> durations = {
    {{"1", Duration::whole}, {"2", Duration::half}, {"4", Duration::quarter}, {"8", Duration::eighth}}};
constexpr std::array<Named<Hairpin>, 2> hairpins = {{{"<", Hairpin::louder}, {">", Hairpin::softer}}};

template <typename Value, std::size_t count>
std::optional<Value> named(const std::array<Named<Value>, count>& names, std::string_view word) {
    for (const auto& [name, value] : names) {
        if (name == word) return value;
    }
    return std::nullopt;
}

template <typename Value, std::size_t count>
std::string name_of(const std::array<Named<Value>, count>& names, Value value) {
    for (const auto& [name, named_value] : names) {
        if (named_value == value) return std::string(name);
    }
    return {};
}

bool is_space(char c) {
    return std::isspace(static_cast<unsigned char>(c)) != 0;
}

std::string quoted(std::string_view text) {
    return "\"" + std::string(text) + "\"";
}

/// Reads the text from front to back.
class Parser {
  public:
    explicit Parser(std::string_view text) : text_(text) {}

    MusicLine parse() {
        for (skip_space(); at_ < text_.size(); skip_space())
            parse_word();
        const std::size_t end = text_.size();
        if (open_slur_) refuse(*open_slur_, "This slur is not closed; put ) after its last note.");
        if (tie_from_) refuse(*tie_from_, "This tie leads to no note; take ~ away or add the note.");
        if (pending_) refuse(pending_at_, "After this a note must follow.");
        check_bar(end, true);
        return std::move(line_);
    }

  private:
    [[noreturn]] void refuse(std::size_t at, const std::string& what) const {
        std::size_t row = 1;
        std::size_t column = 1;
        for (std::size_t i = 0; i < std::min(at, text_.size()); ++i) {
            ++column;
            if (text_[i] == '\n') {
                ++row;
                column = 1;
            }
        }
        const bool one_row = text_.find('\n') == std::string_view::npos;
        throw units::Refusal("Music, " + (one_row ? "" : "line " + std::to_string(row) + ", ") + "column " +
                             std::to_string(column) + ": " + what);
    }

    void skip_space() {
        while (at_ < text_.size() && is_space(text_[at_]))
            ++at_;
    }

    /// What stands before the next white space or one of `stops`.
    std::string_view take_until(std::string_view stops) {
        const std::size_t from = at_;
        while (at_ < text_.size() && !is_space(text_[at_]) &&
               stops.find(text_[at_]) == std::string_view::npos)
            ++at_;
        return text_.substr(from, at_ - from);
    }

    /// What stands between the sign at the place now and the next `close`.
    std::string_view take_enclosed(char close) {
        const std::size_t from = at_;
        const std::size_t to = text_.find(close, from + 1);
        if (to == std::string_view::npos) {
            refuse(from, std::string("Here a closing ") + close + " is missing.");
        }
        at_ = to + 1;
        return text_.substr(from + 1, to - from - 1);
    }

    void parse_word() {
        const std::size_t from = at_;
        if (text_[at_] == '"') {
            next_.words = take_enclosed('"');
            pend(from);
            return;
        }
        const std::string_view word = take_until("=/.[{(~^,)\"");
        const std::string_view whole = text_.substr(from, text_.substr(from).find_first_of(" \t\r\n"));
        if (at_ < text_.size() && text_[at_] == '=') {
            parse_head(from, word);
        } else if (const auto bar_line = named(bar_lines, whole)) {
            at_ = from + whole.size();
            add_bar_line(from, *bar_line);
        } else if (const auto dynamic = named(dynamics, whole)) {
            next_.dynamic = *dynamic;
            pend(from);
        } else if (const auto hairpin = named(hairpins, whole)) {
            next_.hairpin = *hairpin;
            pend(from);
        } else if (word == "r" || word == "R") {
            parse_rest(from);
        } else {
            at_ = from;
            parse_note();
        }
    }

    void pend(std::size_t from) {
        pending_ = true;
        pending_at_ = from;
    }

    void parse_head(std::size_t from, std::string_view name) {
        if (!line_.events.empty() || pending_) {
            refuse(from, quoted(name) + " must stand before the first note.");
        }
        ++at_;
        const std::size_t value_at = at_;
        if (heads_.find(" " + std::string(name) + " ") != std::string::npos) {
            refuse(from, quoted(name) + " stands here twice.");
        }
        heads_ += " " + std::string(name) + " ";
        if (name == "tempo") {
            if (at_ == text_.size() || text_[at_] != '"') {
                refuse(value_at, "Put the tempo in quotation marks: tempo=\"Slow\".");
            }
            line_.tempo = take_enclosed('"');
            return;
        }
        const std::string_view value = take_until("");
        if (name == "clef") {
            const auto clef = named(clefs, value);
            if (!clef) refuse(value_at, quoted(value) + " is no clef; use bass, treble, tenor or alto.");
            line_.clef = *clef;
        } else if (name == "key") {
            line_.key = key_from(value_at, value);
        } else if (name == "time") {
            line_.time = time_from(value_at, value);
        } else {
            refuse(from, quoted(name) + " is unknown; use clef, key, time or tempo.");
        }
    }

    KeySignature key_from(std::size_t at, std::string_view value) const {
        if (value == "0") return {};
        if (value.size() == 2 && value[0] >= '1' && value[0] <= '7' && (value[1] == 'b' || value[1] == '#')) {
            const int count = value[0] - '0';
            return {value[1] == 'b' ? -count : count};
        }
        refuse(at, quoted(value) + " is no key signature; use 0, 1b to 7b for flats or 1# to 7# for sharps.");
    }

    TimeSignature time_from(std::size_t at, std::string_view value) const {
        constexpr int most_beats = 12;
        const std::size_t slash = value.find('/');
        if (slash != std::string_view::npos) {
            const auto beats = units::parse_integer(value.substr(0, slash));
            const auto unit = units::parse_integer(value.substr(slash + 1));
            if (beats && unit && *beats >= 1 && *beats <= most_beats &&
                named(durations, value.substr(slash + 1)))
                return {*beats, *unit};
        }
        refuse(at, quoted(value) + " is no time; use 1 to 12 over 1, 2, 4 or 8, such as 4/4.");
    }

    /// "/8." after a note or rest; without it the last one's length goes on.
    void parse_length() {
        if (at_ == text_.size() || text_[at_] != '/') return;
        const std::size_t from = ++at_;
        const std::string_view digits = take_until(".[{(~^,)\"");
        const auto duration = named(durations, digits);
        if (!duration) {
            refuse(from, quoted(digits) + " is no length; use 1, 2, 4 or 8 for a whole note to an eighth.");
        }
        duration_ = *duration;
        dots_ = 0;
        if (at_ < text_.size() && text_[at_] == '.') {
            dots_ = 1;
            ++at_;
        }
    }

    void add_time(std::size_t from) {
        in_bar_ += eighths_of(duration_, dots_);
        if (line_.time && in_bar_ > eighths_of(*line_.time) + 1e-9) {
            refuse(from,
                   "Bar " + std::to_string(bar_) + " is longer than its time; put a bar line before this.");
        }
    }

    void parse_rest(std::size_t from) {
        if (pending_) refuse(from, "Words, dynamics and hairpins belong to a note, not to a rest.");
        if (tie_from_) refuse(*tie_from_, "This tie leads to a rest; take ~ away.");
        parse_length();
        if (at_ < text_.size() && !is_space(text_[at_])) refuse(at_, "A rest takes no such sign.");
        add_time(from);
        line_.events.emplace_back(Rest{duration_, dots_});
    }

    void parse_note() {
        const std::size_t from = at_;
        LineNote note = std::exchange(next_, LineNote{});
        pending_ = false;
        if (text_[at_] == '(') {
            if (open_slur_) refuse(at_, "A slur is open already; close it with ) first.");
            open_slur_ = at_++;
            note.slur_starts = true;
        }
        const std::size_t name_at = at_;
        const std::string_view name = take_until("/.[{(~^,)\"");
        const auto spelling = units::parse_spelling(name);
        if (!spelling) {
            refuse(name_at,
                   quoted(name) +
                       " is no note; write a letter, b or #, and the octave, such as Bb2, or r for a rest.");
        }
        note.spelling = *spelling;
        parse_length();
        note.duration = duration_;
        note.dots = dots_;
        const auto tie_before = std::exchange(tie_from_, std::nullopt);
        if (tie_before && !(spelling == last_note_)) {
            refuse(*tie_before, "This tie leads to another note; use a slur: (Bb2 C3).");
        }
        while (at_ < text_.size() && !is_space(text_[at_]))
            parse_suffix(note);
        add_time(from);
        last_note_ = *spelling;
        line_.events.emplace_back(std::move(note));
    }

    void parse_suffix(LineNote& note) {
        const std::size_t from = at_;
        switch (text_[at_]) {
            case '~':
                note.tied = true;
                tie_from_ = at_++;
                return;
            case '^':
                note.fermata = true;
                ++at_;
                return;
            case ',':
                note.breath = true;
                ++at_;
                return;
            case ')':
                if (!open_slur_ || note.slur_starts)
                    refuse(from, "No slur is open here; put ( before a note.");
                open_slur_.reset();
                note.slur_ends = true;
                ++at_;
                return;
            case '[':
                note.figure = take_enclosed(']');
                return;
            case '{': {
                const std::string_view value = take_enclosed('}');
                const auto cents = units::parse_decimal(value);
                if (!cents) refuse(from, quoted(value) + " is no number of cents, such as {-12}.");
                note.tendency = units::Cents(*cents);
                return;
            }
            default:
                refuse(from, quoted(text_.substr(from, 1)) +
                                 " has no meaning after a note; put a space before it.");
        }
    }

    void add_bar_line(std::size_t from, BarLine kind) {
        if (pending_) refuse(pending_at_, "After this a note must follow before the bar line.");
        check_bar(from, kind == BarLine::repeat_ends);
        may_be_short_ = kind == BarLine::repeat_starts || kind == BarLine::repeat_ends;
        if (in_bar_ > 0.0) ++bar_;
        in_bar_ = 0.0;
        line_.events.emplace_back(kind);
    }

    void check_bar(std::size_t from, bool may_be_short) const {
        const bool last = text_.find_first_not_of(" \t\r\n|.", from) == std::string_view::npos;
        if (!line_.time || in_bar_ == 0.0 || may_be_short || may_be_short_ || last) return;
        if (in_bar_ < eighths_of(*line_.time) - 1e-9) {
            refuse(from, "Bar " + std::to_string(bar_) +
                             " is shorter than its time; add what is missing, such as a rest.");
        }
    }

    std::string_view text_;
    std::size_t at_ = 0;
    MusicLine line_;
    LineNote next_;
    bool pending_ = false;
    std::size_t pending_at_ = 0;
    std::string heads_;
    Duration duration_ = Duration::quarter;
    int dots_ = 0;
    int bar_ = 1;
    double in_bar_ = 0.0;
    bool may_be_short_ = true;
    std::optional<std::size_t> open_slur_;
    std::optional<std::size_t> tie_from_;
    units::Spelling last_note_;
};

std::string length_text(Duration duration, int dots) {
    return "/" + name_of(durations, duration) + (dots > 0 ? "." : "");
}

struct Writer {
    std::string operator()(BarLine bar_line) const { return name_of(bar_lines, bar_line); }
    std::string operator()(const Rest& rest) const { return "r" + length_text(rest.duration, rest.dots); }
    std::string operator()(const LineNote& note) const {
        std::string text;
        if (!note.words.empty()) text += quoted(note.words) + " ";
        if (note.dynamic) text += name_of(dynamics, *note.dynamic) + " ";
        if (note.hairpin) text += name_of(hairpins, *note.hairpin) + " ";
        if (note.slur_starts) text += "(";
        text += units::file_name(note.spelling) + length_text(note.duration, note.dots);
        if (note.tied) text += "~";
        if (note.fermata) text += "^";
        if (!note.figure.empty()) text += "[" + note.figure + "]";
        if (note.tendency) text += "{" + units::decimal_text(note.tendency->value(), 1) + "}";
        if (note.slur_ends) text += ")";
        if (note.breath) text += ",";
        return text;
    }
};

std::string key_text(KeySignature key) {
    if (key.fifths == 0) return "0";
    return std::to_string(std::abs(key.fifths)) + (key.fifths > 0 ? "#" : "b");
}

}  // namespace

MusicLine parse_music(std::string_view text) {
    return Parser(text).parse();
}

std::string music_text(const MusicLine& line) {
    std::string text = "clef=" + name_of(clefs, line.clef) + " key=" + key_text(line.key);
    if (line.time)
        text += " time=" + std::to_string(line.time->beats) + "/" + std::to_string(line.time->unit);
    if (!line.tempo.empty()) text += " tempo=" + quoted(line.tempo);
    for (const Event& event : line.events)
        text += " " + std::visit(Writer{}, event);
    return text;
}

}  // namespace lowledger::engraving
