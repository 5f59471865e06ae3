# A scanner of umockdev for speed, a pty for the serial one, and Debian's kernel in emulation for the truth.
pkg_check_modules(UMOCKDEV IMPORTED_TARGET umockdev-1.0)
if(UMOCKDEV_FOUND)
  add_executable(handheld-mock ${CMAKE_CURRENT_SOURCE_DIR}/handheld-mock.c ${CMAKE_CURRENT_SOURCE_DIR}/handheld-rig.c)
  house_links(handheld-mock LIBS base PKG umockdev-1.0)
  set_target_properties(handheld-mock PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/tests)
  # umockdev answers read() and ioctl() through a socket, which the sandbox rightly forbids; the sandboxed driver
  # itself runs in vm-scanner.
  add_executable(bare-scan-handheld ${CMAKE_SOURCE_DIR}/drivers/main.c ${CMAKE_SOURCE_DIR}/drivers/handheld.c
                 ${CMAKE_SOURCE_DIR}/drivers/wire-writer.c ${CMAKE_CURRENT_SOURCE_DIR}/handheld-bare.c)
  house_links(bare-scan-handheld LIBS handheld-base base PKG jansson)
  target_compile_definitions(bare-scan-handheld PRIVATE BANDTALLY_VERSION="${PROJECT_VERSION}")
  set_target_properties(bare-scan-handheld PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/tests)
  add_dependencies(handheld-mock bare-scan-handheld)
endif()
add_executable(scanner-inject ${CMAKE_CURRENT_SOURCE_DIR}/scanner-inject.c)
house_links(scanner-inject)
set_target_properties(scanner-inject PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/tests)

house_test(test-serial-pty ${CMAKE_CURRENT_SOURCE_DIR}/serial-pty.c LIBS base)
add_dependencies(test-serial-pty scan-serial)
add_test(NAME device-handheld-mock COMMAND ${CMAKE_CURRENT_SOURCE_DIR}/handheld-mock.sh
         ${CMAKE_BINARY_DIR}/tests/handheld-mock ${CMAKE_BINARY_DIR}/tests/bare-scan-handheld)
add_test(NAME device-scanner-vm COMMAND ${CMAKE_CURRENT_SOURCE_DIR}/vm-scanner
         ${CMAKE_BINARY_DIR}/bin ${CMAKE_BINARY_DIR}/tests)
add_test(NAME device-station-vm COMMAND ${CMAKE_CURRENT_SOURCE_DIR}/vm-station
         ${CMAKE_BINARY_DIR}/bin ${CMAKE_BINARY_DIR}/tests)
set_tests_properties(device-handheld-mock device-scanner-vm device-station-vm PROPERTIES SKIP_RETURN_CODE 77 TIMEOUT 450)
# Both fetch the kernel where it is not there yet.
set_tests_properties(device-scanner-vm device-station-vm PROPERTIES RESOURCE_LOCK emulated-machine)
