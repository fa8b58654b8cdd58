// Job texts that several tests start from.
#pragma once

#include "purgewright/job/job.hpp"
#include "support/paths.hpp"

#include <fstream>
#include <iterator>
#include <string>
#include <string_view>

namespace purgewright::job::test {

inline constexpr std::string_view flat_job = R"(job:
  name: flat
tube:
  material: titanium-grade-2
  outside_diameter: 25.4 mm
  wall: 0.9 mm
  length: 160 mm
cap:
  shape: flat
  diameter: 25.4 mm
  thickness: 1.2 mm
)";

inline std::string path_in_tests(std::string_view path) {
  return purgewright::test::project_file("tests/" + std::string(path));
}

inline std::string file_text(const std::string &path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// The text with its first occurrence of a part replaced; the part must be there.
inline std::string with(std::string_view text, std::string_view part, std::string_view replacement) {
  std::string result(text);
  result.replace(result.find(part), part.size(), replacement);
  return result;
}

inline Resolution resolve_text(std::string_view text) {
  DraftReading reading = read_draft_text(text, "job.yaml");
  if (has_errors(reading.problems)) {
    return {.job = {}, .problems = std::move(reading.problems)};
  }
  return resolve(reading.draft);
}

inline std::string all_text(const Diagnostics &problems) {
  std::string text;
  for (const auto &problem : problems) {
    text += to_text(problem) + "\n";
  }
  return text;
}

// The job of a text that must be good; an empty job after a failed assertion elsewhere.
inline Job good_job(std::string_view text) {
  const Resolution resolution = resolve_text(text);
  return resolution.job ? *resolution.job : Job{};
}

} // namespace purgewright::job::test
