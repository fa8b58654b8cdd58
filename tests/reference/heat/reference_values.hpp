// Reads one entry of the heat library's reference values: source, tolerance and values stand beside each
// other in YAML.
#pragma once

#include "support/paths.hpp"
#include <catch2/catch.hpp>
#include <yaml-cpp/yaml.h>

#include <string>

namespace purgewright::heat::reference {

struct Entry {
  YAML::Node node;
  double tolerance() const { return node["tolerance"].as<double>(); }
  double number(const char *key) const { return node["given"][key].as<double>(); }
  YAML::Node values() const { return node["values"]; }
  Approx near(double value) const { return Approx(value).epsilon(tolerance()).margin(0.0).scale(0.0); }
};

// A missing entry fails the test rather than passing an empty loop.
inline Entry entry(const std::string &id) {
  const YAML::Node node =
      YAML::LoadFile(purgewright::test::project_file("tests/reference/heat/heat.yaml"))["entries"][id];
  REQUIRE(node.IsDefined());
  REQUIRE_FALSE(node["source"].as<std::string>().empty());
  REQUIRE(node["values"].size() > 0);
  return {node};
}

} // namespace purgewright::heat::reference
