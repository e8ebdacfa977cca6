# One target per folder of src/; its dependencies are the arrows of DEVELOPERS.md.

include(GNUInstallDirs)

add_library(laywright_options INTERFACE)
target_compile_options(laywright_options INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wsign-conversion -Wnon-virtual-dtor
  # Compiled together, a name of one file is no shadow over that of the next.
  $<IF:$<AND:$<BOOL:${CMAKE_UNITY_BUILD}>,$<CXX_COMPILER_ID:GNU>>,-Wshadow=local,-Wshadow>
  # A build must have the same bits in every configuration: no fused multiply-add behind our back.
  -ffp-contract=off)
if(LAYWRIGHT_WERROR)
  target_compile_options(laywright_options INTERFACE -Werror)
endif()
if(LAYWRIGHT_SANITIZE)
  target_compile_options(laywright_options INTERFACE
    -fsanitize=${LAYWRIGHT_SANITIZE} -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_link_options(laywright_options INTERFACE -fsanitize=${LAYWRIGHT_SANITIZE})
endif()

# What most files include is read by the compiler once, and not hundreds of times. Off where objects come from a cache, which takes
# no file that was compiled with it, and for tools that cannot read what this compiler keeps.
set(precompiles ON)
if("${CMAKE_CXX_COMPILER_LAUNCHER}$ENV{CMAKE_CXX_COMPILER_LAUNCHER}" MATCHES "cache")
  set(precompiles OFF)
endif()
option(LAYWRIGHT_PRECOMPILED "Compile what most files include only once" ${precompiles})
set(laywright_common_headers <algorithm> <array> <chrono> <cmath> <cstddef> <cstdint> <filesystem> <functional> <limits> <map>
  <memory> <mutex> <numbers> <optional> <string> <string_view> <utility> <vector>)

# laywright_precompile(TARGET [header...]): a target's own, or with REUSE_FROM another's, which has the same options.
function(laywright_precompile target)
  if(LAYWRIGHT_PRECOMPILED)
    if("REUSE_FROM" IN_LIST ARGN)
      target_precompile_headers(${target} ${ARGN})
    else()
      target_precompile_headers(${target} PRIVATE ${laywright_common_headers} ${ARGN})
    endif()
  endif()
endfunction()

# laywright_folder(NAME [OWN_OPTIONS] [DEPENDS folder...] [LIBRARIES imported...] [PRIVATE_LIBRARIES imported...])
# OWN_OPTIONS: it is compiled with options that others are not.
function(laywright_folder name)
  cmake_parse_arguments(ARG "OWN_OPTIONS" "" "DEPENDS;LIBRARIES;PRIVATE_LIBRARIES" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/*.cpp)
  add_library(laywright_${name} STATIC ${sources})
  target_compile_features(laywright_${name} PUBLIC cxx_std_20)
  target_include_directories(laywright_${name} PUBLIC
    $<BUILD_INTERFACE:${PROJECT_SOURCE_DIR}/src> $<INSTALL_INTERFACE:${CMAKE_INSTALL_INCLUDEDIR}/laywright>)
  list(TRANSFORM ARG_DEPENDS PREPEND laywright_)
  target_link_libraries(laywright_${name}
    PUBLIC ${ARG_DEPENDS} ${ARG_LIBRARIES}
    PRIVATE $<BUILD_INTERFACE:laywright_options> ${ARG_PRIVATE_LIBRARIES})
  if(ARG_OWN_OPTIONS OR name STREQUAL "base")
    laywright_precompile(laywright_${name} <fmt/format.h>)
  else()
    laywright_precompile(laywright_${name} REUSE_FROM laywright_base)
  endif()
endfunction()

# What the share page's program links in a browser: no files, no threads, no cairo.
set(laywright_browser_folders base plan pattern lay measure payoff takeup verdict figures scene render desk)
