#include "watch/server.hpp"

#include <fmt/format.h>
#include <httplib.h>
#include <nlohmann/json.hpp>

#include <charconv>
#include <fcntl.h>
#include <filesystem>
#include <sys/socket.h>
#include <thread>
#include <utility>
#include <vector>

namespace purgewright::watch {
namespace {

constexpr const char *loopback = "127.0.0.1";
constexpr std::chrono::milliseconds longest_wait{10'000}; // for news, then the page asks again
constexpr std::size_t most_connections = 32;              // at once: a page under watch keeps one
constexpr std::size_t most_bytes_sent_here = 1024;        // with a request; a page sends none
constexpr time_t patience = 1;                            // s, for a request on an open connection
constexpr int see_other = 303, not_found = 404;

const httplib::Headers every_answer{{"Cache-Control", "no-store"},
                                    {"X-Content-Type-Options", "nosniff"},
                                    {"X-Frame-Options", "DENY"},
                                    {"Referrer-Policy", "no-referrer"},
                                    {"Cross-Origin-Opener-Policy", "same-origin"},
                                    {"Cross-Origin-Resource-Policy", "same-origin"}};

// A sheet as a page of its own may do nothing but be drawn.
constexpr const char *file_policy =
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; frame-ancestors 'none'";

std::vector<std::string> values(const httplib::Request &request, const char *name) {
  const auto [begin, end] = request.headers.equal_range(name);
  std::vector<std::string> found;
  for (auto at = begin; at != end; ++at) {
    found.push_back(at->second);
  }
  return found;
}

std::optional<std::uint64_t> number(std::string_view text) {
  std::uint64_t value = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  return read.ec == std::errc() && read.ptr == text.data() + text.size() ? std::optional(value)
                                                                         : std::nullopt;
}

// "1/news" is the first job's "news"; without a number it is the list's.
struct Place {
  std::size_t page = 0;
  std::string_view rest;
};

Place place_of(std::string_view path) {
  const auto slash = path.find('/');
  const auto page = slash == std::string_view::npos ? std::nullopt : number(path.substr(0, slash));
  return page ? Place{static_cast<std::size_t>(*page), path.substr(slash + 1)} : Place{0, path};
}

const char *type_of(std::string_view path) {
  const std::string ending = std::filesystem::path(path).extension().string();
  return ending == ".pdf"    ? "application/pdf"
         : ending == ".svg"  ? "image/svg+xml"
         : ending == ".json" ? "application/json"
                             : "application/octet-stream";
}

// The library's own lets several programs share a port, and hands the socket on to what is started.
void alone_and_not_inherited(int socket) {
  constexpr int yes = 1;
  ::setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
  ::fcntl(socket, F_SETFD, FD_CLOEXEC);
}

} // namespace

struct Server::Inside {
  Board &board;
  Served served;
  Door door{};
  httplib::Server http{};
  std::thread listening{};

  void answer(const httplib::Request &request, httplib::Response &response) const {
    const Place place = place_of(behind_token(door, request.path));
    const bool known = place.page < board.pages();
    if (known && place.rest.empty()) {
      answer_page(place.page, response);
    } else if (known && place.rest == "news") {
      answer_news(place.page, request, response);
    } else if (const auto bytes = known ? served.file(place.page, place.rest) : std::nullopt) {
      if (place.rest.ends_with(".svg")) { // a browser's reader of PDF needs more than this
        response.set_header("Content-Security-Policy", file_policy);
      }
      response.set_content(*bytes, type_of(place.rest));
    } else {
      refuse(response, not_found);
    }
  }

  void answer_page(std::size_t page, httplib::Response &response) const {
    constexpr std::size_t pages_of_one_job = 2;
    if (page == 0 && board.pages() == pages_of_one_job) {
      response.set_redirect("1/", see_other);
      return;
    }
    response.set_header("Content-Security-Policy", served.policy + "; frame-ancestors 'none'");
    response.set_content(served.page(page, board.since(page, 0)), "text/html; charset=utf-8");
  }

  void answer_news(std::size_t page, const httplib::Request &request, httplib::Response &response) const {
    const auto after = number(request.get_param_value("after"));
    if (!after) {
      refuse(response, not_found);
      return;
    }
    const News news = board.wait(page, *after, longest_wait);
    response.set_content(nlohmann::json{{"version", news.version}, {"parts", news.parts}}.dump(
                             -1, ' ', false, nlohmann::json::error_handler_t::replace),
                         "application/json");
  }

  static void refuse(httplib::Response &response, int status) {
    response.status = status;
    if (status == static_cast<int>(Pass::not_allowed)) {
      response.set_header("Allow", "GET");
    }
    response.set_content(fmt::format("{}\n", status), "text/plain");
  }

  // Before any of a request's content is read.
  httplib::Server::HandlerResponse at_the_door(const httplib::Request &request,
                                               httplib::Response &response) const {
    const Pass pass = judge(door, {.method = request.method,
                                   .path = request.path,
                                   .hosts = values(request, "Host"),
                                   .origins = values(request, "Origin"),
                                   .sites = values(request, "Sec-Fetch-Site")});
    if (pass == Pass::in) {
      return httplib::Server::HandlerResponse::Unhandled;
    }
    refuse(response, static_cast<int>(pass));
    return httplib::Server::HandlerResponse::Handled;
  }

  void listen(int port) {
    http.new_task_queue = [] { return new httplib::ThreadPool(most_connections); };
    http.set_socket_options(alone_and_not_inherited);
    http.set_default_headers(every_answer);
    http.set_keep_alive_max_count(1); // else the end waits for connections that nobody closes
    http.set_keep_alive_timeout(patience);
    http.set_read_timeout(patience);
    http.set_payload_max_length(most_bytes_sent_here);
    http.set_pre_routing_handler(
        [this](const auto &request, auto &response) { return at_the_door(request, response); });
    http.Get(".*", [this](const auto &request, auto &response) { answer(request, response); });
    if (port == 0) {
      door.port = http.bind_to_any_port(loopback);
    } else {
      door.port = http.bind_to_port(loopback, port) ? port : -1;
    }
    if (door.port <= 0) {
      throw ServerFault(fmt::format("port {} of {} is not free", port, loopback));
    }
    door.token = make_token();
    listening = std::thread([this] { http.listen_after_bind(); });
    while (!http.is_running()) { // a stop before it runs would be lost
      std::this_thread::yield();
    }
  }
};

Server::Server(int port, Board &board, Served served) : inside_(new Inside{board, std::move(served)}) {
  inside_->listen(port);
}

Server::~Server() {
  inside_->board.close();
  inside_->http.stop();
  inside_->listening.join();
}

const Door &Server::door() const {
  return inside_->door;
}

} // namespace purgewright::watch
