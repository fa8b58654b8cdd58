#include "watch/door.hpp"

#include <catch2/catch.hpp>

#include <string>

using purgewright::watch::address;
using purgewright::watch::Asked;
using purgewright::watch::behind_token;
using purgewright::watch::Door;
using purgewright::watch::judge;
using purgewright::watch::make_token;
using purgewright::watch::Pass;

namespace {

const Door door{.port = 40123, .token = "0123456789abcdef0123456789abcdef"};

Asked from_own_page() {
  return {.method = "GET",
          .path = "/" + door.token + "/1/",
          .hosts = {"127.0.0.1:40123"},
          .origins = {},
          .sites = {}};
}

Pass with_host(std::vector<std::string> hosts) {
  Asked asked = from_own_page();
  asked.hosts = std::move(hosts);
  return judge(door, asked);
}

Pass with_origin(std::string origin) {
  Asked asked = from_own_page();
  asked.origins = {std::move(origin)};
  return judge(door, asked);
}

Pass with_site(std::string site) {
  Asked asked = from_own_page();
  asked.sites = {std::move(site)};
  return judge(door, asked);
}

Pass with_path(std::string path) {
  Asked asked = from_own_page();
  asked.path = std::move(path);
  return judge(door, asked);
}

} // namespace

TEST_CASE("the page's own requests come in", "[unit][watch]") {
  CHECK(judge(door, from_own_page()) == Pass::in);
  CHECK(with_host({"localhost:40123"}) == Pass::in);
  CHECK(with_host({"LocalHost:40123"}) == Pass::in); // RFC 9110, 4.2.3: hosts know no case
  CHECK(with_origin("http://127.0.0.1:40123") == Pass::in);
  CHECK(with_origin("http://localhost:40123") == Pass::in);
  CHECK(with_site("same-origin") == Pass::in);
  CHECK(with_site("none") == Pass::in); // typed, or opened by a program
}

TEST_CASE("a host that is not this machine's own, or of another port, is refused", "[unit][watch]") {
  for (const auto *host :
       {"example.net:40123", "127.0.0.1", "127.0.0.1:40124", "127.0.0.1:401230", "localhost",
        "127.0.0.1.example.net:40123", "localhost.:40123", "0.0.0.0:40123", "[::1]:40123", ""}) {
    CAPTURE(host);
    CHECK(with_host({host}) == Pass::forbidden);
  }
  CHECK(with_host({}) == Pass::forbidden);
  CHECK(with_host({"127.0.0.1:40123", "example.net"}) == Pass::forbidden);
  CHECK(judge({.port = 80, .token = door.token}, from_own_page()) == Pass::forbidden);
  Asked plain = from_own_page();
  plain.hosts = {"localhost"};
  CHECK(judge({.port = 80, .token = door.token}, plain) == Pass::in);
}

TEST_CASE("another origin or site is refused", "[unit][watch]") {
  for (const auto *origin :
       {"http://example.net", "null", "https://127.0.0.1:40123", "http://127.0.0.1:40124", "http://127.0.0.1",
        "http://127.0.0.1:40123.example.net", ""}) {
    CAPTURE(origin);
    CHECK(with_origin(origin) == Pass::forbidden);
  }
  CHECK(with_site("cross-site") == Pass::forbidden);
  CHECK(with_site("same-site") == Pass::forbidden); // another port of this machine
  CHECK(with_site("") == Pass::forbidden);
}

TEST_CASE("without the token there is nothing", "[unit][watch]") {
  const std::string shorter = door.token.substr(1), other = "f" + shorter;
  for (const std::string &path : {std::string("/"), std::string(), std::string("/news"), "/" + door.token,
                                  "/" + shorter + "/", "/" + other + "/", "/" + door.token + "0/",
                                  "//" + door.token + "/", "/x/../" + door.token + "/", door.token + "/"}) {
    CAPTURE(path);
    CHECK(with_path(path) == Pass::unknown);
  }
  CHECK(judge({.port = 40123, .token = ""}, {"GET", "//", {"127.0.0.1:40123"}, {}, {}}) == Pass::unknown);
}

TEST_CASE("nothing but GET is taken, and without the token not even said so", "[unit][watch]") {
  for (const auto *method : {"POST", "PUT", "DELETE", "HEAD", "OPTIONS", "get", "CONNECT"}) {
    CAPTURE(method);
    Asked asked = from_own_page();
    asked.method = method;
    CHECK(judge(door, asked) == Pass::not_allowed);
    asked.path = "/";
    CHECK(judge(door, asked) == Pass::unknown);
  }
}

TEST_CASE("an address leads behind its own door", "[unit][watch]") {
  CHECK(address(door) == "http://127.0.0.1:40123/0123456789abcdef0123456789abcdef/");
  CHECK(behind_token(door, "/" + door.token + "/1/news") == "1/news");
  CHECK(behind_token(door, "/" + door.token + "/") == "");
}

TEST_CASE("a token has 128 bits and is another each time", "[unit][watch]") {
  const std::string token = make_token();
  CHECK(token.size() == 32);
  CHECK(token.find_first_not_of("0123456789abcdef") == std::string::npos);
  CHECK(token != make_token());
}
