#include "markup.hpp"

#include "purgewright/report/manifest.hpp"

#include <fmt/format.h>
#include <zlib.h>

#include <array>
#include <charconv>
#include <stdexcept>

namespace purgewright::html {
namespace {

std::string_view entity(char c) {
  switch (c) {
  case '&':
    return "&amp;";
  case '<':
    return "&lt;";
  case '>':
    return "&gt;";
  case '"':
    return "&quot;";
  case '\'':
    return "&#39;";
  default:
    return {};
  }
}

std::string zipped(std::string_view bytes) {
  constexpr int with_gzip_header = 15 + 16, memory = 8;
  z_stream stream{};
  if (deflateInit2(&stream, Z_BEST_COMPRESSION, Z_DEFLATED, with_gzip_header, memory, Z_DEFAULT_STRATEGY) !=
      Z_OK) {
    throw std::runtime_error("zlib does not start");
  }
  std::string out(deflateBound(&stream, static_cast<uLong>(bytes.size())), '\0');
  stream.next_in = reinterpret_cast<Bytef *>(const_cast<char *>(bytes.data())); // NOLINT: only read
  stream.avail_in = static_cast<uInt>(bytes.size());
  stream.next_out = reinterpret_cast<Bytef *>(out.data());
  stream.avail_out = static_cast<uInt>(out.size());
  const int end = deflate(&stream, Z_FINISH);
  out.resize(stream.total_out);
  deflateEnd(&stream);
  if (end != Z_STREAM_END) {
    throw std::runtime_error("zlib does not end");
  }
  return out;
}

} // namespace

std::string safe(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const std::string_view instead = entity(c);
    instead.empty() ? out += c : out += instead;
  }
  return out;
}

std::string safe_json(std::string json) {
  std::string out;
  for (const char c : json) {
    c == '<' ? out += "\\u003c" : out += c;
  }
  return out;
}

std::string base64(std::string_view bytes) {
  constexpr std::string_view letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string out;
  out.reserve((bytes.size() + 2) / 3 * 4);
  for (std::size_t at = 0; at < bytes.size(); at += 3) {
    const std::string_view three = bytes.substr(at, 3);
    unsigned all = 0;
    for (std::size_t i = 0; i < 3; ++i) {
      all = all << 8U | (i < three.size() ? static_cast<unsigned char>(three[i]) : 0U);
    }
    for (std::size_t i = 0; i < 4; ++i) {
      out += i <= three.size() ? letters[all >> (18 - 6 * i) & 63U] : '=';
    }
  }
  return out;
}

std::string packed(std::string_view bytes) {
  return base64(zipped(bytes));
}

std::string filled(std::string_view text, const std::map<std::string_view, std::string> &values) {
  constexpr std::string_view open = "{{", close = "}}";
  std::string out;
  for (;;) {
    const auto begin = text.find(open);
    out += text.substr(0, begin);
    if (begin == std::string_view::npos) {
      return out;
    }
    const auto end = text.find(close, begin);
    const std::string_view name = text.substr(begin + open.size(), end - begin - open.size());
    const auto found = values.find(name);
    if (end == std::string_view::npos || found == values.end()) {
      throw std::logic_error(fmt::format("the template asks for {}", name));
    }
    out += found->second;
    text.remove_prefix(end + close.size());
  }
}

std::string policy_hash(std::string_view text) {
  const std::string digits = report::sha256(text);
  std::string bytes;
  for (std::size_t i = 0; i < digits.size(); i += 2) {
    unsigned value = 0;
    std::from_chars(digits.data() + i, digits.data() + i + 2, value, 16);
    bytes += static_cast<char>(value);
  }
  return fmt::format("'sha256-{}'", base64(bytes));
}

} // namespace purgewright::html
