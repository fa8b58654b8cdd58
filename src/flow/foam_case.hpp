// Fields, properties and settings of a case of two gases on a mesh, as files of OpenFOAM 1912. Private to the
// flow floor; tests solve cases with known answers by it.
//
// Units: SI, bare numbers; flows are those of the mesh. Frame: the mesh's, Z up.
// Errors: none. Guarantee: same problem, same bytes.
#pragma once

#include "purgewright/flow/case.hpp"
#include "purgewright/flow/mesh.hpp"
#include "purgewright/gas/properties.hpp"

#include "gas_space.hpp"

#include <string>
#include <vector>

namespace purgewright::flow {

enum class Bounds {
  still_wall,  // no slip
  smooth_wall, // slip
  inlet,       // a given flow of purge gas
  open,        // to air at rest
  cut          // plane of symmetry
};

struct Boundary {
  std::string patch;
  Bounds bounds = Bounds::still_wall;
  double flow = 0.0; // of an inlet, m3/s
  double air = 0.0,
         air_halves_in = 0.0; // of an inlet: share of air, and the time in which it halves; 0: never
  double temperature = 0.0;   // K; 0: as the shop
};

struct Problem {
  const Mesh *mesh = nullptr;
  std::vector<double> air; // by cell, at the start
  std::vector<Boundary> boundaries;
  std::vector<Probe> probes;
  gas::Species gas = gas::Species::argon;
  bool hot = false;
  double duration = 0.0; // s
  double level = 0.0;    // z
};

inline constexpr int probe_times = 400, field_times = 10; // of a run; fields are what a run goes on from

std::vector<CaseFile> foam_files(const Problem &);

// Name of the solved field and what it is: cold a volume fraction, hot a mass fraction.
std::string_view air_field(bool hot);

} // namespace purgewright::flow
