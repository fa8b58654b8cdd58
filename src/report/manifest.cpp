#include "purgewright/report/manifest.hpp"

#include "purgewright/files/file.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>
#include <openssl/evp.h>

#include <array>
#include <cerrno>
#include <cstdio>
#include <memory>
#include <set>
#include <stdexcept>
#include <system_error>
#include <utility>
#include <vector>

namespace purgewright::report {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;
using files::FileError;

constexpr const char *manifest_name = "manifest.json";
constexpr const char *seal = "manifest_sha256";
constexpr std::string_view program = "purgewright";
constexpr std::size_t manifest_size_most = std::size_t{16}
                                           << 20U; // bytes; a design's has some twenty thousand

Json inputs_json(const std::vector<InputFile> &inputs) {
  Json list = Json::array();
  for (const InputFile &input : inputs) {
    list.push_back({{"path", input.name}, {"sha256", input.sha256}});
  }
  return list;
}

void add_job(const ReadJob &job, Json &entry) {
  entry["job_sha256"] = job.sha256;
  if (!job.inputs.empty()) {
    entry["inputs"] = inputs_json(job.inputs);
  }
}

using Digest = std::array<unsigned char, EVP_MAX_MD_SIZE>;

std::string hexadecimal(const Digest &digest, unsigned int length) {
  std::string text;
  for (unsigned int i = 0; i < length; ++i) {
    text += fmt::format("{:02x}", digest[i]);
  }
  return text;
}

// Size and SHA-256 of a file of any size.
FileMark mark_of(const fs::path &path) {
  const auto close = [](std::FILE *file) { std::fclose(file); };
  const std::unique_ptr<std::FILE, decltype(close)> file(std::fopen(path.c_str(), "rbe"), close);
  const std::unique_ptr<EVP_MD_CTX, decltype(&EVP_MD_CTX_free)> sum(EVP_MD_CTX_new(), &EVP_MD_CTX_free);
  if (!file) {
    throw FileError(path, std::generic_category().message(errno));
  }
  FileMark mark{};
  std::vector<char> piece(std::size_t{64} * 1024);
  bool sound = EVP_DigestInit_ex(sum.get(), EVP_sha256(), nullptr) == 1;
  while (const std::size_t got = std::fread(piece.data(), 1, piece.size(), file.get())) {
    sound = sound && EVP_DigestUpdate(sum.get(), piece.data(), got) == 1;
    mark.bytes += got;
  }
  if (std::ferror(file.get()) != 0) {
    throw FileError(path, std::generic_category().message(errno));
  }
  Digest digest{};
  unsigned int length = 0;
  if (!sound || EVP_DigestFinal_ex(sum.get(), digest.data(), &length) != 1) {
    throw std::runtime_error("SHA-256 is not available in this OpenSSL");
  }
  mark.sha256 = hexadecimal(digest, length);
  return mark;
}

// A manifest's text, with SHA-256 of itself before that line was in it.
std::string sealed(Json root) {
  root[seal] = sha256(root.dump(2));
  return root.dump(2) + "\n";
}

// Byte for byte what this program wrote.
bool seal_holds(const std::string &text, Json root) {
  root.erase(seal);
  return sealed(std::move(root)) == text;
}

bool is_command(std::string_view found, std::string_view wanted) {
  return found == wanted || (wanted.ends_with(' ') && found.starts_with(wanted));
}

// What a manifest lists; FileError when it is not this program's or of another command.
std::map<std::string, FileMark> listed(const fs::path &manifest, std::string_view command) {
  const std::string bytes = files::read(manifest, manifest_size_most);
  const Json root = Json::parse(bytes, nullptr, false);
  const auto text = [](const Json &at, const char *key) {
    return at.is_object() && at.contains(key) && at[key].is_string() ? at[key].get<std::string>() : "";
  };
  if (text(root, "program") != program || !root.contains("files") || !root["files"].is_array()) {
    throw FileError(manifest, "is not a manifest of this program's");
  }
  if (!is_command(text(root, "command"), command)) {
    throw FileError(manifest, fmt::format("is of `{} {}`", program, text(root, "command")));
  }
  if (!seal_holds(bytes, root)) {
    throw FileError(manifest, "is not as this program writes it (edited, or of another version)");
  }
  std::map<std::string, FileMark> marks;
  for (const auto &entry : root["files"]) {
    if (entry.is_object() && entry.contains("bytes") && entry["bytes"].is_number_unsigned()) {
      marks[text(entry, "path")] = {entry["bytes"].get<std::uintmax_t>(), text(entry, "sha256")};
    }
  }
  return marks;
}

// The folders that the listed files need.
std::set<std::string> folders_of(const std::map<std::string, FileMark> &marks) {
  std::set<std::string> folders;
  for (const auto &[path, mark] : marks) {
    for (fs::path folder = fs::path(path).parent_path(); !folder.empty(); folder = folder.parent_path()) {
      folders.insert(folder.generic_string());
    }
  }
  return folders;
}

void require_listed(const fs::directory_entry &entry, const FileMark *mark) {
  if (mark == nullptr || entry.is_symlink() || !entry.is_regular_file()) {
    throw FileError(entry.path(), "was not written by this program and would be lost");
  }
  if (entry.file_size() != mark->bytes || mark_of(entry.path()) != *mark) {
    throw FileError(entry.path(), "has been changed since it was written and would be lost");
  }
}

} // namespace

std::string sha256(std::string_view bytes) {
  Digest digest{};
  unsigned int length = 0;
  if (EVP_Digest(bytes.data(), bytes.size(), digest.data(), &length, EVP_sha256(), nullptr) != 1) {
    throw std::runtime_error("SHA-256 is not available in this OpenSSL");
  }
  return hexadecimal(digest, length);
}

std::map<std::string, FileMark> marks_below(const fs::path &folder) {
  std::map<std::string, FileMark> marks;
  for (const auto &entry : fs::recursive_directory_iterator(folder)) {
    if (entry.is_regular_file()) {
      marks[entry.path().lexically_relative(folder).generic_string()] = mark_of(entry.path());
    }
  }
  return marks;
}

std::string manifest_json(const fs::path &folder, const Writing &writing) {
  Json root;
  root["program"] = program;
  root["version"] = writing.version;
  root["command"] = writing.command;
  if (writing.command == "design") {
    add_job(writing.jobs.at(0), root);
  } else {
    root["jobs"] = Json::array();
    for (const ReadJob &job : writing.jobs) {
      add_job(job, root["jobs"].emplace_back(Json{{"name", job.name}}));
    }
  }
  root["files"] = Json::array();
  for (const auto &[path, mark] : marks_below(folder)) {
    if (path != manifest_name) {
      root["files"].push_back({{"path", path}, {"bytes", mark.bytes}, {"sha256", mark.sha256}});
    }
  }
  return sealed(std::move(root));
}

std::string read_as_listed(const fs::path &folder, const std::string &name, std::string_view command) {
  std::string bytes = files::read(folder / name);
  const auto marks = listed(folder / manifest_name, command);
  const auto mark = marks.find(name);
  if (mark == marks.end() || mark->second != FileMark{bytes.size(), sha256(bytes)}) {
    throw FileError(folder / name, "is not the file that manifest.json beside it lists");
  }
  return bytes;
}

void require_replaceable(const fs::path &folder, std::string_view command) {
  std::error_code error;
  if (fs::is_empty(folder, error)) {
    return;
  }
  const fs::path manifest = folder / manifest_name;
  if (error || fs::symlink_status(manifest).type() != fs::file_type::regular) {
    throw FileError(folder, error ? error.message() : "holds files of another origin (no manifest.json)");
  }
  const auto marks = listed(manifest, command);
  const auto folders = folders_of(marks);
  for (const auto &entry : fs::recursive_directory_iterator(folder)) {
    const std::string path = entry.path().lexically_relative(folder).generic_string();
    if (path == manifest_name || (entry.is_directory() && !entry.is_symlink() && folders.contains(path))) {
      continue;
    }
    const auto mark = marks.find(path);
    require_listed(entry, mark == marks.end() ? nullptr : &mark->second);
  }
}

} // namespace purgewright::report
