# What `cmake --install` puts where: the program, what comes with it, and what desktops and shells need to know of it.
# The component `program` is all of this; InstallLibrary.cmake has the component `library`.

find_package(Python3 REQUIRED COMPONENTS Interpreter)
find_program(RSVG_CONVERT_PROGRAM rsvg-convert REQUIRED)

set(parts ${PROJECT_SOURCE_DIR}/install)
set(made ${CMAKE_BINARY_DIR}/install)
file(MAKE_DIRECTORY ${made})

# The man page and the completion come from what the program says of itself, so that they never tell anything else.
add_custom_command(
  OUTPUT ${made}/laywright.1 ${made}/laywright.bash
  COMMAND Python3::Interpreter ${parts}/man_page.py $<TARGET_FILE:laywright> ${parts}/man_tail.roff ${made}/laywright.1
  COMMAND Python3::Interpreter ${parts}/bash_completion.py $<TARGET_FILE:laywright> ${made}/laywright.bash
  DEPENDS laywright ${parts}/man_page.py ${parts}/bash_completion.py ${parts}/command_help.py ${parts}/man_tail.roff
  COMMENT "Writing the man page and the completion" VERBATIM)
add_custom_command(
  OUTPUT ${made}/laywright.png
  COMMAND ${RSVG_CONVERT_PROGRAM} --width 128 --height 128 --output ${made}/laywright.png ${parts}/laywright.svg
  DEPENDS ${parts}/laywright.svg
  COMMENT "Drawing the icon" VERBATIM)
add_custom_target(laywright_manual ALL DEPENDS ${made}/laywright.1 ${made}/laywright.bash ${made}/laywright.png)

set(CMAKE_INSTALL_DEFAULT_COMPONENT_NAME program)

install(TARGETS laywright DESTINATION ${CMAKE_INSTALL_BINDIR})
install(FILES ${made}/laywright.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
install(FILES ${made}/laywright.bash DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions
  RENAME laywright)
install(FILES ${parts}/laywright.desktop DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
install(FILES ${parts}/laywright.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/mime/packages)
install(FILES ${parts}/laywright.svg DESTINATION ${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps)
install(FILES ${made}/laywright.png DESTINATION ${CMAKE_INSTALL_DATADIR}/icons/hicolor/128x128/apps)
# The program looks for them there (src/app/shipped.h).
install(DIRECTORY samples/ DESTINATION ${CMAKE_INSTALL_DATADIR}/laywright/samples
  FILES_MATCHING PATTERN *.lay.toml PATTERN *.order.toml PATTERN *.lesson.toml PATTERN library EXCLUDE PATTERN pictures EXCLUDE PATTERN catalogue EXCLUDE)
install(DIRECTORY samples/catalogue DESTINATION ${CMAKE_INSTALL_DATADIR}/laywright/samples FILES_MATCHING PATTERN *.toml)

# The licence, and those of the libraries whose code the program holds, as Debian keeps them.
install(FILES LICENSE DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/laywright RENAME copyright)
set(held libimgui-dev libglm-dev libcli11-dev nlohmann-json3-dev libtomlplusplus-dev libfast-float-dev libfmt-dev
  libeigen3-dev libboost-dev libopencv-core-dev python3-glad)
if(LAYWRIGHT_SHARE_PAGE)
  list(APPEND held emscripten)
endif()
foreach(package IN LISTS held)
  install(FILES /usr/share/doc/${package}/copyright
    DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/laywright/libraries RENAME ${package} OPTIONAL)
endforeach()
