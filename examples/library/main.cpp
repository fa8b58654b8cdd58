// A fixture designed from a program of one's own: job text to findings, two numbers out of them.
#include "purgewright/report/results.hpp"

#include <cstdio>

using namespace purgewright;

constexpr const char *text = R"yaml(
job:  {name: logger-25}
tube:
  material: titanium-grade-2
  outside_diameter: 25.4 mm
  outside_diameter_tolerance: 0.03 mm
  wall: 0.9 mm
  wall_tolerance: 0.02 mm
  length: 160 mm
  vent: {diameter: 3 mm, from_joint: 11 mm}
cap:  {shape: flat, diameter: 25.4 mm, thickness: 1.2 mm}
)yaml";

int main() {
  const auto reading = job::read_draft_text(text, "job");
  const auto resolution = job::resolve(reading.draft);
  for (const auto *problems : {&reading.problems, &resolution.problems}) {
    for (const auto &problem : *problems) {
      std::fprintf(stderr, "%s\n", job::to_text(problem).c_str());
    }
  }
  if (job::has_errors(reading.problems) || !resolution.job) {
    return 2;
  }
  const auto findings = report::find(checks::evaluate(*resolution.job));
  for (const auto *id : {"purge.wait", "volume.chamber_gas"}) {
    if (const auto *figure = units::find(findings.figures, id)) {
      std::printf("%s %.9g\n", id, figure->value); // SI: s, m3
    }
  }
  return checks::worst(findings.rules) == checks::Status::fail ? 1 : 0;
}
