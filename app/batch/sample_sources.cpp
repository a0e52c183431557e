#include "app/batch/sample_sources.h"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <initializer_list>
#include <toml++/toml.h>

#include "model/horns/kind.h"
#include "model/units/refusal.h"

#include "sample_source_files.h"

namespace lowledger::batch {

namespace {

using studio::Level;

/// A table of the sample's sources with its keys checked; every complaint is a Refusal naming file, line,
/// key.
class SampleTable {
  public:
    SampleTable(const toml::table& table, std::string_view file,
                std::initializer_list<std::string_view> allowed);

    [[noreturn]] void refuse(std::string_view key, std::string_view complaint) const;

    /// `T` is what TOML has: std::string, bool, std::int64_t, double (whole numbers too).
    template <typename T>
    [[nodiscard]] std::optional<T> get(std::string_view key) const {
        const toml::node* node = table_.get(key);
        if (node == nullptr) return std::nullopt;
        if (auto value = node->value<T>()) return value;
        refuse(key, "is a value of another kind than expected.");
    }
    template <typename T>
    [[nodiscard]] T require(std::string_view key) const {
        if (auto value = get<T>(key)) return *value;
        refuse(key, "is missing.");
    }
    [[nodiscard]] int week(std::string_view key) const;
    /// The index of the text in `words`; throws for another word, naming them.
    [[nodiscard]] std::size_t word(std::string_view key, std::initializer_list<std::string_view> words,
                                   std::string_view otherwise) const;
    [[nodiscard]] std::vector<double> numbers(std::string_view key) const;
    [[nodiscard]] std::vector<std::string> texts(std::string_view key) const;
    [[nodiscard]] std::vector<const toml::table*> tables(std::string_view key) const;
    /// Null if there is none.
    [[nodiscard]] const toml::table* table(std::string_view key) const;

  private:
    const toml::array* array(std::string_view key) const;
    const toml::table& table_;
    std::string file_;
};

SampleTable::SampleTable(const toml::table& table, std::string_view file,
                         std::initializer_list<std::string_view> allowed)
    : table_(table), file_(file) {
    for (const auto& [key, node] : table)
        if (std::find(allowed.begin(), allowed.end(), key.str()) == allowed.end())
            refuse(key.str(), fmt::format("is no key there. Known are: {}.", fmt::join(allowed, ", ")));
}

void SampleTable::refuse(std::string_view key, std::string_view complaint) const {
    const toml::node* node = table_.get(key);
    const auto line = (node != nullptr ? node->source() : table_.source()).begin.line;
    throw units::Refusal(fmt::format("{}, line {}: {} {}", file_, line, key, complaint));
}

int SampleTable::week(std::string_view key) const {
    const auto value = require<std::int64_t>(key);
    if (value < -520 || value > 0) refuse(key, "is no week from -520 to 0.");
    return static_cast<int>(value);
}

std::size_t SampleTable::word(std::string_view key, std::initializer_list<std::string_view> words,
                              std::string_view otherwise) const {
    const auto text = get<std::string>(key).value_or(std::string(otherwise));
    const auto* const found = std::find(words.begin(), words.end(), text);
    if (found == words.end()) refuse(key, fmt::format("is none of {}.", fmt::join(words, ", ")));
    return static_cast<std::size_t>(found - words.begin());
}

const toml::array* SampleTable::array(std::string_view key) const {
    const toml::node* node = table_.get(key);
    if (node == nullptr) return nullptr;
    if (!node->is_array()) refuse(key, "is no list.");
    return node->as_array();
}

std::vector<double> SampleTable::numbers(std::string_view key) const {
    std::vector<double> out;
    if (const toml::array* list = array(key))
        for (const toml::node& item : *list) {
            const auto number = item.value<double>();
            if (!number) refuse(key, "is no list of numbers.");
            out.push_back(*number);
        }
    return out;
}

std::vector<std::string> SampleTable::texts(std::string_view key) const {
    std::vector<std::string> out;
    if (const toml::array* list = array(key))
        for (const toml::node& item : *list) {
            auto text = item.value<std::string>();
            if (!text) refuse(key, "is no list of texts.");
            out.push_back(std::move(*text));
        }
    return out;
}

std::vector<const toml::table*> SampleTable::tables(std::string_view key) const {
    std::vector<const toml::table*> out;
    if (const toml::array* list = array(key))
        for (const toml::node& item : *list) {
            if (!item.is_table()) refuse(key, "is no list of tables.");
            out.push_back(item.as_table());
        }
    return out;
}

const toml::table* SampleTable::table(std::string_view key) const {
    const toml::node* node = table_.get(key);
    if (node == nullptr) return nullptr;
    if (!node->is_table()) refuse(key, "is no table.");
    return node->as_table();
}

std::map<std::string, units::Millimetres> lengths(const SampleTable& parent, std::string_view key) {
    std::map<std::string, units::Millimetres> out;
    if (const toml::table* table = parent.table(key))
        for (const auto& [slide, node] : *table) {
            const auto mm = node.value<double>();
            if (!mm) parent.refuse(key, "has a position that is no number.");
            out.emplace(slide.str(), units::Millimetres(*mm));
        }
    return out;
}

std::vector<units::Cents> cents(const std::vector<double>& numbers) {
    std::vector<units::Cents> out;
    out.reserve(numbers.size());
    for (const double number : numbers)
        out.emplace_back(number);
    return out;
}

void read_school(const toml::table& root, std::string_view file, SampleSources& sources) {
    const SampleTable top(root, file, {"studio", "calendar"});
    if (top.table("studio") == nullptr) top.refuse("studio", "is missing.");
    if (top.table("calendar") == nullptr) top.refuse("calendar", "is missing.");
    const SampleTable studio(
        *top.table("studio"), file,
        {"name", "teacher", "school", "a4_hertz", "usual_room_celsius", "paper", "accidentals"});
    studio::StudioFacts& facts = sources.facts;
    facts.name = studio.require<std::string>("name");
    facts.teacher = studio.require<std::string>("teacher");
    facts.school = studio.require<std::string>("school");
    facts.a4 = units::Hertz(studio.require<double>("a4_hertz"));
    facts.usual_room = units::Celsius(studio.require<double>("usual_room_celsius"));
    facts.paper = studio.word("paper", {"a4", "letter"}, "a4") == 0 ? studio::StudioFacts::Paper::a4
                                                                    : studio::StudioFacts::Paper::letter;
    facts.accidentals = studio.word("accidentals", {"flats", "sharps"}, "flats") == 0
                            ? units::Accidentals::flats
                            : units::Accidentals::sharps;
    const SampleTable calendar(*top.table("calendar"), file, {"horns_filed_in_week"});
    sources.horns_filed_in_week = calendar.week("horns_filed_in_week");
}

SampleHorn read_horn(const SampleTable& table, std::string_view file) {
    SampleHorn horn;
    horn.mark = table.require<std::string>("mark");
    horn.kind = table.require<std::string>("kind");
    horn.serial_number = table.get<std::string>("serial_number").value_or("");
    horn.remarks = table.get<std::string>("remarks").value_or("");
    horn.owner = table.get<std::string>("owner").value_or("");
    horn.archived = table.get<bool>("archived").value_or(false);
    horn.stuck = table.texts("stuck");
    horn.travel = lengths(table, "travel");
    horn.least = lengths(table, "least");
    horn.start = lengths(table, "start");
    if (const toml::table* told = table.table("is")) {
        const SampleTable is(*told, file, {"overall_cents", "valve_cents"});
        horn.is = SampleHorn::Is{units::Cents(is.require<double>("overall_cents")),
                                 cents(is.numbers("valve_cents"))};
    }
    return horn;
}

void read_horns(const toml::table& root, std::string_view file, SampleSources& sources) {
    const SampleTable top(root, file, {"horn"});
    for (const toml::table* table : top.tables("horn"))
        sources.horns.push_back(
            read_horn(SampleTable(*table, file,
                                  {"mark", "kind", "serial_number", "remarks", "owner", "archived", "stuck",
                                   "travel", "least", "start", "is"}),
                      file));
}

SampleSheet read_sheet(const SampleTable& table, const SampleStudent& student) {
    SampleSheet sheet;
    sheet.week = table.week("week");
    sheet.on = table.get<std::string>("on").value_or("");
    if (sheet.on.empty())
        for (const SamplePlays& plays : student.plays)
            if (plays.from_week <= sheet.week && (!plays.until_week || sheet.week < *plays.until_week))
                sheet.on = plays.horn;
    if (sheet.on.empty()) table.refuse("week", "is one in which the student plays no horn.");
    sheet.wide = table.word("notes", {"tuning", "wide"}, "tuning") == 1;
    sheet.takes = static_cast<int>(table.get<std::int64_t>("takes").value_or(2));
    if (sheet.takes < 1 || sheet.takes > 9) table.refuse("takes", "is not from 1 to 9.");
    sheet.cold = table.get<bool>("cold").value_or(false);
    sheet.mute = table.get<bool>("mute").value_or(false);
    sheet.tuner_seen = table.get<bool>("tuner_seen").value_or(false);
    sheet.positions_known = table.get<bool>("positions").value_or(true);
    sheet.tuner_a4 = units::Hertz(table.get<double>("tuner_a4_hertz").value_or(440.0));
    if (const auto room = table.get<double>("room_celsius")) sheet.room = units::Celsius(*room);
    sheet.remarks = table.get<std::string>("remarks").value_or("");
    sheet.settings =
        static_cast<SampleSheet::Settings>(table.word("settings", {"none", "given", "moved"}, "none"));
    return sheet;
}

SampleStudent read_student(const SampleTable& table, std::string_view file) {
    SampleStudent student;
    student.record.name = table.require<std::string>("name");
    student.record.called = table.get<std::string>("called").value_or("");
    student.record.group = table.get<std::string>("group").value_or("");
    student.record.level =
        static_cast<Level>(table.word("level", {"beginner", "middle", "advanced"}, "beginner"));
    student.record.reader = table.get<std::string>("reader").value_or("");
    if (table.get<std::string>("accidentals"))
        student.record.accidentals = table.word("accidentals", {"flats", "sharps"}, "flats") == 0
                                         ? units::Accidentals::flats
                                         : units::Accidentals::sharps;
    student.record.remarks = table.get<std::string>("remarks").value_or("");
    student.record.archived = table.get<bool>("archived").value_or(false);
    student.lesson_day = static_cast<int>(
        table.word("lesson_day", {"Monday", "Tuesday", "Wednesday", "Thursday", "Friday"}, "Monday"));
    for (const toml::table* item : table.tables("plays")) {
        const SampleTable plays(*item, file, {"horn", "from", "until"});
        student.plays.push_back(
            {plays.require<std::string>("horn"), plays.week("from"),
             plays.get<std::int64_t>("until") ? std::optional(plays.week("until")) : std::nullopt});
    }
    for (const toml::table* item : table.tables("sheets"))
        student.sheets.push_back(
            read_sheet(SampleTable(*item, file,
                                   {"week", "on", "notes", "takes", "cold", "mute", "tuner_seen", "positions",
                                    "tuner_a4_hertz", "room_celsius", "remarks", "settings"}),
                       student));
    return student;
}

void read_students(const toml::table& root, std::string_view file, SampleSources& sources) {
    const SampleTable top(root, file, {"student"});
    for (const toml::table* table : top.tables("student"))
        sources.students.push_back(
            read_student(SampleTable(*table, file,
                                     {"name", "called", "group", "level", "lesson_day", "reader",
                                      "accidentals", "plays", "sheets", "remarks", "archived"}),
                         file));
}

const SampleHorn* horn_marked(const SampleSources& sources, const std::string& mark) {
    const auto found = std::ranges::find(sources.horns, mark, &SampleHorn::mark);
    return found == sources.horns.end() ? nullptr : &*found;
}

void require_known_reader(const SampleSources& sources, const SampleStudent& student) {
    if (student.record.reader.empty()) return;
    for (const SamplePlays& plays : student.plays) {
        const SampleHorn* horn = horn_marked(sources, plays.horn);
        const horns::HornKind* kind =
            horn == nullptr ? nullptr : horns::find_kind(horns::built_in_kinds(), horn->kind);
        if (kind == nullptr) continue;
        if (std::ranges::find(kind->readers, student.record.reader, &horns::Reader::id) ==
            kind->readers.end())
            throw units::Refusal(fmt::format("students.toml: the reader of {} is {}, which {} has not.",
                                             student.record.name, student.record.reader, kind->id));
    }
}

void require_known_names(const SampleSources& sources) {
    const auto known_horn = [&](const std::string& mark) { return horn_marked(sources, mark) != nullptr; };
    for (const SampleStudent& student : sources.students) {
        require_known_reader(sources, student);
        for (const SamplePlays& plays : student.plays)
            if (!known_horn(plays.horn))
                throw units::Refusal(
                    fmt::format("students.toml: {} plays {}, and horns.toml has no such horn.",
                                student.record.name, plays.horn));
        for (const SampleSheet& sheet : student.sheets)
            if (!known_horn(sheet.on))
                throw units::Refusal(
                    fmt::format("students.toml: a sheet of {} is on {}, and horns.toml has no "
                                "such horn.",
                                student.record.name, sheet.on));
    }
    for (const SampleHorn& horn : sources.horns)
        if (!horn.owner.empty() &&
            std::none_of(sources.students.begin(), sources.students.end(),
                         [&](const SampleStudent& student) { return student.record.name == horn.owner; }))
            throw units::Refusal(
                fmt::format("horns.toml: {} belongs to {}, and students.toml has no such student.", horn.mark,
                            horn.owner));
}

toml::table parsed(const std::vector<SampleText>& files, std::string_view name) {
    const auto found =
        std::find_if(files.begin(), files.end(), [&](const SampleText& file) { return file.name == name; });
    if (found == files.end()) throw units::Refusal(fmt::format("The sample has no {}.", name));
    try {
        return toml::parse(found->text, name);
    } catch (const toml::parse_error& error) {
        throw units::Refusal(
            fmt::format("{}, line {}: {}", name, error.source().begin.line, error.description()));
    }
}

}  // namespace

SampleSources read_sample_sources(const std::vector<SampleText>& files) {
    SampleSources sources;
    read_school(parsed(files, "school.toml"), "school.toml", sources);
    read_horns(parsed(files, "horns.toml"), "horns.toml", sources);
    read_students(parsed(files, "students.toml"), "students.toml", sources);
    require_known_names(sources);
    return sources;
}

SampleSources built_in_sample_sources() {
    std::vector<SampleText> files;
    for (const EmbeddedFile& file : sample_source_files())
        files.push_back({file.name, file.text});
    return read_sample_sources(files);
}

}  // namespace lowledger::batch
