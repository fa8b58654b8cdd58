#include "signals.hpp"

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <pthread.h>
#include <sys/signalfd.h>
#include <system_error>
#include <unistd.h>

namespace purgewright::cli {
namespace {

constexpr std::array ending_signals{SIGINT, SIGTERM, SIGHUP};

// A signal that is switched off would still reach a descriptor.
sigset_t ending_set() {
  sigset_t set;
  ::sigemptyset(&set);
  for (const int signal : ending_signals) {
    struct sigaction now {};
    if (::sigaction(signal, nullptr, &now) == 0 && now.sa_handler != SIG_IGN) {
      ::sigaddset(&set, signal);
    }
  }
  return set;
}

} // namespace

Signals::Signals() {
  const sigset_t held = ending_set();
  descriptor_ = ::signalfd(-1, &held, SFD_CLOEXEC | SFD_NONBLOCK);
  if (descriptor_ < 0) {
    throw std::system_error(errno, std::generic_category(), "signalfd");
  }
  ::pthread_sigmask(SIG_BLOCK, &held, &before_);
}

Signals::~Signals() {
  ::close(descriptor_);
  ::pthread_sigmask(SIG_SETMASK, &before_, nullptr); // one that came late ends the program here
}

void Signals::check() {
  signalfd_siginfo info{};
  if (::read(descriptor_, &info, sizeof info) == static_cast<ssize_t>(sizeof info)) {
    throw Interrupted{static_cast<int>(info.ssi_signo)};
  }
}

void finish(const Interrupted &interrupted) {
  ::signal(interrupted.signal, SIG_DFL);
  ::raise(interrupted.signal);
  constexpr int signalled = 128; // as shells report it, should the signal not end the program
  std::_Exit(signalled + interrupted.signal);
}

} // namespace purgewright::cli
