# The loader of OpenGL, generated from the registry that comes with glad: nothing is fetched.
find_program(GLAD_PROGRAM glad REQUIRED)
set(loader ${CMAKE_BINARY_DIR}/glad)
add_custom_command(
  OUTPUT ${loader}/src/gl.c ${loader}/include/glad/gl.h
  COMMAND ${GLAD_PROGRAM} --api gl:core=3.3 --extensions "" --reproducible --quiet --out-path ${loader} c
  COMMENT "Generating the OpenGL loader" VERBATIM)
set_source_files_properties(${loader}/src/gl.c PROPERTIES LANGUAGE CXX)
add_library(laywright_glad STATIC ${loader}/src/gl.c)
target_include_directories(laywright_glad SYSTEM PUBLIC ${loader}/include)
