// Parts, a temporary folder and captured stdout for tests of readers and writers.
//
// Units: millimetres. Frame: the parts' own.
// Range and errors: none. Guarantee: the folder is removed at the end of the scope.
// Source: none.
#pragma once

#include "../solids/kernel/kernel_test.hpp"
#include "purgewright/exchange/part.hpp"
#include "purgewright/exchange/step.hpp"
#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/cutters.hpp"
#include "purgewright/solids/kernel/primitives.hpp"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

namespace purgewright::test {

class TemporaryFolder {
 public:
  TemporaryFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "purgewright-test-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr)
      throw std::runtime_error("no temporary folder can be made");
    path_ = name;
  }
  ~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  TemporaryFolder(TemporaryFolder const &) = delete;
  TemporaryFolder &operator=(TemporaryFolder const &) = delete;

  std::filesystem::path operator/(std::string const &name) const { return path_ / name; }

 private:
  std::filesystem::path path_;
};

inline std::string contents(std::filesystem::path const &path) {
  std::ifstream stream(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

// The text of a STEP file with the writer's line breaks taken out, so that strings can be searched for.
inline std::string unbroken(std::string const &text) {
  std::string result;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (text[i] == '\n')
      while (i + 1 < text.size() && text[i + 1] == ' ')
        ++i;
    else
      result += text[i];
  return result;
}

// Straight and round faces, a crossing of cylinders and a drill point.
inline solids::kernel::Solid drilled_block() {
  using namespace solids::kernel;
  return cut(box(point(-20, -10, -10), point(20, 10, 10)),
             {through_cutter({.origin = point(-20, 0, 0), .axis = along_x}, length(12.0), length(40.0)),
              through_cutter({.origin = point(3, -10, 1), .axis = along_y}, length(3.0), length(20.0)),
              drill_cutter({.origin = point(-10, 0, 10), .axis = against_z}, length(2.5), length(6.0))});
}

inline exchange::Part block_part() {
  return {.name = "chamber-body",
          .description = "milled; thread, inlet: G 1/8",
          .properties = {{"thread, inlet", "G 1/8, 8.8 drill"}, {"thread, end plate", "M3 \xC3\x97 0.5"}},
          .solid = drilled_block()};
}

inline exchange::Part pin_part() {
  using namespace solids::kernel;
  return {.name = "backing-pin", .solid = cylinder({.axis = along_x}, length(3.0), length(10.0))};
}

inline exchange::Assembly small_assembly() {
  using namespace solids::kernel;
  exchange::Part const pin = pin_part();
  exchange::Colour const steel{0.5, 0.6, 0.7};
  return {.name = "fixture",
          .description = "all parts in place",
          .items = {{block_part(), {0.25, 0.5, 0.125}, {}},
                    {pin, steel, {point(30, 0, 0), along_z, units::Angle{}}},
                    {pin, steel, {point(40, 5, 6), along_z, units::degrees(90.0)}}}};
}

inline exchange::StepHeader header() {
  return {.time_stamp = "2026-01-31T00:00:00",
          .author = "A. Turner",
          .organization = "Tool room",
          .originating_system = "purgewright 0.1.0",
          .authorisation = "none"};
}

} // namespace purgewright::test
