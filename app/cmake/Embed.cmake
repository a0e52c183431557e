# lowledger_embed(TARGET NAMESPACE ns NAME header-name FILES ...)
# Compiles text files into TARGET. The generated header `<header-name>.h` (included by that name) declares
#   namespace ns { struct EmbeddedFile { std::string_view name, text; }; std::span<const EmbeddedFile> <header_name>(); }
# where `name` is the file's name without its folder. Files are in the order given.
set(LOWLEDGER_EMBED_SCRIPT "${CMAKE_CURRENT_LIST_DIR}/embed_files.cmake")
function(lowledger_embed target)
  cmake_parse_arguments(PARSE_ARGV 1 emb "" "NAMESPACE;NAME" "FILES")
  set(dir "${CMAKE_CURRENT_BINARY_DIR}/embedded")
  set(header "${dir}/${emb_NAME}.h")
  set(source "${dir}/${emb_NAME}.cpp")
  list(TRANSFORM emb_FILES PREPEND "${CMAKE_CURRENT_SOURCE_DIR}/" REGEX "^[^/]")
  string(JOIN "|" files ${emb_FILES})
  add_custom_command(
    OUTPUT "${header}" "${source}"
    COMMAND ${CMAKE_COMMAND} "-DFILES=${files}" "-DNAMESPACE=${emb_NAMESPACE}" "-DNAME=${emb_NAME}" "-DDIR=${dir}"
            -P "${LOWLEDGER_EMBED_SCRIPT}"
    DEPENDS ${emb_FILES} "${LOWLEDGER_EMBED_SCRIPT}"
    VERBATIM)
  target_sources(${target} PRIVATE "${source}" "${header}")
  target_include_directories(${target} PRIVATE "${dir}")
endfunction()
