# Lists a test program's cases as ctest entries, whatever characters their names hold (Catch's own script breaks a name at
# its semicolons, and the halves then run nothing and pass):
#   cmake -D PROGRAM=... -D LIST=... -D RUN=... -D PREFIX=... -D LABEL=... -D TIMEOUT=... -D FILE=... -P discover.cmake
# A test that says "skipped: " counts as skipped: what it needs is not installed.
# LIST: what makes the program print the names of its cases, one a line; RUN: what makes a name that matches nothing fail
# rather than pass.
execute_process(COMMAND "${PROGRAM}" ${LIST} OUTPUT_VARIABLE names ERROR_VARIABLE said)
string(STRIP "${names}" names)
if(names STREQUAL "")
  message(FATAL_ERROR "${PROGRAM} lists no tests\n${said}")
endif()
list(JOIN RUN " " run)
set(script "")
while(NOT names STREQUAL "")
  string(FIND "${names}" "\n" end)
  string(SUBSTRING "${names}" 0 ${end} name)
  if(end EQUAL -1)
    set(names "")
  else()
    math(EXPR end "${end} + 1")
    string(SUBSTRING "${names}" ${end} -1 names)
  endif()
  string(STRIP "${name}" name)
  # What Catch would read as part of a pattern.
  string(REGEX REPLACE "([][,\\\\*~\"])" "\\\\\\1" pattern "${name}")
  string(APPEND script "add_test([==[${PREFIX}: ${name}]==] [==[${PROGRAM}]==] [==[${pattern}]==] ${run})\n"
    "set_tests_properties([==[${PREFIX}: ${name}]==] PROPERTIES LABELS ${LABEL} TIMEOUT ${TIMEOUT}\n"
    "  SKIP_REGULAR_EXPRESSION [==[skipped: ]==])\n")
endwhile()
file(WRITE "${FILE}" "${script}")
