# From plan to report as a library for other programs: headers, static libraries and a CMake package, so that there
#   find_package(Laywright REQUIRED)
#   target_link_libraries(mine PRIVATE Laywright::measure)
# is all. What draws on a screen stays with the program.

include(CMakePackageConfigHelpers)
set(CMAKE_INSTALL_DEFAULT_COMPONENT_NAME library)
set(library_folders base jobs plan pattern lay measure payoff takeup verdict advise order follow figures answers paper)
set(package_folder ${CMAKE_INSTALL_LIBDIR}/cmake/Laywright)

foreach(folder IN LISTS library_folders)
  set_target_properties(laywright_${folder} PROPERTIES EXPORT_NAME ${folder})
  install(TARGETS laywright_${folder} EXPORT LaywrightTargets
    ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR})
  install(DIRECTORY src/${folder} DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/laywright
    FILES_MATCHING PATTERN *.h)
endforeach()

install(EXPORT LaywrightTargets NAMESPACE Laywright:: DESTINATION ${package_folder})
configure_package_config_file(cmake/LaywrightConfig.cmake.in ${CMAKE_BINARY_DIR}/install/LaywrightConfig.cmake
  INSTALL_DESTINATION ${package_folder} NO_SET_AND_CHECK_MACRO)
# Before 1.0 a new minor version may change the interface.
write_basic_package_version_file(${CMAKE_BINARY_DIR}/install/LaywrightConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_BINARY_DIR}/install/LaywrightConfig.cmake ${CMAKE_BINARY_DIR}/install/LaywrightConfigVersion.cmake
  DESTINATION ${package_folder})

install(FILES LICENSE DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/liblaywright-dev RENAME copyright)
install(DIRECTORY samples/library/ DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/liblaywright-dev/examples)
