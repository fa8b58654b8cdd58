// Reads one entry of the gas library's reference values: source, tolerance and values stand beside each other
// in YAML.
#pragma once

#include "support/paths.hpp"
#include <catch2/catch.hpp>
#include <yaml-cpp/yaml.h>

#include <string>

namespace purgewright::gas::reference {

struct Entry {
  YAML::Node node;
  double tolerance() const { return node["tolerance"].as<double>(); }
  YAML::Node values() const { return node["values"]; }
  Approx near(double value) const { return Approx(value).epsilon(tolerance()).margin(0.0).scale(0.0); }
};

// A missing entry fails the test rather than passing an empty loop.
inline Entry entry(const std::string &file, const std::string &id) {
  const YAML::Node node =
      YAML::LoadFile(purgewright::test::project_file("tests/reference/gas/") + file + ".yaml")["entries"][id];
  REQUIRE(node.IsDefined());
  REQUIRE_FALSE(node["source"].as<std::string>().empty());
  REQUIRE(node["values"].size() > 0);
  return {node};
}

} // namespace purgewright::gas::reference
