// Who may ask the page's server for something: a browser of this machine that knows the address.
//
// Any page that the user has open elsewhere may send requests to a port of this machine, also under a name of
// its own that resolves to it. So the host that is asked for must be this machine's own, an origin that is
// named must be this page's, and the path begins with a token that nobody can guess.
//
// Units, frame: none. Errors: std::system_error from make_token(). Guarantee: pure but for make_token(); in
// doubt it is refused. Source: RFC 9110 (Host, methods, status codes), RFC 6454 (Origin), the standard Fetch
// Metadata (Sec-Fetch-Site); getrandom(2).
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace purgewright::watch {

struct Door {
  int port;
  std::string token;
};

// What of a request is judged; every value of a header that it carries.
struct Asked {
  std::string method, path;
  std::vector<std::string> hosts, origins, sites; // Host, Origin, Sec-Fetch-Site
};

enum class Pass : int { in = 200, forbidden = 403, unknown = 404, not_allowed = 405 };

Pass judge(const Door &, const Asked &);

// What of the path lies behind the token: "1/news" of "/TOKEN/1/news".
std::string_view behind_token(const Door &, std::string_view path);

std::string address(const Door &);

// 128 bits of the kernel's random source, in hexadecimal.
std::string make_token();

} // namespace purgewright::watch
