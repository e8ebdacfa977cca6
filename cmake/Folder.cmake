# One target per folder of src/; its dependencies are the arrows of DEVELOPERS.md.

include(GNUInstallDirs)

add_library(laywright_options INTERFACE)
target_compile_options(laywright_options INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wnon-virtual-dtor
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

# laywright_folder(NAME [DEPENDS folder...] [LIBRARIES imported...] [PRIVATE_LIBRARIES imported...])
function(laywright_folder name)
  cmake_parse_arguments(ARG "" "" "DEPENDS;LIBRARIES;PRIVATE_LIBRARIES" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/*.cpp)
  add_library(laywright_${name} STATIC ${sources})
  target_compile_features(laywright_${name} PUBLIC cxx_std_20)
  target_include_directories(laywright_${name} PUBLIC
    $<BUILD_INTERFACE:${PROJECT_SOURCE_DIR}/src> $<INSTALL_INTERFACE:${CMAKE_INSTALL_INCLUDEDIR}/laywright>)
  list(TRANSFORM ARG_DEPENDS PREPEND laywright_)
  target_link_libraries(laywright_${name}
    PUBLIC ${ARG_DEPENDS} ${ARG_LIBRARIES}
    PRIVATE $<BUILD_INTERFACE:laywright_options> ${ARG_PRIVATE_LIBRARIES})
endfunction()

# What the share page's program links in a browser: no files, no threads, no cairo.
set(laywright_browser_folders base plan pattern lay measure payoff takeup verdict figures scene render desk)
