add_executable(bench-paper ${CMAKE_CURRENT_LIST_DIR}/paper.c)
house_links(bench-paper LIBS labels)
set_target_properties(bench-paper PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/tests)
