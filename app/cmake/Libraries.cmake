# The libraries from Debian, each as one target. Which folder may use which is written in that folder's CMakeLists.txt.
find_package(SQLiteCpp REQUIRED)
find_package(Boost 1.74 REQUIRED)
find_package(fmt REQUIRED)
find_package(Eigen3 REQUIRED)
find_package(CLI11 REQUIRED)
find_package(nlohmann_json REQUIRED)
find_package(Freetype REQUIRED)
find_package(Fontconfig REQUIRED)
find_package(Threads REQUIRED)
find_package(tomlplusplus REQUIRED)

# Debian's libharu comes without a CMake or pkg-config file.
find_path(HPDF_INCLUDE_DIR hpdf.h REQUIRED)
find_library(HPDF_LIBRARY hpdf REQUIRED)
add_library(haru INTERFACE)
target_include_directories(haru SYSTEM INTERFACE "${HPDF_INCLUDE_DIR}")
target_link_libraries(haru INTERFACE "${HPDF_LIBRARY}")

# Debian's utf8proc comes with a pkg-config file only.
find_path(UTF8PROC_INCLUDE_DIR utf8proc.h REQUIRED)
find_library(UTF8PROC_LIBRARY utf8proc REQUIRED)
add_library(utf8proc INTERFACE)
target_include_directories(utf8proc SYSTEM INTERFACE "${UTF8PROC_INCLUDE_DIR}")
target_link_libraries(utf8proc INTERFACE "${UTF8PROC_LIBRARY}")

# Debian's cmark has a CMake file that asks for the program of that name too.
find_path(CMARK_INCLUDE_DIR cmark.h REQUIRED)
find_library(CMARK_LIBRARY cmark REQUIRED)
add_library(cmark INTERFACE)
target_include_directories(cmark SYSTEM INTERFACE "${CMARK_INCLUDE_DIR}")
target_link_libraries(cmark INTERFACE "${CMARK_LIBRARY}")

if(LOWLEDGER_WINDOW)
  find_package(wxWidgets 3.2 REQUIRED COMPONENTS adv core base)
  find_package(PkgConfig REQUIRED)
  pkg_check_modules(GTK3 REQUIRED IMPORTED_TARGET gtk+-3.0)
  add_library(wx INTERFACE)
  target_include_directories(wx SYSTEM INTERFACE ${wxWidgets_INCLUDE_DIRS})
  target_compile_definitions(wx INTERFACE ${wxWidgets_DEFINITIONS})
  target_compile_options(wx INTERFACE ${wxWidgets_CXX_FLAGS})
  target_link_libraries(wx INTERFACE ${wxWidgets_LIBRARIES})
endif()
