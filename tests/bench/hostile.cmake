add_executable(bench-hostile ${CMAKE_CURRENT_LIST_DIR}/hostile.c ${CMAKE_CURRENT_LIST_DIR}/asked.c)
house_links(bench-hostile LIBS code base)
set_target_properties(bench-hostile PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/tests)
add_dependencies(bench-hostile bandtallyd)
