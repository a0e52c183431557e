#pragma once

#include <cstdint>
#include <filesystem>

#include "app/batch/sample_sources.h"
#include "model/studio/date.h"

namespace lowledger::batch {

/// What the sample is made with when nothing else is asked.
inline constexpr std::uint64_t usual_sample_seed = 2;

/// Makes the studio that `sources` tell at `path`, with the last sheets in the weeks before `as_of`. Equal
/// arguments make equal dumps on every machine. Throws Refusal if something is at `path` already or the
/// folder cannot be written; then nothing is left there.
void make_sample_studio(const std::filesystem::path& path, const SampleSources& sources, studio::Date as_of,
                        std::uint64_t seed = usual_sample_seed);

}  // namespace lowledger::batch
