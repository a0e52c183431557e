#include "app/batch/sample_story.h"

#include <algorithm>
#include <fmt/format.h>
#include <stdexcept>

namespace lowledger::batch {

namespace {

/// The Friday of that week.
studio::Date friday(const SampleStory& story, int week) {
    return story.day(week, 5);
}

std::optional<studio::Date> friday(const SampleStory& story, std::optional<int> week) {
    if (!week) return std::nullopt;
    return friday(story, *week);
}

void file_mouthpieces(SampleStory& story) {
    for (const SampleMouthpiece& told : story.sources.book.mouthpieces) {
        studio::Mouthpiece mouthpiece = told.record;
        if (!told.horn.empty()) mouthpiece.horn = story.horns.at(told.horn);
        if (!told.owner.empty()) mouthpiece.owner = story.students.at(told.owner);
        story.mouthpieces[mouthpiece.mark] = story.edit.add(mouthpiece);
    }
}

void file_loans(SampleStory& story) {
    for (const SampleLoan& told : story.sources.book.loans) {
        studio::Loan loan{.id = {},
                          .horn = story.horns.at(told.horn),
                          .student = story.students.at(told.student),
                          .from = friday(story, told.from_week),
                          .until = friday(story, told.until_week),
                          .due = friday(story, told.due_week),
                          .condition_out = told.condition_out,
                          .condition_in = told.condition_in,
                          .accessories = told.accessories,
                          .signed_on = friday(story, told.signed_week)};
        if (!told.mouthpiece.empty()) loan.mouthpiece = story.mouthpieces.at(told.mouthpiece);
        story.edit.add(loan);
    }
}

void file_upkeep(SampleStory& story) {
    for (const SampleUpkeep& told : story.sources.book.upkeep) {
        studio::Upkeep upkeep{.id = {},
                              .work = told.work,
                              .noted_on = friday(story, told.noted_week),
                              .done_on = friday(story, told.done_week),
                              .what = told.what,
                              .by = told.by,
                              .cost = told.cost,
                              .next_due = friday(story, told.due_week),
                              .disinfected = told.disinfected};
        if (const auto mouthpiece = story.mouthpieces.find(told.mark); mouthpiece != story.mouthpieces.end())
            upkeep.mouthpiece = mouthpiece->second;
        else
            upkeep.horn = story.horns.at(told.mark);
        story.edit.add(upkeep);
    }
}

}  // namespace

const SampleStudent& SampleStory::told(studio::StudentId id) const {
    for (const SampleStudent& student : sources.students)
        if (students.at(student.record.name) == id) return student;
    throw std::logic_error("the sample has no such student");
}

SampleRandom SampleStory::random(std::string_view what, std::string_view who, studio::Date on) const {
    return {seed, fmt::format("{} {} {}", what, who, on - day(0, 1))};
}

void tell_lives(SampleStory& story) {
    for (const SampleStudent& told : story.sources.students) {
        const studio::StudentId id = story.students.at(told.record.name);
        const int lesson_day = told.lesson_day + 1;
        for (const SampleEvent& event : told.events)
            story.edit.add(
                studio::StudentEvent{{}, id, story.day(event.week, lesson_day), event.kind, event.remarks});
        for (const SamplePiece& piece : told.pieces) {
            studio::Piece filed{.id = {},
                                .student = id,
                                .title = piece.title,
                                .composer = piece.composer,
                                .part = piece.part,
                                .from = story.day(piece.from_week, lesson_day),
                                .remarks = piece.remarks};
            if (piece.until_week) filed.until = story.day(*piece.until_week, lesson_day);
            story.edit.add(filed);
        }
    }
}

void tell_lending(SampleStory& story) {
    file_mouthpieces(story);
    file_loans(story);
    file_upkeep(story);
}

}  // namespace lowledger::batch
