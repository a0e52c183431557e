#pragma once

#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

#include "model/store/studio_file.h"
#include "model/tuning/answer.h"

namespace lowledger::batch {

/// The student of that name: whole, or what the student is called, or a part that only one student's name
/// has; case of A to Z does not matter. Throws Refusal that lists who there is.
studio::Student choose_student(const store::StudioFile& file, std::string_view name);

/// The horn that the student plays on that day, or the one marked `mark` if that is not empty. Throws Refusal
/// when there is none, or when there are several and no mark.
studio::Horn choose_horn(const store::StudioFile& file, const studio::Student& student, std::string_view mark,
                         studio::Date on);

/// The horn of that mark; case of A to Z does not matter. Throws Refusal that lists the marks there are.
studio::Horn horn_marked(const store::StudioFile& file, std::string_view mark);

/// The horns that the student plays on that day, in the order they were taken.
std::vector<studio::Horn> horns_of(const store::StudioFile& file, const studio::Student& student,
                                   studio::Date on);

/// Says on the error stream that the horn's kind is nowhere but in its copy in the studio, if it is so.
void tell_vanished_kind(const store::StudioFile& file, const studio::Horn& horn, std::ostream& errors);

/// The question that the studio's records put for a student on a horn.
tuning::TuningInputs tuning_inputs(const store::StudioFile& file, const studio::Student& student,
                                   const studio::Horn& horn, studio::Date today);

}  // namespace lowledger::batch
