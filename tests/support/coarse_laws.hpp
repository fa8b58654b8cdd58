// The laws of solids that a few hundred jobs can afford: diffuser fields drilled as coarse as a job may ask
// for, so that a chamber has a dozen holes and not a hundred. assembly_laws.hpp looks closer, on fewer jobs
// as they come. Header only: nothing but tests of solids links the kernel.
#pragma once

#include "support/clearance_laws.hpp"
#include "support/random_job.hpp"

#include "purgewright/fixture/volumes.hpp"
#include "purgewright/solids/agreement.hpp"
#include "purgewright/solids/interference.hpp"
#include "purgewright/solids/kernel/measure.hpp"
#include "purgewright/solids/kernel/mesh.hpp"

#include <cmath>
#include <string>
#include <vector>

namespace purgewright::test {

// The next job of the stream that is buildable with its diffuser drilled that coarse.
inline RandomJob next_coarse(JobStream &jobs) {
  constexpr units::Length coarsest = units::millimetres(4.0); // greatest fixture.diffuser_hole
  for (;;) {
    RandomJob random = jobs.next();
    random.job.fixture.diffuser_hole = coarsest;
    random.layout = fixture::lay_out(random.job);
    if (random.layout.buildable()) {
      return random;
    }
  }
}

// Closed triangles whose volume is the solid's within what so coarse a mesh can tell.
inline void judge_mesh(const solids::Part &part, std::vector<std::string> &faults) {
  constexpr solids::kernel::MeshOptions coarse{.deflection = units::millimetres(0.1),
                                               .angle = units::degrees(15.0)};
  constexpr double share = 0.05;
  const auto mesh = solids::kernel::triangulate(part.solid, coarse);
  if (!solids::kernel::is_closed(mesh)) {
    faults.push_back(part.name + ": its triangles are not closed");
  }
  if (const double ratio = units::ratio(solids::kernel::volume(mesh), part.volume);
      !(std::abs(ratio - 1.0) < share)) {
    faults.push_back(part.name + ": its triangles hold another volume");
  }
}

// What is slow and does not depend much on the job may be looked at in turns.
struct Look {
  bool clearances = true, clashes_and_meshes = true;
};

inline std::vector<std::string> coarse_faults(const job::Job &job, const fixture::Layout &layout, Look look) {
  std::vector<std::string> faults;
  try {
    const auto assembly = solids::build_assembly(job, layout); // each solid checked as it is made
    solids::require_agreement(job, fixture::volumes(job, layout), assembly,
                              solids::measure_gas(job, layout, assembly));
    if (!look.clearances && !look.clashes_and_meshes) {
      return faults;
    }
    const auto standing = solids::stand(assembly);
    if (look.clearances) {
      judge_clearances(solids::measure_clearances(job, layout, standing), fixture::clearances(job, layout),
                       faults);
    }
    if (look.clashes_and_meshes) {
      for (const auto &clash : solids::find_clashes(standing)) {
        faults.push_back(clash.first + " and " + clash.second + " share metal");
      }
      for (const auto &part : assembly.parts) {
        if (part.made()) {
          judge_mesh(part, faults);
        }
      }
    }
  } catch (const solids::kernel::SolidError &error) {
    faults.push_back(std::string("kernel: ") + error.what());
  }
  return faults;
}

} // namespace purgewright::test
