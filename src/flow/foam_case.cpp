#include "foam_case.hpp"

#include "foam_text.hpp"

#include "purgewright/gas/bounds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <iterator>

namespace purgewright::flow {
namespace {

using gas::Species;
using gas::standard_atmosphere;
using gas::standard_gravity;

constexpr units::Temperature shop = gas::shop_temperature;
constexpr double first_step = 1e-5, longest_step = 0.01; // s
// Cells that the fastest stream crosses in a step; air is carried in a third of it. Found by trial.
constexpr double cold_courant = 2.0, hot_courant = 0.8;

std::string name_of(Species species) {
  return species == Species::helium ? "helium" : "argon";
}

// ---- fields
std::string field(std::string_view kind, std::string_view name, std::string_view dimensions,
                  std::string_view inside, const Problem &problem,
                  const std::function<std::string(const Boundary &)> &at) {
  std::string text =
      foam_header(kind, name, "0") + fmt::format("dimensions {};\ninternalField {};\n\n", dimensions, inside);
  text += "boundaryField\n{\n";
  for (const Boundary &boundary : problem.boundaries) {
    text += fmt::format("  {} {{ {} }}\n", boundary.patch,
                        boundary.bounds == Bounds::cut ? "type symmetryPlane;" : at(boundary));
  }
  return text + "}\n";
}

std::string of_cells(const std::vector<double> &values) {
  std::string lines;
  for (const double value : values) {
    fmt::format_to(std::back_inserter(lines), "{:.9g}\n", value);
  }
  return "nonuniform List<scalar>\n" + foam_list(values.size(), lines);
}

std::string velocity(const Problem &problem) {
  return field("volVectorField", "U", "[0 1 -1 0 0 0 0]", "uniform (0 0 0)", problem,
               [](const Boundary &boundary) -> std::string {
                 switch (boundary.bounds) {
                 case Bounds::inlet:
                   return fmt::format(
                       "type flowRateInletVelocity; volumetricFlowRate {:.9g}; value uniform (0 0 0);",
                       boundary.flow);
                 case Bounds::open:
                   return "type pressureInletOutletVelocity; value uniform (0 0 0);";
                 case Bounds::smooth_wall:
                   return "type slip;";
                 default:
                   return "type noSlip;";
                 }
               });
}

std::string moved_pressure(const Problem &problem) {
  const double outside = problem.hot ? standard_atmosphere.value() : 0.0;
  return field("volScalarField", "p_rgh", "[1 -1 -2 0 0 0 0]", fmt::format("uniform {:.9g}", outside),
               problem, [&](const Boundary &boundary) {
                 return boundary.bounds == Bounds::open
                            ? fmt::format("type fixedValue; value uniform {:.9g};", outside)
                            : fmt::format("type fixedFluxPressure; value uniform {:.9g};", outside);
               });
}

// Of an inlet whose air thins: halves as often as keeps it a table of twenty rows.
std::string fading(const Boundary &boundary) {
  constexpr int rows = 20;
  std::string table;
  double share = boundary.air;
  for (int row = 0; row < rows; ++row, share *= 0.5) {
    table += fmt::format("({:.6g} {:.6g}) ", row * boundary.air_halves_in, share);
  }
  return fmt::format("type uniformFixedValue; uniformValue table ( {}); value uniform {:.9g};", table,
                     boundary.air);
}

// `share`: what a share of air by volume is in the solved field.
std::string share_of_air(const Problem &problem, std::string_view name, const std::vector<double> &inside,
                         const std::function<double(double)> &share) {
  return field("volScalarField", name, "[0 0 0 0 0 0 0]", of_cells(inside), problem,
               [&](const Boundary &boundary) -> std::string {
                 if (boundary.bounds == Bounds::open) {
                   return fmt::format("type inletOutlet; inletValue uniform {0:.9g}; value uniform {0:.9g};",
                                      share(1.0));
                 }
                 if (boundary.bounds != Bounds::inlet) {
                   return "type zeroGradient;";
                 }
                 return boundary.air > 0.0 && boundary.air_halves_in > 0.0
                            ? fading(boundary)
                            : fmt::format("type fixedValue; value uniform {:.9g};", share(boundary.air));
               });
}

std::string temperature(const Problem &problem) {
  const double cool = shop.value();
  return field(
      "volScalarField", "T", "[0 0 0 1 0 0 0]", fmt::format("uniform {:.9g}", cool), problem,
      [&](const Boundary &boundary) {
        const double own = boundary.temperature > 0.0 ? boundary.temperature : cool;
        return boundary.bounds == Bounds::open
                   ? fmt::format("type inletOutlet; inletValue uniform {0:.9g}; value uniform {0:.9g};", cool)
                   : fmt::format("type fixedValue; value uniform {:.9g};", own);
      });
}

std::string pressure(const Problem &problem) {
  const std::string outside = fmt::format("uniform {:.9g}", standard_atmosphere.value());
  return field("volScalarField", "p", "[1 -1 -2 0 0 0 0]", outside, problem,
               [&](const Boundary &) { return "type calculated; value " + outside + ";"; });
}

void add_fields(const Problem &problem, std::vector<CaseFile> &files) {
  files.push_back({"0/U", velocity(problem)});
  files.push_back({"0/p_rgh", moved_pressure(problem)});
  const std::string name(air_field(problem.hot));
  if (!problem.hot) {
    const auto as_it_is = [](double air) { return air; };
    files.push_back({"0/" + name, share_of_air(problem, name, problem.air, as_it_is)});
    return;
  }
  const auto mass_share = [&](double air) {
    const double of_air = air * gas::molar_mass(Species::air);
    return of_air / (of_air + (1.0 - air) * gas::molar_mass(problem.gas));
  };
  std::vector<double> air(problem.air.size()), rest(problem.air.size());
  std::ranges::transform(problem.air, air.begin(), mass_share);
  std::ranges::transform(air, rest.begin(), [](double share) { return 1.0 - share; });
  files.push_back({"0/air", share_of_air(problem, "air", air, mass_share)});
  const std::string other = name_of(problem.gas);
  files.push_back({"0/" + other, share_of_air(problem, other, rest,
                                              [&](double share) { return 1.0 - mass_share(share); })});
  files.push_back({"0/T", temperature(problem)});
  files.push_back({"0/p", pressure(problem)});
}

// ---- properties
std::string phase(std::string_view name, Species species) {
  return fmt::format("{}\n{{\n  transportModel Newtonian;\n  nu {:.6g};\n  rho {:.6g};\n}}\n", name,
                     gas::kinematic_viscosity(species, shop).value(), gas::density(species, shop).value());
}

// Sutherland's law through the viscosities of the shop and of hot metal; heat capacity constant.
std::string gas_entry(std::string_view name, Species species) {
  constexpr units::Temperature warm = units::kelvins(800.0);
  const double t1 = shop.value(), t2 = warm.value();
  const double ratio = gas::viscosity(species, warm) / gas::viscosity(species, shop) * std::sqrt(t1 / t2);
  const double ts = (ratio - 1.0) / (1.0 / t1 - ratio / t2);
  const double as = gas::viscosity(species, shop).value() * (1.0 + ts / t1) / std::sqrt(t1);
  const double grams = 1e3 * gas::molar_mass(species);
  const double heat = gas::specific_heat(species) * gas::molar_mass(species) / gas::molar_gas_constant;
  const std::string polynomial = fmt::format("({:.6g} 0 0 0 0 0 0)", heat);
  return fmt::format("{}\n{{\n  specie {{ molWeight {:.6g}; }}\n"
                     "  thermodynamics\n  {{\n    Tlow 200;\n    Thigh 5000;\n    Tcommon 1000;\n"
                     "    highCpCoeffs {};\n    lowCpCoeffs {};\n  }}\n"
                     "  transport {{ As {:.6g}; Ts {:.6g}; }}\n}}\n",
                     name, grams, polynomial, polynomial, as, ts);
}

CaseFile dictionary(std::string_view folder, std::string_view name, std::string_view text) {
  return {fmt::format("{}/{}", folder, name), foam_header("dictionary", name, folder) + std::string(text)};
}

void add_properties(const Problem &problem, std::vector<CaseFile> &files) {
  const std::string other = name_of(problem.gas);
  files.push_back({"constant/g", foam_header("uniformDimensionedVectorField", "g", "constant") +
                                     fmt::format("dimensions [0 1 -2 0 0 0 0];\nvalue (0 0 {:.6g});\n",
                                                 -standard_gravity)});
  files.push_back(
      {"constant/hRef", foam_header("uniformDimensionedScalarField", "hRef", "constant") +
                            fmt::format("dimensions [0 1 0 0 0 0 0];\nvalue {:.9g};\n", problem.level)});
  files.push_back(dictionary("constant", "turbulenceProperties", "simulationType laminar;\n"));
  if (!problem.hot) {
    files.push_back(dictionary("constant", "transportProperties",
                               fmt::format("phases (air {});\n\n{}\n{}\nDab {:.6g};\nalphatab 1;\n", other,
                                           phase("air", Species::air), phase(other, problem.gas),
                                           gas::diffusivity(problem.gas, Species::air, shop).value())));
    return;
  }
  files.push_back(dictionary(
      "constant", "thermophysicalProperties",
      fmt::format("thermoType\n{{\n  type heRhoThermo;\n  mixture reactingMixture;\n  transport sutherland;\n"
                  "  thermo janaf;\n  energy sensibleEnthalpy;\n  equationOfState perfectGas;\n  specie "
                  "specie;\n}}\n\ninertSpecie {};\nchemistryReader foamChemistryReader;\n"
                  "foamChemistryFile \"<constant>/reactions\";\n"
                  "foamChemistryThermoFile \"<constant>/gases\";\n",
                  other)));
  files.push_back(
      dictionary("constant", "reactions", fmt::format("species (air {});\nreactions {{}}\n", other)));
  files.push_back(
      dictionary("constant", "gases", gas_entry("air", Species::air) + gas_entry(other, problem.gas)));
  files.push_back(dictionary("constant", "chemistryProperties",
                             "chemistryType { solver noChemistrySolver; method standard; }\n"
                             "chemistry off;\ninitialChemicalTimeStep 1;\n"));
  files.push_back(dictionary("constant", "combustionProperties", "combustionModel none;\n"));
}

// ---- settings
std::string control(const Problem &problem) {
  std::string places;
  for (const Probe &probe : problem.probes) {
    places += fmt::format("      ({:.9g} {:.9g} {:.9g}) // {}\n", probe.place.x, probe.place.y, probe.place.z,
                          probe.name);
  }
  const double courant = problem.hot ? hot_courant : cold_courant;
  return fmt::format(
      "application {};\nstartFrom latestTime;\nstartTime 0;\nstopAt endTime;\nendTime {:.9g};\n"
      "deltaT {:.6g};\nwriteControl adjustableRunTime;\nwriteInterval {:.9g};\npurgeWrite 2;\n"
      "writeFormat ascii;\nwritePrecision 9;\ntimeFormat general;\ntimePrecision 9;\nrunTimeModifiable yes;\n"
      "adjustTimeStep yes;\nmaxCo {:.6g};\nmaxAlphaCo {:.6g};\nmaxDeltaT {:.6g};\n\n"
      "functions\n{{\n  probes\n  {{\n    type probes;\n    libs (sampling);\n    fields ({});\n"
      "    writeControl adjustableRunTime;\n    writeInterval {:.9g};\n    probeLocations\n    (\n{}    );\n"
      "  }}\n}}\n",
      problem.hot ? hot_solver : cold_solver, problem.duration, first_step, problem.duration / field_times,
      courant, courant, longest_step, air_field(problem.hot), problem.duration / probe_times, places);
}

constexpr std::string_view schemes = R"foam(ddtSchemes { default Euler; }
gradSchemes { default Gauss linear; }
divSchemes
{
  default none;
  div(rhoPhi,U) Gauss linearUpwind grad(U);
  div(phi,U) Gauss linearUpwind grad(U);
  div(phi,alpha) Gauss vanLeer;
  div(phi,Yi_h) Gauss limitedLinear 1;
  div(phi,K) Gauss limitedLinear 1;
  div(((rho*nuEff)*dev2(T(grad(U))))) Gauss linear;
}
laplacianSchemes { default Gauss linear corrected; }
interpolationSchemes { default linear; }
snGradSchemes { default corrected; }
fluxRequired { default no; p_rgh; }
)foam";

// Air is solved to a part in a thousand millions: parts per million of oxygen come out of it.
constexpr std::string_view solution = R"foam(solvers
{
  "alpha.air.*"
  {
    nAlphaCorr 1;
    nAlphaSubCycles 3;
    MULESCorr no;
    nLimiterIter 3;
    solver smoothSolver;
    smoother symGaussSeidel;
    tolerance 1e-12;
    relTol 0;
  }
  p_rgh { solver GAMG; smoother DIC; tolerance 1e-7; relTol 0.05; }
  p_rghFinal { $p_rgh; relTol 0.005; }
  "rho.*" { solver diagonal; }
  "(U|h)" { solver smoothSolver; smoother symGaussSeidel; tolerance 1e-9; relTol 0.01; }
  "(U|h)Final" { $U; relTol 0.001; }
  "(Yi|air).*" { $U; tolerance 1e-12; relTol 0; }
}
PIMPLE
{
  momentumPredictor yes;
  nOuterCorrectors 1;
  nCorrectors 2;
  nNonOrthogonalCorrectors 0;
  pRefCell 0;
  pRefValue 0;
}
relaxationFactors { equations { ".*" 1; } }
)foam";

void add_mesh(const Mesh &mesh, std::vector<CaseFile> &files) {
  Mesh::Files written = mesh.files();
  const auto add = [&](std::string_view name, std::string &text) {
    files.push_back({fmt::format("constant/polyMesh/{}", name), std::move(text)});
  };
  add("points", written.points);
  add("faces", written.faces);
  add("owner", written.owner);
  add("neighbour", written.neighbour);
  add("boundary", written.boundary);
}

} // namespace

std::string_view air_field(bool hot) {
  return hot ? "air" : "alpha.air";
}

std::vector<CaseFile> foam_files(const Problem &problem) {
  std::vector<CaseFile> files;
  add_mesh(*problem.mesh, files);
  add_properties(problem, files);
  add_fields(problem, files);
  files.push_back(dictionary("system", "controlDict", control(problem)));
  files.push_back(dictionary("system", "fvSchemes", schemes));
  files.push_back(dictionary("system", "fvSolution", solution));
  return files;
}

} // namespace purgewright::flow
