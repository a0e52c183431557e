# Run by lowledger_embed: writes DIR/NAME.h and DIR/NAME.cpp from the '|'-separated FILES.
string(REPLACE "|" ";" files "${FILES}")
set(entries "")
foreach(file IN LISTS files)
  get_filename_component(name "${file}" NAME)
  file(READ "${file}" text HEX)
  # Sixteen bytes a line; adjacent literals join into one.
  string(REPEAT "[0-9a-f]" 32 line)
  string(REGEX REPLACE "(${line})" "\\1\n" text "${text}")
  string(REGEX REPLACE "([0-9a-f][0-9a-f])" "\\\\x\\1" text "${text}")
  string(REPLACE "\n" "\"\n         \"" text "${text}")
  string(APPEND entries "    {\"${name}\",\n     \"${text}\"},\n")
endforeach()
file(WRITE "${DIR}/${NAME}.h"
"#pragma once
#include <span>
#include <string_view>
namespace ${NAMESPACE} {
struct EmbeddedFile {
    std::string_view name;
    std::string_view text;
};
std::span<const EmbeddedFile> ${NAME}();
}  // namespace ${NAMESPACE}
")
file(WRITE "${DIR}/${NAME}.cpp"
"#include \"${NAME}.h\"
namespace ${NAMESPACE} {
namespace {
constexpr EmbeddedFile files[] = {
${entries}};
}  // namespace
std::span<const EmbeddedFile> ${NAME}() {
    return files;
}
}  // namespace ${NAMESPACE}
")
