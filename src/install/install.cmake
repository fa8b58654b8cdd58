# What `cmake --install` puts where, how other programs find the libraries, and the Debian packages that cpack makes.
include(CMakePackageConfigHelpers)
set(doc ${CMAKE_INSTALL_DOCDIR})

# ---- the program
install(TARGETS purgewright RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR} COMPONENT program)
install(TARGETS purgewright-solids RUNTIME DESTINATION ${CMAKE_INSTALL_LIBEXECDIR}/purgewright COMPONENT program)
install(DIRECTORY templates DESTINATION ${CMAKE_INSTALL_DATADIR}/purgewright COMPONENT program)
install(FILES src/install/man/purgewright.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT program)
install(FILES src/install/completions/purgewright.bash RENAME purgewright COMPONENT program
  DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions)
install(FILES src/install/completions/purgewright.fish COMPONENT program
  DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d)
# Debian's zsh looks in the first below /usr/local, in the second below /usr.
foreach(folder site-functions vendor-completions)
  install(FILES src/install/completions/_purgewright DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/${folder} COMPONENT program)
endforeach()

# ---- words and licences
install(FILES README.md LICENSE src/install/licences/copyright DESTINATION ${doc} COMPONENT program)
install(DIRECTORY examples DESTINATION ${doc} COMPONENT program PATTERN run EXCLUDE PATTERN library EXCLUDE)
install(FILES src/install/licences/libraries.md DESTINATION ${doc}/licences COMPONENT program)
file(STRINGS tests/packages.txt packages)
list(FIND packages "# ---- tests ----" end)
list(SUBLIST packages 0 ${end} packages)
set(library_packages ${packages})
list(FILTER library_packages INCLUDE REGEX "^lib.*-dev$|^nlohmann-json3-dev$|^zlib1g-dev$")
set(font_packages ${packages})
list(FILTER font_packages INCLUDE REGEX "^fonts-")
foreach(package ${library_packages} libjs-three ${font_packages})
  # Debian's own copy, of the version that is built with; elsewhere the list alone names them.
  install(FILES /usr/share/doc/${package}/copyright DESTINATION ${doc}/licences RENAME ${package}.txt
    COMPONENT program OPTIONAL)
endforeach()

# ---- the libraries: find_package(purgewright COMPONENTS ...)
set(package ${CMAKE_INSTALL_LIBDIR}/cmake/purgewright)
foreach(set core solids sheets dxf)
  install(EXPORT purgewright-${set} NAMESPACE purgewright:: DESTINATION ${package} COMPONENT development)
endforeach()
configure_package_config_file(src/install/purgewright-config.cmake.in purgewright-config.cmake INSTALL_DESTINATION ${package})
write_basic_package_version_file(purgewright-config-version.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/purgewright-config.cmake ${PROJECT_BINARY_DIR}/purgewright-config-version.cmake
  DESTINATION ${package} COMPONENT development)
install(DIRECTORY examples/library DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/libpurgewright-dev/examples COMPONENT development)
install(FILES src/install/licences/copyright DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/libpurgewright-dev COMPONENT development)

# ---- Debian packages: the program, and the libraries for those who build on them
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_CONTACT "the purgewright authors <nobody@localhost>")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_COMPONENTS_ALL program development)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME purgewright)
set(CPACK_COMPONENT_PROGRAM_DESCRIPTION "designs weld-purge fixtures for tubes of reactive metal
From a one-page job file: slotted argon chamber, end plug, gas-port block and rolling cradle as solids and
drawings, with gas flows, purge times, runs and holds, and a check of every rule.")
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SHLIBDEPS ON)
list(JOIN font_packages ", " CPACK_DEBIAN_PROGRAM_PACKAGE_DEPENDS)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME libpurgewright-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
set(CPACK_COMPONENT_DEVELOPMENT_DESCRIPTION "designs weld-purge fixtures: libraries
Static libraries and headers of purgewright, found by CMake as purgewright::checks, purgewright::solids, ...")
list(JOIN library_packages ", " CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS)
string(APPEND CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS ", pkg-config")
include(CPack)
