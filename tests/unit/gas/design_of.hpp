// A design's purge from a job, as the checks make it, for tests of the plan.
#pragma once

#include "purgewright/fixture/figures.hpp"
#include "purgewright/fixture/volumes.hpp"
#include "purgewright/gas/figures.hpp"
#include "purgewright/gas/purge.hpp"
#include "support/paths.hpp"

#include "purgewright/units/ids.hpp"

#include "gas/plan/scene.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <utility>

namespace purgewright::gas::test {

inline constexpr units::Time under_gas = units::seconds(600.0); // arcs and holds of a part

struct PurgeDesign {
  job::Job job;
  fixture::Layout layout;
  fixture::Volumes volumes;
  fixture::Areas areas;
  Bounds bounds;

  explicit PurgeDesign(job::Job from) : job(std::move(from)), layout(fixture::lay_out(job)) {
    REQUIRE(layout.buildable());
    volumes = fixture::volumes(job, layout);
    areas = fixture::areas(job, layout);
    bounds = bound_prepurge(job, layout, volumes, areas);
  }
  plan::Subject subject() const { return {job, layout, volumes, areas}; }
  Purge purge(const MeasuredMixing &mixing = {}) const {
    Purge purge = plan_purge(job, layout, volumes, areas, bounds, mixing);
    add_use(job, under_gas, purge);
    return purge;
  }
  plan::Scene prepurge_scene() const {
    return plan::build_scene(subject(),
                             {.bore = bounds.bore.flow, .chamber = bounds.chamber.flow, .covered = true});
  }
  units::Figures figures() const {
    units::Figures all = job::figures(job);
    all.push_back({std::string(ids::heat_cycle),
                   under_gas.value(),
                   units::Dimension::time,
                   "Arcs and holds",
                   "",
                   {},
                   "the plan of heat gives it"});
    for (auto &&more : {fixture::figures(job, layout, volumes, areas), gas::figures(job, bounds, purge())}) {
      all.insert(all.end(), more.begin(), more.end());
    }
    return all;
  }
};

inline job::Job example_job(const std::string &name) {
  auto read = job::read_job(purgewright::test::example_job(name));
  REQUIRE(read.job);
  return std::move(*read.job);
}

inline PurgeDesign example(const std::string &name) {
  return PurgeDesign(example_job(name));
}

// The scene's passage of this cause; there must be one.
inline const Edge &edge_of(const plan::Scene &scene, Cause cause) {
  const auto place = std::ranges::find(scene.edge_causes, cause);
  REQUIRE(place != scene.edge_causes.end());
  return scene.network.edges[std::size_t(place - scene.edge_causes.begin())];
}

} // namespace purgewright::gas::test
