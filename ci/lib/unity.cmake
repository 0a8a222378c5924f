# Files of a target that do not get in each other's way are compiled as one: most of a file's time goes into headers.
# Off when somebody works on a file (it alone is compiled again), on in ci/test. Which go together: ci/lib/file_groups.mjs.
# What a file uses and does not include can then stand in its neighbour: REHALE_UNITY=OFF ci/build site shows it.
function(rehale_together target)
  if(NOT REHALE_UNITY)
    return()
  endif()
  get_target_property(sources ${target} SOURCES)
  find_program(NODE node REQUIRED)
  execute_process(COMMAND ${NODE} ${PROJECT_SOURCE_DIR}/ci/lib/unity.mjs ${PROJECT_SOURCE_DIR} ${sources}
                  WORKING_DIRECTORY ${CMAKE_CURRENT_SOURCE_DIR} OUTPUT_VARIABLE groups
                  OUTPUT_STRIP_TRAILING_WHITESPACE COMMAND_ERROR_IS_FATAL ANY)
  string(REPLACE ";" "|" groups "${groups}")
  string(REPLACE "\n" ";" groups "${groups}")
  set(n 0)
  foreach(group ${groups})
    string(REPLACE "|" ";" files "${group}")
    set_source_files_properties(${files} PROPERTIES UNITY_GROUP ${n})
    math(EXPR n "${n} + 1")
  endforeach()
  set_target_properties(${target} PROPERTIES UNITY_BUILD ON UNITY_BUILD_MODE GROUP)
endfunction()
