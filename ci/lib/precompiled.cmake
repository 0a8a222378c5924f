# Headers of others, parsed once and not once a file. Not where each file is compiled alone as WASM
# (REHALE_UNITY=OFF): that shows which file does not include what it uses.
# rehale_std: what core and web use most; rehale_gtest: the same with GoogleTest, for tests.
if(REHALE_FUZZ OR (EMSCRIPTEN AND NOT REHALE_UNITY))
  set(REHALE_PCH OFF)
endif()

# A target of its own: those that reuse its headers wait for it to be complete.
function(rehale_precompile name)
  if(REHALE_PCH)
    file(CONFIGURE OUTPUT ${CMAKE_BINARY_DIR}/precompiled/${name}.cpp CONTENT "")
    add_library(${name} OBJECT EXCLUDE_FROM_ALL ${CMAKE_BINARY_DIR}/precompiled/${name}.cpp)
    target_link_libraries(${name} PRIVATE rehale_ours rehale_headers)
    target_precompile_headers(${name} PRIVATE ${ARGN})
    rehale_name_precompiled(${name} "${ARGN}")
  endif()
endfunction()

# What ccache goes by instead of the precompiled bytes, which differ in every folder (CCACHE_PCH_EXTSUM).
# The compiler and its own headers it knows by itself.
function(rehale_name_precompiled name headers)
  set(told "${CMAKE_CXX_COMPILER_VERSION} ${headers}")
  file(GLOB_RECURSE others /usr/include/tl/expected.hpp ${REHALE_GTEST}/googletest/include/*.h)
  foreach(header ${others})
    file(SHA256 ${header} sum)
    string(APPEND told " ${sum}")
  endforeach()
  file(CONFIGURE OUTPUT ${CMAKE_CURRENT_BINARY_DIR}/CMakeFiles/${name}.dir/cmake_pch.hxx.gch.sum CONTENT "${told}")
endfunction()

function(rehale_precompiled target headers)
  if(REHALE_PCH)
    target_precompile_headers(${target} REUSE_FROM ${headers})
  endif()
endfunction()

set(rehale_std_headers <algorithm> <array> <bit> <cmath> <cstddef> <cstdint> <functional> <limits> <map> <memory>
    <optional> <span> <string> <string_view> <tuple> <utility> <vector> <tl/expected.hpp>)
rehale_precompile(rehale_std ${rehale_std_headers})
