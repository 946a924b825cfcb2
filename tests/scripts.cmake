# Tests of the tree as a whole: its floors, its format, its WebAssembly build.
add_test(NAME "floors: every include points down" COMMAND ${CMAKE_SOURCE_DIR}/tools/floors)
