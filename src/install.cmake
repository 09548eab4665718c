# What is installed beside the program, and the Debian package: `cpack -G DEB` in the build folder.
include(GNUInstallDirs)
# Where Debian's zsh looks; elsewhere share/zsh/site-functions is usual.
set(NOOKFIT_ZSH_FOLDER ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions CACHE STRING
  "Folder of zsh's completions, under the prefix")

# The program itself prints its man page and completions, from the table its help comes from.
function(nookfit_page page file folder)
  add_custom_command(OUTPUT ${file} COMMAND nookfit help --as ${page} > ${file} DEPENDS nookfit VERBATIM)
  set_property(GLOBAL APPEND PROPERTY NOOKFIT_PAGES ${CMAKE_CURRENT_BINARY_DIR}/${file})
  install(FILES ${CMAKE_CURRENT_BINARY_DIR}/${file} DESTINATION ${folder} RENAME ${ARGN})
endfunction()
nookfit_page(man nookfit.1 ${CMAKE_INSTALL_MANDIR}/man1 nookfit.1)
nookfit_page(bash nookfit.bash ${CMAKE_INSTALL_DATADIR}/bash-completion/completions nookfit)
nookfit_page(zsh nookfit.zsh ${NOOKFIT_ZSH_FOLDER} _nookfit)
nookfit_page(fish nookfit.fish ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d nookfit.fish)
get_property(pages GLOBAL PROPERTY NOOKFIT_PAGES)
add_custom_target(nookfit_pages ALL DEPENDS ${pages})

install(FILES README.md DESTINATION ${CMAKE_INSTALL_DOCDIR})
install(FILES LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR} RENAME copyright)
install(DIRECTORY docs/ DESTINATION ${CMAKE_INSTALL_DOCDIR} PATTERN decisions EXCLUDE)
install(DIRECTORY rooms/ DESTINATION ${CMAKE_INSTALL_DOCDIR}/rooms
  FILES_MATCHING PATTERN "*.toml" PATTERN expected EXCLUDE)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_PACKAGE_NAME nookfit)
set(CPACK_PACKAGE_CONTACT "nookfit maintainers <maintainers@nookfit.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "checks how shop-made pieces fit into a measured room corner")
set(CPACK_PACKAGE_DESCRIPTION
  "Takes a design drawn for a square corner and what tape, level and stud finder
said about the room, finds readings that cannot be right, puts each piece into
the room as found, and says what fits, what does not, and where to drill.")
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
# Loaded when something is drawn, so that no linker knows of them (docs/decisions/0007-cairo.md).
set(CPACK_DEBIAN_PACKAGE_DEPENDS "libcairo2 (>= 1.16), fonts-dejavu-core")
include(CPack)
