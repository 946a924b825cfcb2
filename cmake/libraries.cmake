# Third-party libraries, all Debian packages. Each has one home (tools/floors checks the includes).
if(DAMPWARD_WASM)
  # No compiled fmt for this target: its headers are used alone, found behind the target's own system headers.
  add_library(dampward_fmt INTERFACE)
  target_compile_definitions(dampward_fmt INTERFACE FMT_HEADER_ONLY FMT_EXCEPTIONS=0)
  target_compile_options(dampward_fmt INTERFACE "SHELL:-idirafter /usr/include")
  add_library(fmt::fmt ALIAS dampward_fmt)
else()
  find_package(fmt 9 REQUIRED)  # home: core/base
  if(DAMPWARD_TESTS)
    find_package(rapidcheck REQUIRED)  # home: tests
    find_package(doctest REQUIRED)  # home: tests
  endif()
  if(DAMPWARD_SCOPE STREQUAL "all")
    find_package(PkgConfig REQUIRED)
    if(DAMPWARD_TESTS)
      pkg_check_modules(libical REQUIRED IMPORTED_TARGET libical)  # home: tests/cli, as a second reader of calendars
    endif()
    # Through pkg-config, because that names the compiled library; the CMake package is header-only and slow.
    pkg_check_modules(tomlplusplus REQUIRED IMPORTED_TARGET tomlplusplus)  # home: adapters/files (target PkgConfig::tomlplusplus)
    pkg_check_modules(cairo REQUIRED IMPORTED_TARGET cairo)  # home: adapters/pdf
    pkg_check_modules(pangocairo REQUIRED IMPORTED_TARGET pangocairo)  # home: adapters/pdf
        pkg_check_modules(rsvg REQUIRED IMPORTED_TARGET librsvg-2.0)  # home: adapters/pdf
    pkg_check_modules(gdkpixbuf REQUIRED IMPORTED_TARGET gdk-pixbuf-2.0)  # home: adapters/pdf
    # Debian ships zint without a CMake or pkg-config file.
    find_library(DAMPWARD_ZINT_LIBRARY zint REQUIRED)
    find_path(DAMPWARD_ZINT_HEADERS zint.h REQUIRED)
    add_library(dampward_zint INTERFACE)  # home: adapters/pdf
    target_link_libraries(dampward_zint INTERFACE ${DAMPWARD_ZINT_LIBRARY})
    target_include_directories(dampward_zint SYSTEM INTERFACE ${DAMPWARD_ZINT_HEADERS})
    find_package(nlohmann_json 3.11 REQUIRED)  # home: adapters/files
    find_package(date REQUIRED)  # home: adapters/files
    find_package(OpenSSL 3 REQUIRED COMPONENTS Crypto)  # home: adapters/files
    find_package(CLI11 2.1 REQUIRED)  # home: apps/cli
  endif()
endif()
