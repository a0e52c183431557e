#include "app/batch/sample_studio.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <system_error>

#include "app/batch/sample_random.h"
#include "app/batch/sample_story.h"
#include "app/batch/sample_truth.h"
#include "model/exchange/settings_json.h"
#include "model/store/studio_file.h"
#include "model/studio/questions.h"
#include "model/tuning/answer.h"
#include "model/tuning/inputs.h"

namespace lowledger::batch {

namespace {

using studio::Date;
using Positions = std::map<std::string, units::Millimetres>;

/// A horn while the two terms are played through.
struct PlayedHorn {
    const horns::HornKind* kind = nullptr;
    studio::Horn record;
    TrueHorn truth;
    /// As the studio has them: all of them, and the latest.
    std::vector<studio::SlidePosition> history;
    Positions noted;
    /// Where the slides really are.
    Positions real;
};

struct PlayedStudent {
    const SampleStudent* told = nullptr;
    studio::Student record;
    TruePlayer truth;
    std::vector<studio::TuningSheet> sheets;
};

/// One measuring, in time.
struct Event {
    Date on;
    std::size_t student = 0;
    const SampleSheet* sheet = nullptr;
};

/// Plays the sample's two terms into one edit.
class Story {
  public:
    Story(store::Edit& edit, const SampleSources& sources, Date as_of, std::uint64_t seed)
        : edit_(edit),
          sources_(sources),
          as_of_(as_of),
          this_monday_(as_of - (as_of.weekday() - 1)),
          seed_(seed),
          figures_(tuning::figures()) {}

    void tell() {
        for (const SampleStudent& student : sources_.students)
            file_student(student);
        for (const SampleHorn& horn : sources_.horns)
            file_horn(horn);
        for (const PlayedStudent& student : students_)
            for (const SamplePlays& plays : student.told->plays)
                file_use(student, plays);
        for (const Event& event : events_in_time())
            measure(event);
        SampleStory story = story_so_far();
        tell_lending(story);
        tell_lives(story);
        tell_lessons(story);
        tell_practice(story);
    }

  private:
    [[nodiscard]] Date day(int week, int days_after_monday) const {
        return this_monday_ + (7 * week + days_after_monday);
    }

    [[nodiscard]] SampleStory story_so_far() const {
        SampleStory story{edit_, sources_, as_of_, seed_};
        for (const PlayedStudent& student : students_) {
            story.students[student.told->record.name] = student.record.id;
            for (const SampleSheet& sheet : student.told->sheets)
                story.measured[{student.told->record.name, day(sheet.week, student.told->lesson_day)}] =
                    sheet.settings;
        }
        for (const auto& [mark, horn] : horns_)
            story.horns[mark] = horn.record.id;
        return story;
    }

    void file_student(const SampleStudent& told) {
        studio::Student student = told.record;
        if (told.since_week)
            student.since = day(*told.since_week, told.lesson_day);
        else if (!told.plays.empty())
            student.since = day(told.plays.front().from_week, told.lesson_day);
        student.id = edit_.add(student);
        students_.push_back(
            {&told, student, TruePlayer(told.record.name, figures_.of(told.record.level), seed_), {}});
    }

    void file_horn(const SampleHorn& told) {
        const horns::HornKind* kind = horns::find_kind(horns::built_in_kinds(), told.kind);
        if (kind == nullptr)
            throw units::Refusal(fmt::format("horns.toml: {} is of the kind {}, which the catalogue has not.",
                                             told.mark, told.kind));
        studio::Horn horn = studio::horn_of(*kind);
        horn.mark = told.mark;
        horn.serial_number = told.serial_number;
        horn.remarks = told.remarks;
        horn.archived = told.archived;
        for (const PlayedStudent& student : students_)
            if (student.told->record.name == told.owner) horn.owner = student.record.id;
        for (studio::HornSlide& slide : horn.slides) {
            if (const auto at = told.travel.find(slide.slide); at != told.travel.end())
                slide.travel = at->second;
            if (const auto at = told.least.find(slide.slide); at != told.least.end())
                slide.least = at->second;
            slide.stuck = std::find(told.stuck.begin(), told.stuck.end(), slide.slide) != told.stuck.end();
        }
        horn.id = edit_.add(horn);
        PlayedHorn played{kind, horn, TrueHorn(*kind, told, figures_, seed_), {}, {}, {}};
        for (studio::SlidePosition position :
             studio::designed_positions(*kind, horn.id, day(sources_.horns_filed_in_week, 0))) {
            if (const auto at = told.start.find(position.slide); at != told.start.end()) {
                position.position = at->second;
                position.origin = studio::SlidePosition::Origin::measured;
            }
            note_position(played, position);
            played.real[position.slide] = position.position;
        }
        horns_.emplace(told.mark, std::move(played));
    }

    void note_position(PlayedHorn& horn, studio::SlidePosition position) {
        position.id = edit_.add(position);
        horn.noted[position.slide] = position.position;
        horn.history.push_back(position);
    }

    void file_use(const PlayedStudent& student, const SamplePlays& plays) {
        studio::HornUse use{
            {}, student.record.id, horns_.at(plays.horn).record.id, day(plays.from_week, 0), {}};
        if (plays.until_week) use.until = day(*plays.until_week, 0);
        edit_.add(use);
    }

    [[nodiscard]] std::vector<Event> events_in_time() const {
        std::vector<Event> events;
        for (std::size_t i = 0; i < students_.size(); ++i)
            for (const SampleSheet& sheet : students_[i].told->sheets)
                events.push_back({day(sheet.week, students_[i].told->lesson_day), i, &sheet});
        std::stable_sort(events.begin(), events.end(),
                         [](const Event& a, const Event& b) { return a.on < b.on; });
        return events;
    }

    void measure(const Event& event) {
        PlayedStudent& student = students_[event.student];
        PlayedHorn& horn = horns_.at(event.sheet->on);
        const SampleSheet& told = *event.sheet;
        studio::TuningSheet sheet{
            .id = {},
            .student = student.record.id,
            .horn = horn.record.id,
            .on = event.on,
            .mouthpiece = "",
            .warm = !told.cold,
            .tuner_seen = told.tuner_seen,
            .mute = told.mute,
            .room = told.room,
            .tuner_a4 = told.tuner_a4,
            .positions = told.positions_known ? horn.noted : Positions{},
            .readings = play({horn.truth, student.truth, *horn.kind, real_positions(horn), told,
                              sources_.facts.usual_room, stream(event, student)},
                             figures_, seed_),
            .remarks = told.remarks};
        sheet.id = edit_.add(sheet);
        student.sheets.push_back(sheet);
        if (event.sheet->settings != SampleSheet::Settings::none) give_settings(event, student, horn, sheet);
    }

    static std::string stream(const Event& event, const PlayedStudent& student) {
        return fmt::format("sheet {} {} {}", student.told->record.name, event.sheet->week, event.sheet->on);
    }

    static std::vector<units::Millimetres> real_positions(const PlayedHorn& horn) {
        std::vector<units::Millimetres> positions;
        positions.reserve(horn.kind->slides.size());
        for (const horns::SlideKind& slide : horn.kind->slides)
            positions.push_back(horn.real.at(slide.id));
        return positions;
    }

    void give_settings(const Event& event, const PlayedStudent& student, PlayedHorn& horn,
                       const studio::TuningSheet& sheet) {
        const tuning::TuningInputs inputs = tuning::inputs_of(
            sources_.facts, student.record, horn.record, *horn.kind, horn.history, student.sheets, event.on);
        tuning::TuningAnswer answer = tuning::answer(inputs, figures_);
        answer.certificate = tuning::certify(answer.question, answer.settings);
        studio::GivenSettings given{{},
                                    student.record.id,
                                    sheet.horn,
                                    sheet.id,
                                    event.on,
                                    std::string(exchange::engine_version()),
                                    exchange::settings_json(inputs, answer),
                                    {}};
        if (event.sheet->settings == SampleSheet::Settings::moved) {
            move_slides(event, student, horn, answer.settings);
            given.moved_on = event.on;
        }
        edit_.add(given);
    }

    /// Moves the slides as told; a hand sets a slide within about a millimetre of the mark.
    void move_slides(const Event& event, const PlayedStudent& student, PlayedHorn& horn,
                     const tuning::SlideSettings& settings) {
        SampleRandom hand(seed_, stream(event, student) + " hand");
        for (const tuning::SlideAnswer& slide : settings.slides) {
            const units::Millimetres miss = hand.normal() * figures_.position_measured;
            if (slide.advice != tuning::Advice::move) continue;
            note_position(horn, {{},
                                 horn.record.id,
                                 slide.slide,
                                 event.on,
                                 slide.recommended,
                                 studio::SlidePosition::Origin::moved});
            horn.real[slide.slide] =
                std::clamp(slide.recommended + miss, units::Millimetres(0.0), slide.travel);
        }
    }

    store::Edit& edit_;
    const SampleSources& sources_;
    Date as_of_;
    Date this_monday_;
    std::uint64_t seed_;
    const tuning::Figures& figures_;
    std::map<std::string, PlayedHorn> horns_;
    std::vector<PlayedStudent> students_;
};

/// A file that is removed unless it was moved to its place.
class FileInTheMaking {
  public:
    explicit FileInTheMaking(std::filesystem::path place)
        : place_(std::move(place)), path_(place_.string() + ".making") {
        std::error_code ignored;
        std::filesystem::remove(path_, ignored);
    }
    ~FileInTheMaking() {
        std::error_code ignored;
        std::filesystem::remove(path_, ignored);
    }
    FileInTheMaking(const FileInTheMaking&) = delete;
    FileInTheMaking& operator=(const FileInTheMaking&) = delete;
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }
    /// A hard link fails where something is already there, which a rename would silently replace.
    void put_in_place() const {
        std::error_code error;
        std::filesystem::create_hard_link(path_, place_, error);
        if (error && !std::filesystem::exists(place_)) std::filesystem::rename(path_, place_, error);
        if (error)
            throw units::Refusal(fmt::format("{} cannot be written: {}. Choose another name or folder.",
                                             place_.string(), error.message()));
    }

  private:
    std::filesystem::path place_;
    std::filesystem::path path_;
};

}  // namespace

void make_sample_studio(const std::filesystem::path& path, const SampleSources& sources, studio::Date as_of,
                        std::uint64_t seed) {
    if (std::filesystem::exists(path))
        throw units::Refusal(
            fmt::format("{} is there already and is left as it is. Choose another name.", path.string()));
    const FileInTheMaking file(path);
    {
        store::StudioFile studio = store::StudioFile::create(file.path(), sources.facts);
        studio.edit("Make the sample studio",
                    [&](store::Edit& edit) { Story(edit, sources, as_of, seed).tell(); });
    }
    file.put_in_place();
}

}  // namespace lowledger::batch
