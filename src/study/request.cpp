#include "purgewright/study/request.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <charconv>
#include <utility>

namespace purgewright::study {
namespace {

using Json = nlohmann::json;

constexpr std::string_view clash_word = "clash ", made_word = "made ", of_word = "of ", fault_word = "fault ";

Json binary(const std::string &bytes) {
  return Json::binary({bytes.begin(), bytes.end()});
}

std::string text_of(const Json &bytes) {
  const auto &binary = bytes.get_binary();
  return {binary.begin(), binary.end()};
}

// Names and labels are bytes too: a path need not be UTF-8.
Json to_json(const job::Document &document) {
  return {
      {"name", binary(document.name)}, {"label", binary(document.label)}, {"bytes", binary(document.bytes)}};
}

job::Document document_of(const Json &json) {
  return {text_of(json.at("name")), text_of(json.at("label")), text_of(json.at("bytes")), {}, {}};
}

checks::Change change_of(const Json &json) {
  const auto *field = job::field(json.at("key").get<std::string>());
  if (field == nullptr) {
    throw BadMessage("the message chooses a key that there is not");
  }
  return {field->key, json.at("from").get<double>(), json.at("to").get<double>()};
}

checks::Clash clash_of(std::string_view words) {
  const auto first = words.find(' '), second = words.find(' ', first + 1);
  double shared = 0.0; // m3
  if (first != std::string_view::npos && second != std::string_view::npos) {
    const char *end = words.data() + words.size();
    if (std::from_chars(words.data() + second + 1, end, shared).ptr == end) {
      return {std::string(words.substr(0, first)), std::string(words.substr(first + 1, second - first - 1)),
              units::cubic_metres(shared)};
    }
  }
  throw BadMessage("a clash without two parts and a volume");
}

} // namespace

std::string to_message(const Request &request) {
  Json root;
  root["version"] = request.version;
  root["page"] = request.extent == Extent::page;
  root["job"] = to_json(request.sources.job);
  root["family"] = Json::array();
  for (const auto &member : request.sources.family) {
    root["family"].push_back(to_json(member));
  }
  if (request.sources.log) {
    root["log"] = to_json(*request.sources.log);
  }
  root["chosen"] = Json::array();
  for (const auto &change : request.chosen) {
    root["chosen"].push_back(
        {{"key", job::field(change.key).path}, {"from", change.from}, {"to", change.to}});
  }
  std::string message;
  Json::to_cbor(root, message);
  return message;
}

Request read_message(std::string_view message) {
  try {
    const Json root = Json::from_cbor(message);
    Request request{.sources = {.job = document_of(root.at("job")), .family = {}, .log = std::nullopt},
                    .chosen = {},
                    .version = root.at("version").get<std::string>(),
                    .extent = root.at("page").get<bool>() ? Extent::page : Extent::folder};
    for (const auto &member : root.at("family")) {
      request.sources.family.push_back(document_of(member));
    }
    if (root.contains("log")) {
      request.sources.log = document_of(root.at("log"));
    }
    for (const auto &change : root.at("chosen")) {
      request.chosen.push_back(change_of(change));
    }
    return request;
  } catch (const Json::exception &error) {
    throw BadMessage(fmt::format("the message cannot be read: {}", error.what()));
  }
}

Said Answer::take(std::string_view line) {
  constexpr std::size_t hash_length = 64; // SHA-256 in hexadecimal
  if (line.starts_with(clash_word)) {
    clashes.push_back(clash_of(line.substr(clash_word.size())));
  } else if (line.starts_with(made_word) && line.size() > made_word.size() + hash_length) {
    const auto words = line.substr(made_word.size());
    made.emplace(words.substr(hash_length + 1), words.substr(0, hash_length));
  } else if (line.starts_with(fault_word)) {
    faults += fmt::format("{}\n", line.substr(fault_word.size()));
  } else if (line == view_line) {
    return Said::view;
  } else if (line.starts_with(of_word)) {
    of = line.substr(of_word.size());
  } else {
    last_step = line;
    return Said::step;
  }
  return Said::other;
}

std::string clash_line(const checks::Clash &clash) {
  return fmt::format("{}{} {} {}", clash_word, clash.first, clash.second, clash.shared.value());
}

std::string made_line(std::string_view path, std::string_view sha256) {
  return fmt::format("{}{} {}", made_word, sha256, path);
}

std::string fault_line(std::string_view text) {
  return fmt::format("{}{}", fault_word, text);
}

std::string of_line(std::string_view sha256) {
  return fmt::format("{}{}", of_word, sha256);
}

} // namespace purgewright::study
