// The built program, its example jobs and its schemas.
#pragma once

#include "support/paths.hpp"
#include "support/run_program.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <string>
#include <vector>

namespace purgewright::test {

inline std::string example(const std::string &name) {
  return purgewright::test::example_job(name);
}

inline Finished run_tool(const std::vector<std::string> &arguments, const RunOptions &options = {}) {
  return run(PURGEWRIGHT_PROGRAM, arguments, options);
}

// The text with its first occurrence of a part replaced; the part must be there.
inline std::string with(std::string text, const std::string &part, const std::string &replacement) {
  const auto at = text.find(part);
  REQUIRE(at != std::string::npos);
  return text.replace(at, part.size(), replacement);
}

// A manifest's text as the program would have written it, sealed by the system's own SHA-256.
inline std::string sealed(nlohmann::ordered_json manifest) {
  const ScratchFolder folder;
  manifest.erase("manifest_sha256");
  write_bytes(folder / "text", manifest.dump(2));
  manifest["manifest_sha256"] = run("/usr/bin/sha256sum", {(folder / "text").string()}).out.substr(0, 64);
  return manifest.dump(2) + "\n";
}

// A small sound job written into the folder, changed or not.
inline std::string job_in(const ScratchFolder &folder, const std::string &part = "",
                          const std::string &replacement = "") {
  const std::string text = bytes_of(example("logger-25"));
  const auto path = folder / "job.yaml";
  write_bytes(path, part.empty() ? text : with(text, part, replacement));
  return path.string();
}

inline Finished validate_results(const std::filesystem::path &file) {
  return run("/usr/bin/python3",
             {purgewright::test::project_file("tests/e2e/validate_json.py"),
              purgewright::test::project_file("templates/results.schema.json"), file.string()});
}

} // namespace purgewright::test
