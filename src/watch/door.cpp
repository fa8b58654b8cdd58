#include "watch/door.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <sys/random.h>
#include <system_error>

namespace purgewright::watch {
namespace {

constexpr int http_port = 80; // a browser leaves it out

std::string lower(std::string text) {
  std::ranges::transform(text, text.begin(),
                         [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return text;
}

bool is_own_host(const Door &door, const std::string &host) {
  const std::string asked = lower(host);
  return std::ranges::any_of(std::array{"127.0.0.1", "localhost"}, [&](std::string_view name) {
    return asked == fmt::format("{}:{}", name, door.port) || (door.port == http_port && asked == name);
  });
}

bool is_own_origin(const Door &door, const std::string &origin) {
  constexpr std::string_view scheme = "http://";
  return origin.starts_with(scheme) && is_own_host(door, origin.substr(scheme.size()));
}

// From this page, or typed and opened by the user.
bool is_own_site(const std::string &site) {
  return site == "same-origin" || site == "none";
}

// Takes as long wherever the first difference lies.
bool is_token(const Door &door, std::string_view text) {
  unsigned differences = text.size() == door.token.size() ? 0U : 1U;
  for (std::size_t i = 0; i < std::min(text.size(), door.token.size()); ++i) {
    differences |= static_cast<unsigned>(static_cast<unsigned char>(text[i]) ^
                                         static_cast<unsigned char>(door.token[i]));
  }
  return differences == 0U && !door.token.empty();
}

} // namespace

Pass judge(const Door &door, const Asked &asked) {
  if (asked.hosts.size() != 1 || !is_own_host(door, asked.hosts.front()) ||
      !std::ranges::all_of(asked.origins, [&](const auto &origin) { return is_own_origin(door, origin); }) ||
      !std::ranges::all_of(asked.sites, is_own_site)) {
    return Pass::forbidden;
  }
  const std::string_view path = asked.path;
  const auto end = path.find('/', 1);
  if (!path.starts_with('/') || end == std::string_view::npos || !is_token(door, path.substr(1, end - 1))) {
    return Pass::unknown;
  }
  return asked.method == "GET" ? Pass::in : Pass::not_allowed;
}

std::string_view behind_token(const Door &door, std::string_view path) {
  return path.substr(std::min(path.size(), door.token.size() + 2));
}

std::string address(const Door &door) {
  return fmt::format("http://127.0.0.1:{}/{}/", door.port, door.token);
}

std::string make_token() {
  std::array<unsigned char, 16> bytes{};
  if (::getrandom(bytes.data(), bytes.size(), 0) != static_cast<ssize_t>(bytes.size())) {
    throw std::system_error(errno, std::generic_category(), "getrandom");
  }
  return fmt::format("{:02x}", fmt::join(bytes, ""));
}

} // namespace purgewright::watch
