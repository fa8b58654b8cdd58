// Solves a problem with OpenFOAM, by the same files and the same script that a case has.
#pragma once

#include "flow/foam_case.hpp"
#include "flow/scripts.hpp"
#include "support/run_program.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

namespace purgewright::flow::solving {

// False, with the word that ctest takes for a skipped test, where the solver is not there.
inline bool solver_is_there() {
  const auto asked = purgewright::test::run("/bin/sh", {"-c", "command -v " + std::string(cold_solver)});
  if (asked.status != 0) {
    WARN("skipped: OpenFOAM is not installed (" << install_command << ")");
  }
  return asked.status == 0;
}

struct Course {
  std::vector<double> times;
  std::vector<std::vector<double>> air; // by time and probe
};

inline Course solve(const Problem &problem) {
  namespace fs = std::filesystem;
  const purgewright::test::ScratchFolder folder;
  const auto write = [&](const std::string &path, const std::string &text) {
    fs::create_directories((folder / path).parent_path());
    purgewright::test::write_bytes(folder / path, text);
  };
  for (const CaseFile &file : foam_files(problem)) {
    write(file.path, file.text);
  }
  write(std::string(run_script), run_script_text(problem.hot ? hot_solver : cold_solver));
  const auto done = purgewright::test::run("/bin/sh", {(folder / std::string(run_script)).string()});
  INFO(done.err);
  REQUIRE(done.status == 0);
  Course course;
  std::istringstream lines(purgewright::test::bytes_of(
      folder / ("postProcessing/probes/0/" + std::string(air_field(problem.hot)))));
  for (std::string line; std::getline(lines, line);) {
    std::istringstream words(line);
    if (double time = 0.0; words >> time) {
      course.times.push_back(time);
      course.air.emplace_back();
      for (double air = 0.0; words >> air;) {
        course.air.back().push_back(air);
      }
    }
  }
  REQUIRE_FALSE(course.times.empty());
  REQUIRE(course.air.front().size() == problem.probes.size());
  return course;
}

} // namespace purgewright::flow::solving
