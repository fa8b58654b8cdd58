// Catch2 version 3 under the name of version 2's one header, for the names that the tests use: Debian 12 has
// version 2 alone, Debian 13 version 3.
#pragma once

#include <catch2/catch_all.hpp>

#include <string>

using Catch::Approx;

namespace Catch {
using Matchers::EndsWith;
using Matchers::StartsWith;
inline Matchers::StringContainsMatcher Contains(const std::string &part) {
  return Matchers::ContainsSubstring(part);
}
} // namespace Catch
