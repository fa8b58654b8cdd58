// What a fuzzed reader promises: a broken promise ends the run, and the fuzzer keeps the input.
#pragma once

#include "purgewright/job/diagnostic.hpp"

#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

namespace purgewright::fuzz {

inline void promise(bool kept, const char *words) {
  if (!kept) {
    std::fprintf(stderr, "promise broken: %s\n", words);
    std::abort();
  }
}

inline std::string_view text_of(const std::uint8_t *bytes, std::size_t size) {
  return {reinterpret_cast<const char *>(bytes), size};
}

// Each problem says something, and points at a line that the text has.
inline void check_problems(const job::Diagnostics &problems, std::string_view text) {
  const auto lines = 1 + std::ranges::count_if(text, [](char c) { return c == '\n' || c == '\r'; });
  for (const auto &problem : problems) {
    promise(!problem.problem.empty(), "a problem says what is wrong");
    promise(problem.mark.line >= 0 && problem.mark.line <= lines, "a problem's line is one of the text");
    promise(!job::to_text(problem).empty(), "a problem has a text");
  }
}

} // namespace purgewright::fuzz
