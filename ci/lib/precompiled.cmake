# Headers of others, parsed once and not once a file. Natively only:
# as WASM each file must still include what it uses, as clang-tidy also sees it (ci/lib/tidy.mjs).
# rehale_std: what core and web use most; rehale_gtest: the same with GoogleTest, for tests.
if(EMSCRIPTEN OR REHALE_FUZZ)
  set(REHALE_PCH OFF)
endif()

# A target of its own: those that reuse its headers wait for it to be complete.
function(rehale_precompile name)
  if(REHALE_PCH)
    file(CONFIGURE OUTPUT ${CMAKE_BINARY_DIR}/precompiled/${name}.cpp CONTENT "")
    add_library(${name} OBJECT EXCLUDE_FROM_ALL ${CMAKE_BINARY_DIR}/precompiled/${name}.cpp)
    target_link_libraries(${name} PRIVATE rehale_ours rehale_headers)
    target_precompile_headers(${name} PRIVATE ${ARGN})
  endif()
endfunction()

function(rehale_precompiled target headers)
  if(REHALE_PCH)
    target_precompile_headers(${target} REUSE_FROM ${headers})
  endif()
endfunction()

set(rehale_std_headers <algorithm> <array> <bit> <cmath> <cstddef> <cstdint> <functional> <limits> <map> <memory>
    <optional> <span> <string> <string_view> <tuple> <utility> <vector> <tl/expected.hpp>)
rehale_precompile(rehale_std ${rehale_std_headers})
