# Debian packages of what is installed: `cpack` in the build folder writes laywright and liblaywright-dev.

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME laywright)
set(CPACK_PACKAGE_VENDOR "The Laywright authors")
set(CPACK_PACKAGE_CONTACT "The Laywright authors <authors@laywright.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "computes how a winder lays fiber onto a spool")
set(CPACK_RESOURCE_FILE_LICENSE ${PROJECT_SOURCE_DIR}/LICENSE)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_COMPONENTS_ALL program library)

set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)

set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME laywright)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PROGRAM_DESCRIPTION "From spool, fiber, pitch, stops and reversal it computes every turn of a
wind, and tells where gaps, piled edges and dropped turns come, how thick
the spool gets, whether the length fits, and what to set instead.
.
It has a window, commands for scripts, lessons, and a set-up sheet for
the person at the winder. Its results are estimates from a model.")
# Loaded when a window or a picture is asked for, and the letters in them.
set(CPACK_DEBIAN_PROGRAM_PACKAGE_DEPENDS "libegl1, libgl1, libgl1-mesa-dri, fonts-dejavu-core")

set(CPACK_DEBIAN_LIBRARY_PACKAGE_NAME liblaywright-dev)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_LIBRARY_DESCRIPTION "These are headers, static libraries and a CMake package, with which other
programs can read a lay plan, lay it, measure the build and write reports.")
set(CPACK_DEBIAN_LIBRARY_PACKAGE_DEPENDS
  "libfmt-dev, libcairo2-dev, libqrencode-dev, libnlopt-cxx-dev, libnlopt-dev, pkg-config")
set(CPACK_DEBIAN_LIBRARY_PACKAGE_SUGGESTS "nlohmann-json3-dev, libeigen3-dev")

include(CPack)
