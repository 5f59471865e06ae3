# The camera driver on Debian's own kernel in emulation.
if(TARGET scan-camera)
  add_executable(camera-frames ${CMAKE_CURRENT_SOURCE_DIR}/camera-frames.c
                 ${CMAKE_SOURCE_DIR}/tests/unit/drivers/symbol.c)
  target_include_directories(camera-frames PRIVATE ${CMAKE_SOURCE_DIR}/tests/unit/drivers)
  target_link_libraries(camera-frames PRIVATE camera-base zint m)
  set_target_properties(camera-frames PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/tests)
  add_executable(picture-look ${CMAKE_CURRENT_SOURCE_DIR}/picture-look.c)
  target_link_libraries(picture-look PRIVATE camera-base)
  set_target_properties(picture-look PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/tests)
  add_test(NAME device-camera-vm COMMAND ${CMAKE_CURRENT_SOURCE_DIR}/camera-vm.sh
           ${CMAKE_BINARY_DIR}/bin ${CMAKE_BINARY_DIR}/tests/camera-frames ${CMAKE_BINARY_DIR}/tests/picture-look)
  set_tests_properties(device-camera-vm PROPERTIES SKIP_RETURN_CODE 77 TIMEOUT 300 RUN_SERIAL ON)
endif()
