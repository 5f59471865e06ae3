# Paper through a real CUPS to a virtual IPP Everywhere printer.
add_test(NAME device-print COMMAND ${CMAKE_CURRENT_SOURCE_DIR}/print.sh $<TARGET_FILE:bandtally-print>)
set_tests_properties(device-print PROPERTIES SKIP_RETURN_CODE 77 TIMEOUT 600 RUN_SERIAL ON)
add_test(NAME device-labels COMMAND ${CMAKE_CURRENT_SOURCE_DIR}/labels.sh $<TARGET_FILE_DIR:bandtallyd>)
set_tests_properties(device-labels PROPERTIES SKIP_RETURN_CODE 77 TIMEOUT 600 RUN_SERIAL ON ENVIRONMENT "BANDTALLY_SOURCE=${CMAKE_SOURCE_DIR}")
add_test(NAME device-setup COMMAND ${CMAKE_CURRENT_SOURCE_DIR}/setup.sh $<TARGET_FILE_DIR:bandtallyd>)
set_tests_properties(device-setup PROPERTIES SKIP_RETURN_CODE 77 TIMEOUT 300 RUN_SERIAL ON ENVIRONMENT "BANDTALLY_SOURCE=${CMAKE_SOURCE_DIR}")
