# The language, the warnings and the instrumentation every target shares.
set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_C_STANDARD 17)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)

if(NOT CMAKE_BUILD_TYPE)
  set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "Release, RelWithDebInfo or Debug" FORCE)
endif()
# Asserts stay on in RelWithDebInfo; line tables are enough for a useful backtrace and halve the link time.
set(CMAKE_CXX_FLAGS_RELWITHDEBINFO "-O2 -g1")

find_program(LOWLEDGER_CCACHE ccache)
if(LOWLEDGER_CCACHE)
  set(CMAKE_CXX_COMPILER_LAUNCHER "${LOWLEDGER_CCACHE}")
  set(CMAKE_C_COMPILER_LAUNCHER "${LOWLEDGER_CCACHE}")
endif()

add_library(lowledger_warnings INTERFACE)
target_compile_options(lowledger_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Werror
  -Wshadow                # a name means one thing at a time
  -Wconversion            # narrowing is written out
  -Wold-style-cast
  -Wnon-virtual-dtor
  -Woverloaded-virtual
  -Wno-restrict)          # GCC 12 takes std::string's own copying for an overlap (its bug 105651)

if(LOWLEDGER_SANITIZE)
  # Instrumented code takes a third less time to build so, and finds the same.
  set(CMAKE_CXX_FLAGS_RELWITHDEBINFO "-O1 -g1")
  add_compile_options(-fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
  add_link_options(-fsanitize=address,undefined)
  # GCC's flow analysis reports paths that the instrumentation itself adds.
  target_compile_options(lowledger_warnings INTERFACE -Wno-maybe-uninitialized)
endif()
