# Writes HEADER from the sentence ids in the files TEXTS (parted by |), in their order: an enum with one name a
# sentence, and its names.
# HEADER changes only when an id does, so that mending a text rebuilds nothing but the texts.
string(REPLACE "|" ";" files "${TEXTS}")
set(ids "")
foreach(file IN LISTS files)
  file(STRINGS "${file}" in_file REGEX "^[a-z][a-z0-9_]* = " ENCODING UTF-8)
  foreach(line IN LISTS in_file)
    string(REGEX MATCH "^[a-z0-9_]+" id "${line}")
    list(APPEND ids "${id}")
  endforeach()
endforeach()
set(enumerators "")
set(names "")
foreach(id IN LISTS ids)
  string(APPEND enumerators "    ${id},\n")
  string(APPEND names "    \"${id}\",\n")
endforeach()
list(LENGTH ids count)
set(header
"#pragma once

#include <array>
#include <cstdint>
#include <string_view>

namespace lowledger::words {

/// The sentences of reports/words/sentences.toml.
enum class Sentence : std::uint16_t {
${enumerators}};

/// The ids, indexed by the enumerator's number.
inline constexpr std::array<std::string_view, ${count}> sentence_ids = {
${names}};

}  // namespace lowledger::words
")
set(before "")
if(EXISTS "${HEADER}")
  file(READ "${HEADER}" before)
endif()
if(NOT before STREQUAL header)
  file(WRITE "${HEADER}" "${header}")
endif()
