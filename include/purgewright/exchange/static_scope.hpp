// Sets the kernel's process-wide exchange settings for a scope.
//
// Units: none. Frame: none.
// Range and errors: std::invalid_argument when a setting is unknown or refuses the value; settings already
// changed are put back first.
// Guarantee: every changed setting has its former value when the scope ends, also by an exception.
// Source: OpenCASCADE 7.6.3: the settings are read when a writer is constructed, so construct it inside.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace purgewright::exchange {

class StaticScope {
 public:
  using Settings = std::vector<std::pair<std::string, std::string>>; // name, value

  explicit StaticScope(Settings const &settings);
  ~StaticScope();
  StaticScope(StaticScope const &) = delete;
  StaticScope &operator=(StaticScope const &) = delete;

 private:
  void restore() noexcept;

  Settings former_;
};

// The setting's present value.
std::string static_value(std::string const &name);

} // namespace purgewright::exchange
