# What `cmake --install` and the Debian package hold: the program, its manual page and completions, all made from the
# command specs compiled into it.
include(GNUInstallDirs)

set(made ${PROJECT_BINARY_DIR}/installed)
add_custom_command(
  OUTPUT ${made}/rillwatt.1.gz ${made}/rillwatt.bash ${made}/_rillwatt ${made}/rillwatt.fish
  COMMAND ${CMAKE_COMMAND} -E make_directory ${made}
  COMMAND rillwatt manual | gzip -9n > ${made}/rillwatt.1.gz
  COMMAND rillwatt completions --shell bash > ${made}/rillwatt.bash
  COMMAND rillwatt completions --shell zsh > ${made}/_rillwatt
  COMMAND rillwatt completions --shell fish > ${made}/rillwatt.fish
  DEPENDS rillwatt
  COMMENT "Writing manual page and completions"
  VERBATIM)
add_custom_target(rillwatt_made_pages ALL DEPENDS ${made}/rillwatt.1.gz)

install(TARGETS rillwatt RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
install(FILES ${made}/rillwatt.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
install(FILES ${made}/rillwatt.bash DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions RENAME rillwatt)
install(FILES ${made}/_rillwatt DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions)
install(FILES ${made}/rillwatt.fish DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME rillwatt)
set(CPACK_PACKAGE_VERSION ${PROJECT_VERSION})
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY ${PROJECT_DESCRIPTION})
set(CPACK_PACKAGE_CONTACT "the rillwatt maintainers <maintainers@rillwatt.example>")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_SECTION utils)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_STRIP_FILES ON)
include(CPack)
