// Where the project's own files lie while its tests run. One source file knows the folders, so that no other
// changes with the place of the checkout.
#pragma once

#include <string>
#include <vector>

namespace purgewright::test {

// Absolute path of a file of the project, such as "examples/logger-25.yaml"; the project's folder for "".
std::string project_file(const std::string &relative);

inline std::string example_job(const std::string &name) {
  return project_file("examples/" + name + ".yaml");
}

// Every job in examples/ by name, in alphabetical order: a further one is walked as well.
std::vector<std::string> example_names();

} // namespace purgewright::test
