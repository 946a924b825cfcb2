# Tests of the tree as a whole: its floors, its format, its WebAssembly build.
add_test(NAME "floors: every include points down and the core is pure" COMMAND ${CMAKE_SOURCE_DIR}/tools/floors)
add_test(NAME "floors: each kind of trespass is named in a sentence"
  COMMAND python3 ${CMAKE_CURRENT_SOURCE_DIR}/tools/floors_test.py)
add_test(NAME "format: every source file is in the house format" COMMAND ${CMAKE_SOURCE_DIR}/tools/format --check)

add_test(NAME "wasm: every core room compiles without exceptions, threads, clock or disk"
  COMMAND ${CMAKE_SOURCE_DIR}/tools/wasm ${CMAKE_BINARY_DIR}/wasm)
set_tests_properties("wasm: every core room compiles without exceptions, threads, clock or disk"
  PROPERTIES FIXTURES_SETUP wasm TIMEOUT 1200)
add_test(NAME "wasm: one answer of the core is right under node"
  COMMAND node ${CMAKE_CURRENT_SOURCE_DIR}/wasm/run.mjs ${CMAKE_BINARY_DIR}/wasm/answer.wasm)
set_tests_properties("wasm: one answer of the core is right under node" PROPERTIES FIXTURES_REQUIRED wasm)

if(TARGET dampward)
  add_test(NAME "pictures: those of the guide are what the program prints"
    COMMAND ${CMAKE_SOURCE_DIR}/tools/pictures $<TARGET_FILE:dampward> --check)
endif()
