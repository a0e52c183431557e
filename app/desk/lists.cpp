#include "app/desk/lists.h"

#include <algorithm>
#include <cstdint>
#include <map>

#include "model/studio/kind_of.h"
#include "model/studio/questions.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

/// Lower case of one code point in the alphabets that names here are written in.
std::uint32_t lower(std::uint32_t c) {
    const auto within = [c](std::uint32_t first, std::uint32_t last) { return first <= c && c <= last; };
    if (within('A', 'Z') || (within(0xC0, 0xDE) && c != 0xD7)) return c + 32;
    if (within(0x100, 0x137) || within(0x14A, 0x177)) return c | 1U;
    if (within(0x139, 0x148) || within(0x179, 0x17E)) return c % 2 == 1 ? c + 1 : c;
    if (within(0x391, 0x3A9)) return c + 32;
    if (within(0x410, 0x42F)) return c + 32;
    if (within(0x400, 0x40F)) return c + 80;
    return c;
}

/// With the flat sign as a keyboard has it, so that "Bb tuba" is found too.
std::string typed_flats(std::string text) {
    constexpr std::string_view flat = "\u266D";
    for (auto at = text.find(flat); at != std::string::npos; at = text.find(flat, at))
        text.replace(at, flat.size(), "b");
    return text;
}

std::string joined(const std::vector<std::string>& parts) {
    std::string out;
    for (const auto& part : parts)
        out += (out.empty() ? "" : ", ") + part;
    return out;
}

}  // namespace

std::u32string folded(std::string_view text) {
    std::u32string out;
    for (std::size_t at = 0; at < text.size();) {
        const auto first = static_cast<unsigned char>(text[at]);
        const std::size_t length = first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
        std::uint32_t point = length == 1 ? first : first & (0x7FU >> length);
        if (first >= 0x80 && (first < 0xC2 || at + length > text.size())) {
            out += static_cast<char32_t>(first);
            ++at;
            continue;
        }
        for (std::size_t i = 1; i < length; ++i)
            point = (point << 6U) | (static_cast<unsigned char>(text[at + i]) & 0x3FU);
        out += static_cast<char32_t>(lower(point));
        at += length;
    }
    return out;
}

bool found_in(std::string_view text, std::string_view find) {
    const std::u32string in = folded(text);
    const std::u32string what = folded(find);
    for (std::size_t at = 0; at < what.size();) {
        const auto start = what.find_first_not_of(U' ', at);
        if (start == std::u32string::npos) break;
        const auto end = std::min(what.find(U' ', start), what.size());
        if (in.find(what.substr(start, end - start)) == std::u32string::npos) return false;
        at = end;
    }
    return true;
}

std::vector<StudentRow> student_rows(const store::StudioFile& file, const words::Words& words,
                                     studio::Date today, std::string_view find) {
    std::map<studio::HornId, std::string> marks;
    for (const auto& horn : file.horns())
        marks[horn.id] = horn.mark;
    std::map<studio::StudentId, std::vector<std::string>> horns;
    for (const auto& use : file.horn_uses())
        if (studio::holds_on(use, today)) horns[use.student].push_back(marks[use.horn]);

    std::map<studio::StudentId, studio::Date> last_sheet_on;
    for (const auto& sheet : file.last_sheets())
        last_sheet_on.emplace(sheet.student, sheet.on);

    std::vector<StudentRow> rows;
    for (const auto& student : file.students()) {
        StudentRow row{student.id, student.name, joined(horns[student.id]), {}, student.archived};
        if (student.archived) {
            row.now = words.say(Sentence::list_archived);
        } else if (row.horn.empty()) {
            row.now = words.say(Sentence::list_no_horn);
        } else if (const auto last = last_sheet_on.find(student.id); last == last_sheet_on.end()) {
            row.now = words.say(Sentence::list_no_sheet);
        } else if (const int days = today - last->second; days > 0) {
            row.now = words.say_counted(Sentence::list_sheet_days_one, Sentence::list_sheet_days_many, days);
        } else {
            row.now = words.say(Sentence::list_sheet_today);
        }
        if (found_in(row.name + " " + student.called + " " + student.group + " " + row.horn, find))
            rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<HornRow> horn_rows(const store::StudioFile& file, const words::Words& words, studio::Date today,
                               std::string_view find) {
    std::map<studio::StudentId, std::string> names;
    for (const auto& student : file.students())
        names[student.id] = student.name;
    std::map<studio::HornId, std::vector<std::string>> players;
    for (const auto& use : file.horn_uses())
        if (studio::holds_on(use, today)) players[use.horn].push_back(names[use.student]);

    // Reading a kind is slow; most horns of a studio are of few kinds.
    std::map<std::string, std::string> kind_names;
    std::vector<HornRow> rows;
    for (const auto& horn : file.horns()) {
        HornRow row{horn.id, horn.mark, joined(players[horn.id]), {}, horn.archived};
        auto& kind_name = kind_names[horn.kind_text];
        if (kind_name.empty()) kind_name = words::kind_name(studio::kind_of(horn));
        if (horn.archived)
            row.now = words.say(Sentence::list_archived);
        else if (std::ranges::any_of(horn.slides, &studio::HornSlide::stuck))
            row.now = words.say(Sentence::list_slide_stuck);
        else
            row.now = kind_name;
        if (found_in(row.mark + " " + kind_name + " " + typed_flats(kind_name) + " " + row.players, find))
            rows.push_back(std::move(row));
    }
    return rows;
}

}  // namespace lowledger::desk
