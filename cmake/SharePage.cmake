# The share page, built with Emscripten from this same tree and put into the program: laywright_share_page(TARGET).

option(LAYWRIGHT_SHARE_PAGE "Build the share page with Emscripten and put it into the program" OFF)
set(LAYWRIGHT_SHARE_PAGE_JOBS 1 CACHE STRING "Compilers that may run at once for the share page")

# Adds the page to a target's sources; without the option, an empty one.
function(laywright_share_page target)
  set(here ${PROJECT_SOURCE_DIR}/src/web)
  target_sources(${target} PRIVATE ${here}/template/share_template.cpp)
  if(NOT LAYWRIGHT_SHARE_PAGE)
    return()
  endif()

  find_program(EMCMAKE_PROGRAM emcmake)
  if(NOT EMCMAKE_PROGRAM)
    message(FATAL_ERROR "The share page needs Emscripten (Debian: emscripten). Without it: -DLAYWRIGHT_SHARE_PAGE=OFF")
  endif()
  set(folder ${CMAKE_BINARY_DIR}/web)
  set(page ${folder}/share_page.html)
  file(GLOB_RECURSE parts CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/shaders/*.glsl ${here}/*.*)
  foreach(folder IN LISTS laywright_browser_folders)
    file(GLOB more CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/src/${folder}/*.*)
    list(APPEND parts ${more})
  endforeach()
  # Debian keeps the tools that Emscripten's own scripts load where only Debian's Node looks.
  set(with_node ${CMAKE_COMMAND} -E env NODE_PATH=/usr/share/nodejs)
  add_custom_command(
    OUTPUT ${page}
    COMMAND ${with_node} ${EMCMAKE_PROGRAM} ${CMAKE_COMMAND} -G Ninja -S ${PROJECT_SOURCE_DIR} -B ${folder}
            -DCMAKE_BUILD_TYPE=Release -DCMAKE_CXX_COMPILER_LAUNCHER=${CMAKE_CXX_COMPILER_LAUNCHER}
    COMMAND ${with_node} ${CMAKE_COMMAND} --build ${folder} --parallel ${LAYWRIGHT_SHARE_PAGE_JOBS}
    COMMAND ${CMAKE_COMMAND} -E touch ${page}
    DEPENDS ${parts} ${PROJECT_SOURCE_DIR}/CMakeLists.txt ${PROJECT_SOURCE_DIR}/cmake/EmbedShaders.cmake
            ${PROJECT_SOURCE_DIR}/cmake/Folder.cmake
    COMMENT "Building the share page with Emscripten" VERBATIM)
  set_source_files_properties(${here}/template/share_template.cpp PROPERTIES
    COMPILE_DEFINITIONS "LAYWRIGHT_SHARE_PAGE_FILE=\"${page}\""
    OBJECT_DEPENDS ${page})
endfunction()
