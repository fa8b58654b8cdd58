// manifest.json: what wrote a folder, from what, and SHA-256 of every file of it, so that a sheet on the wall
// can be held against the files it came from and a folder is only replaced when nothing in it would be lost.
//
// Units: bytes. Frame: none. Errors: files::FileError. Guarantee: files in the order of their paths.
// Source: FIPS 180-4 (SHA-256), through OpenSSL.
#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::report {

// Lower-case hexadecimal SHA-256.
std::string sha256(std::string_view bytes);

struct FileMark {
  std::uintmax_t bytes = 0;
  std::string sha256;
  bool operator==(const FileMark &) const = default;
};

// Every regular file below a folder by its relative path.
std::map<std::string, FileMark> marks_below(const std::filesystem::path &folder);

// A file that the job names and that the design depends on: other jobs of its family, a measured log.
struct InputFile {
  std::string name; // as the job writes it
  std::string sha256;
};

struct ReadJob {
  std::string name; // the job's own
  std::string sha256;
  std::vector<InputFile> inputs;
};

// What wrote a folder; the command's name tells which folders it may replace.
struct Writing {
  std::string_view command;
  std::string_view version;
  std::vector<ReadJob> jobs;
};

// Manifest of all files below `folder`; of itself it holds the SHA-256 it has without that line. A design is
// of one job, which stands alone at the top; any other command lists its jobs.
std::string manifest_json(const std::filesystem::path &folder, const Writing &);

// A file of a folder that `command` wrote; FileError naming it when it has changed since, or the manifest
// when that is not this program's, of another command or edited. A command that ends in a space is meant with
// whatever follows it.
std::string read_as_listed(const std::filesystem::path &folder, const std::string &name,
                           std::string_view command);

// FileError naming the first file that would be lost if the folder were replaced by what `command` writes:
// one that its manifest does not list, or that has changed since, or the manifest itself when it is not this
// program's, of another command or edited. An empty folder has nothing to lose.
void require_replaceable(const std::filesystem::path &folder, std::string_view command);

} // namespace purgewright::report
