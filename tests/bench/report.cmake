add_executable(bench-report report.c)
house_links(bench-report LIBS history)
set_target_properties(bench-report PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/tests)
