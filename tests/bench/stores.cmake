add_executable(bench-stores ${CMAKE_CURRENT_LIST_DIR}/stores.c ${CMAKE_CURRENT_LIST_DIR}/asked.c)
house_links(bench-stores LIBS run)
set_target_properties(bench-stores PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/tests)
add_dependencies(bench-stores bandtallyd)
