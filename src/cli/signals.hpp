// Signals that ask the program to end, held back while there is something to tidy up.
//
// Units, frame: none. Errors: std::system_error when the system gives no descriptor.
// Guarantee: while a Signals lives, SIGINT, SIGTERM and SIGHUP end nothing but are seen by came() and end
// poll() on descriptor(); one that the caller has switched off (nohup) stays off. Interrupted, thrown where a
// step ends, unwinds everything; finish() then lets the signal end the program as if it had not been held.
// Source: POSIX.1-2017, signalfd(2).
#pragma once

#include <functional>
#include <sys/select.h> // sigset_t; <signal.h> brings a macro si_value

namespace purgewright::cli {

struct Interrupted {
  int signal;
};

// What ends the wait for another program early.
struct Halt {
  int descriptor;              // readable once it is time to end
  sigset_t mask;               // of signals, that the other program is to have
  std::function<void()> check; // throws once it is time to end
};

class Signals {
 public:
  Signals();
  ~Signals();
  Signals(const Signals &) = delete;
  Signals &operator=(const Signals &) = delete;

  int descriptor() const { return descriptor_; }
  const sigset_t &before() const { return before_; } // the mask that a child is to have

  // Throws Interrupted when a signal has come.
  void check();

  Halt halt() {
    return {descriptor_, before_, [this] { check(); }};
  }

 private:
  sigset_t before_{};
  int descriptor_ = -1;
};

// Ends the program by the signal.
[[noreturn]] void finish(const Interrupted &);

} // namespace purgewright::cli
