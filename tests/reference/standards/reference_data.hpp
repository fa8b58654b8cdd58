// Expected values of the standards' tables, read from the YAML files beside the tests.
#pragma once

#include "support/paths.hpp"
#include <catch2/catch.hpp>
#include <yaml-cpp/yaml.h>

#include <stdexcept>
#include <string>

namespace standards_reference {

struct Expected {
  double tolerance;
  YAML::Node values;
};

// One entry of a file; throws when the file, the entry, its provenance or its values are missing, so that no
// test passes by comparing nothing.
inline Expected expected(const std::string &file, const std::string &id) {
  const YAML::Node root =
      YAML::LoadFile(purgewright::test::project_file("tests/reference/standards/") + file);
  for (const YAML::Node &entry : root["entries"]) {
    if (entry["id"].as<std::string>() != id)
      continue;
    for (const char *key : {"source", "edition", "page", "basis", "unit"})
      if (!entry[key])
        throw std::runtime_error(file + ": " + id + " lacks " + key);
    if (entry["values"].size() == 0)
      throw std::runtime_error(file + ": " + id + " has no values");
    return {entry["tolerance"].as<double>(), entry["values"]};
  }
  throw std::runtime_error(file + " has no entry " + id);
}

inline double number(const YAML::Node &row, const char *key) {
  return row[key].as<double>();
}

inline double at(const YAML::Node &row, const char *key, std::size_t i) {
  return row[key][i].as<double>();
}

inline std::string text(const YAML::Node &row, const char *key) {
  return row[key].as<std::string>();
}

// Approximation with an absolute tolerance only.
inline Approx near(double value, double tolerance) {
  return Approx(value).epsilon(0.0).margin(tolerance);
}

// Approximation with a relative tolerance only.
inline Approx about(double value, double fraction) {
  return Approx(value).epsilon(fraction).margin(0.0);
}

} // namespace standards_reference
