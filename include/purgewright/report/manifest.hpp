// manifest.json: the tool's version, SHA-256 of the job and of every file of the folder, so that a sheet on
// the wall can be held against the files it came from.
//
// Errors: std::runtime_error when a file cannot be read. Guarantee: files in the order of their paths.
// Source: FIPS 180-4 (SHA-256), through OpenSSL.
#pragma once

#include <filesystem>
#include <span>
#include <string>
#include <string_view>

namespace purgewright::report {

// Lower-case hexadecimal SHA-256.
std::string sha256(std::string_view bytes);

// A file that the job names and that the design depends on: other jobs of its family, a measured log.
struct InputFile {
  std::string name; // relative to the job's folder
  std::filesystem::path path;
};

// Manifest of all files below `folder` (manifest.json itself left out).
std::string manifest_json(const std::filesystem::path &folder, std::string_view job_bytes,
                          std::span<const InputFile> inputs, std::string_view tool_version);

} // namespace purgewright::report
