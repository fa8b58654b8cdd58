// The pages on 127.0.0.1, to whom the door lets in: each page, news of it, and the files that it links to.
//
// Units, frame: none. Errors: ServerFault when the port is not to be had. Guarantee: listens on the loopback
// address alone, takes GET alone, answers nothing but the board and the files that `file` gives; ends within
// about a second. Source: RFC 9112, through cpp-httplib.
#pragma once

#include "watch/board.hpp"
#include "watch/door.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>

namespace purgewright::watch {

struct ServerFault : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// Page 0 lists the jobs, page N is the N-th one's; with one job page 0 leads to page 1.
struct Served {
  std::function<std::string(std::size_t page, const News &)> page; // the whole of it
  std::function<std::optional<std::string>(std::size_t page, std::string_view path)> file;
  std::string policy; // of the pages
};

class Server {
 public:
  // `port` 0: any that is free.
  Server(int port, Board &, Served);
  ~Server();
  Server(const Server &) = delete;
  Server &operator=(const Server &) = delete;

  const Door &door() const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

} // namespace purgewright::watch
