#include "purgewright/report/manifest.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>
#include <openssl/evp.h>

#include <algorithm>
#include <array>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <vector>

namespace purgewright::report {
namespace {

std::string read_bytes(const std::filesystem::path &path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) {
    throw std::runtime_error(path.string() + ": cannot be read");
  }
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

} // namespace

std::string sha256(std::string_view bytes) {
  std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
  unsigned int length = 0;
  if (EVP_Digest(bytes.data(), bytes.size(), digest.data(), &length, EVP_sha256(), nullptr) != 1) {
    throw std::runtime_error("SHA-256 is not available in this OpenSSL");
  }
  std::string text;
  for (unsigned int i = 0; i < length; ++i) {
    text += fmt::format("{:02x}", digest[i]);
  }
  return text;
}

std::string manifest_json(const std::filesystem::path &folder, std::string_view job_bytes,
                          std::span<const InputFile> inputs, std::string_view tool_version) {
  std::vector<std::filesystem::path> files;
  for (const auto &entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (entry.is_regular_file() && entry.path().filename() != "manifest.json") {
      files.push_back(entry.path());
    }
  }
  std::ranges::sort(files);
  nlohmann::ordered_json root;
  root["tool"] = {{"name", "purgewright"}, {"version", tool_version}};
  root["job_sha256"] = sha256(job_bytes);
  if (!inputs.empty()) {
    root["inputs"] = nlohmann::ordered_json::array();
  }
  for (const InputFile &input : inputs) {
    root["inputs"].push_back({{"path", input.name}, {"sha256", sha256(read_bytes(input.path))}});
  }
  root["files"] = nlohmann::ordered_json::array();
  for (const auto &file : files) {
    const std::string bytes = read_bytes(file);
    root["files"].push_back({{"path", file.lexically_relative(folder).generic_string()},
                             {"bytes", bytes.size()},
                             {"sha256", sha256(bytes)}});
  }
  return root.dump(2) + "\n";
}

} // namespace purgewright::report
