add_executable(bench-record record.c)
house_links(bench-record LIBS history PKG sqlite3 libcrypto)
set_target_properties(bench-record PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/tests)
