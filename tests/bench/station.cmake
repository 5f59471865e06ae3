add_executable(bench-station ${CMAKE_CURRENT_LIST_DIR}/station.c ${CMAKE_CURRENT_LIST_DIR}/asked.c)
house_links(bench-station LIBS history code base PKG sqlite3)
set_target_properties(bench-station PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/tests)
add_dependencies(bench-station bandtallyd bandtally)
