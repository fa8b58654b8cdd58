// What the solids of any buildable design must satisfy, judged with the geometry kernel's own tools rather
// than by the wrapper that built them. Header only: nothing but tests of solids links the kernel.
#pragma once

#include "support/clearance_laws.hpp"

#include "purgewright/fixture/parts_list.hpp"
#include "purgewright/fixture/volumes.hpp"
#include "purgewright/solids/interference.hpp"
#include "purgewright/solids/kernel/measure.hpp"
#include "purgewright/solids/kernel/placed.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"
#include "purgewright/solids/parts.hpp"

#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRep_Tool.hxx>
#include <GProp_GProps.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Shell.hxx>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <vector>

namespace purgewright::test {

// Gas and metal: what the project promises between closed forms and solids.
inline constexpr double promised_agreement = 1e-6; // relative
// A symmetric part's centroid strays from its plane by no more than the kernel's confusion distance times a
// hundred.
inline constexpr double symmetric = 1e-5; // mm

// Volume by integration over faces, adaptive to this relative error.
inline double kernel_volume_mm3(const TopoDS_Shape &shape) {
  constexpr double integration_error = 1e-10;
  GProp_GProps properties;
  BRepGProp::VolumeProperties(shape, properties, integration_error);
  return properties.Mass();
}

inline int count(const TopoDS_Shape &shape, TopAbs_ShapeEnum kind) {
  int number = 0;
  for (TopExp_Explorer at(shape, kind); at.More(); at.Next()) {
    ++number;
  }
  return number;
}

inline std::string solid_fault(const solids::Part &part) {
  const TopoDS_Shape &shape = part.solid.shape();
  if (!BRepCheck_Analyzer(shape).IsValid()) {
    return part.name + ": the boundary is not valid";
  }
  if (count(shape, TopAbs_SOLID) != 1 || count(shape, TopAbs_SHELL) != 1) {
    return fmt::format("{}: {} solids, {} shells", part.name, count(shape, TopAbs_SOLID),
                       count(shape, TopAbs_SHELL));
  }
  if (!BRep_Tool::IsClosed(TopoDS::Shell(TopExp_Explorer(shape, TopAbs_SHELL).Current()))) {
    return part.name + ": the shell is open";
  }
  return kernel_volume_mm3(shape) > 0.0 ? "" : part.name + ": turned inside out";
}

// Volume of tube and cap by formulas, of made parts from the layout's closed form, mm3.
inline std::map<std::string, double> expected_volumes(const job::Job &job, const fixture::Layout &layout) {
  const auto v = fixture::volumes(job, layout);
  const auto &tube = job.tube;
  const auto outer = 0.5 * tube.outside_diameter, inner = 0.5 * tube.inside_diameter;
  const auto vent = 0.5 * tube.vent.diameter;
  // Half of the crossing with the outside less half of that with the bore.
  const auto hole =
      tube.vent.count == 0
          ? units::Volume{}
          : 0.5 * (fixture::crossing_cylinders(vent, outer) - fixture::crossing_cylinders(vent, inner));
  const auto metal = fixture::cylinder(outer, tube.length) - fixture::cylinder(inner, tube.length) -
                     double(tube.vent.count) * hole;
  std::map<std::string, double> expected;
  for (const auto &part : fixture::part_metals(job, layout, v)) {
    if (part.volume > units::Volume{}) { // zero: the design does without
      expected[std::string(part.name)] = part.volume.value() * 1e9;
    }
  }
  expected["tube"] = metal.value() * 1e9;
  expected["cap"] = fixture::cap_metal(job.cap).value() * 1e9;
  return expected;
}

inline void judge_parts(const job::Job &job, const fixture::Layout &layout, const solids::Assembly &assembly,
                        std::vector<std::string> &faults) {
  const auto expected = expected_volumes(job, layout);
  const auto listed = fixture::parts_list(job, layout, fixture::volumes(job, layout));
  for (const auto &part : assembly.parts) {
    const auto *item = fixture::find_item(listed, part.name);
    const int pieces = static_cast<int>(part.more_places.size()) + 1;
    if (item == nullptr || item->quantity != pieces) {
      faults.push_back(fmt::format("{}: {} in the assembly, {} in the parts list", part.name, pieces,
                                   item == nullptr ? 0 : item->quantity));
    }
  }
  for (const auto &[name, volume] : expected) {
    if (std::ranges::count(assembly.parts, name, &solids::Part::name) == 0) {
      faults.push_back(name + ": missing in the assembly");
    }
  }
  for (const auto &part : assembly.parts) {
    if (auto fault = solid_fault(part); !fault.empty()) {
      faults.push_back(std::move(fault));
    }
    if (part.kind == solids::PartKind::bought) {
      continue; // shown, not made
    }
    const auto at = expected.find(part.name);
    if (at == expected.end()) {
      faults.push_back(part.name + ": no such part is expected");
      continue;
    }
    const double volume = kernel_volume_mm3(part.solid.shape());
    if (!(std::abs(volume - at->second) <= promised_agreement * at->second)) {
      faults.push_back(
          fmt::format("{}: solid {:.9g} mm3, closed form {:.9g} mm3", part.name, volume, at->second));
    }
    // Vents are wherever they are; the base plate reaches out to the gas-port block at one side, the end
    // plate has its meter's port there.
    const bool one_sided = part.name == "tube" || part.name == "base-plate" || part.name == "index-collar" ||
                           part.name == "chamber-end-plate";
    if (const double y = units::to_millimetres(solids::kernel::centroid(part.solid).y);
        !one_sided && !(std::abs(y) <= symmetric)) {
      faults.push_back(fmt::format("{}: centroid {:.3g} mm off the plane of symmetry", part.name, y));
    }
  }
}

inline void judge_gas(const job::Job &job, const fixture::Layout &layout, const solids::Assembly &assembly,
                      std::vector<std::string> &faults) {
  const auto closed = fixture::volumes(job, layout);
  const auto solid = solids::measure_gas(job, layout, assembly);
  const auto compare = [&](const char *name, units::Volume a, units::Volume b) {
    if (!(std::abs((a - b).value()) <= promised_agreement * b.value())) {
      faults.push_back(
          fmt::format("{} gas: solids {:.9g} m3, closed form {:.9g} m3", name, a.value(), b.value()));
    }
  };
  compare("chamber", solid.chamber, closed.chamber_gas);
  compare("bore", solid.bore, closed.bore_gas);
}

// No two parts share metal where they stand.
inline void judge_interference(const std::vector<solids::Standing> &standing,
                               std::vector<std::string> &faults) {
  for (const auto &clash : solids::find_clashes(standing)) {
    faults.push_back(
        fmt::format("{} and {} share {:.6g} mm3", clash.first, clash.second, clash.shared.value() * 1e9));
  }
}

// All of the above; a kernel fault counts as one.
inline std::vector<std::string> assembly_faults(const job::Job &job, const fixture::Layout &layout) {
  std::vector<std::string> faults;
  try {
    const auto assembly = solids::build_assembly(job, layout);
    judge_parts(job, layout, assembly, faults);
    judge_gas(job, layout, assembly, faults);
    const auto standing = solids::stand(assembly);
    judge_clearances(solids::measure_clearances(job, layout, standing), fixture::clearances(job, layout),
                     faults);
    judge_interference(standing, faults);
  } catch (const solids::kernel::SolidError &error) {
    faults.push_back(std::string("kernel: ") + error.what());
  }
  return faults;
}

} // namespace purgewright::test
