# Compiler and folder settings shared by every target.
set(DAMPWARD_SCOPE "all" CACHE STRING "What to build: all, or core (core rooms and their tests only)")
set_property(CACHE DAMPWARD_SCOPE PROPERTY STRINGS all core)
option(DAMPWARD_TESTS "Build the tests" ON)
option(DAMPWARD_WERROR "Treat warnings as errors (set by our own scripts)" OFF)
set(DAMPWARD_SANITIZE "" CACHE STRING "Sanitizers, comma separated: address,undefined or thread")

if(NOT CMAKE_BUILD_TYPE)
  set(CMAKE_BUILD_TYPE Release CACHE STRING "Build type" FORCE)
endif()

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)
set(CMAKE_RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/bin)

find_program(DAMPWARD_CCACHE ccache)
if(DAMPWARD_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
  # Without hashing the folder, so that several build folders of one tree share what they compiled.
  set(CMAKE_CXX_COMPILER_LAUNCHER ${CMAKE_COMMAND} -E env CCACHE_NOHASHDIR=1 ${DAMPWARD_CCACHE})
endif()

# Every target of ours links this one for its flags.
add_library(dampward_settings INTERFACE)
target_include_directories(dampward_settings INTERFACE ${CMAKE_SOURCE_DIR})
target_compile_options(dampward_settings INTERFACE
  # No fused multiply-add: the same inputs give the same digits on every processor.
  -ffp-contract=off
  -Wall -Wextra -Wpedantic -Wconversion -Wno-sign-conversion -Wdouble-promotion
  -Wnon-virtual-dtor -Woverloaded-virtual -Wcast-qual -Wimplicit-fallthrough $<$<CXX_COMPILER_ID:GNU>:-Wshadow=local>
  # g++ 12 sees overlaps in std::string::replace that are not there (its bug 105651).
  $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict>
  $<$<BOOL:${DAMPWARD_WERROR}>:-Werror>)
if(DAMPWARD_SANITIZE)
  target_compile_options(dampward_settings INTERFACE
    -fsanitize=${DAMPWARD_SANITIZE} -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_link_options(dampward_settings INTERFACE -fsanitize=${DAMPWARD_SANITIZE})
endif()
