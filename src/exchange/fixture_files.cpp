#include "purgewright/exchange/fixture_files.hpp"

#include "purgewright/exchange/glb.hpp"
#include "purgewright/exchange/stl.hpp"
#include "purgewright/files/file.hpp"
#include "purgewright/fixture/face_tolerances.hpp"
#include "purgewright/fixture/figures.hpp"
#include "purgewright/fixture/part_faces.hpp"
#include "purgewright/solids/agreement.hpp"
#include "purgewright/solids/clearances.hpp"
#include "purgewright/solids/parts.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace purgewright::exchange {
namespace {

// Viewing needs fewer triangles than machining, and meshing is a good part of a design's time.
constexpr GlbOptions viewing{.deflection = units::millimetres(0.1), .angle = units::degrees(15.0)};

Colour colour_of(const solids::Part &part) {
  constexpr Colour metal{0.72, 0.75, 0.78}, plug{0.80, 0.62, 0.30}, steel{0.45, 0.47, 0.50},
      bench{0.35, 0.42, 0.50}, brass{0.78, 0.66, 0.35}, titanium{0.60, 0.56, 0.66};
  if (part.kind == solids::PartKind::workpiece) {
    return titanium;
  }
  if (part.kind == solids::PartKind::bought) {
    return part.name.starts_with(solids::fitting) || part.name == solids::valve ? brass : steel;
  }
  if (part.name == ids::end_plug) {
    return plug;
  }
  if (part.name == ids::backing_pin || part.name == ids::purge_lance) {
    return steel;
  }
  return part.name == ids::base_plate || part.name == ids::cradle_stand || part.name == ids::axial_stop ||
                 part.name == ids::tail_foot || part.name == ids::clamp_bar
             ? bench
             : metal;
}

std::string described(const std::string &title, const StepHeader &header) {
  return header.caution.empty() ? title
                                : fmt::format("{}{}{}", header.caution, title.empty() ? "" : ". ", title);
}

// Of made parts and of the workpiece; bought parts are of what they are sold in.
std::string material_of(const job::Job &job, const fixture::PartMetals &metals, std::string_view name) {
  if (name == "tube" || name == "cap") {
    return std::string((name == "tube" ? job.tube.material : job.cap.material)->title);
  }
  const auto row = std::ranges::find(metals, name, &fixture::PartMetal::name);
  return row == metals.end() ? std::string{} : std::string(row->metal->title);
}

Part as_file_part(const solids::Part &part, const StepHeader &header, std::string material) {
  Part file{.name = part.name,
            .description = described(part.title, header),
            .properties = {},
            .material = std::move(material),
            .colour = colour_of(part),
            .solid = part.solid};
  for (const auto &note : part.notes) {
    file.properties.push_back({fmt::format("note {}", file.properties.size() + 1), note});
  }
  return file;
}

// What the sheets state of sizes, places and runout; thread and roughness have no semantic form in this
// kernel's AP242.
struct FeatureTolerances {
  const fixture::Part &part;
  Tolerances &out;
  std::optional<fixture::Position> datum = fixture::datum_face(part);

  void size(std::string_view name, const fixture::Position &face, const fixture::Tolerance &tolerance) {
    if (const auto *fit = std::get_if<fixture::Fit>(&tolerance)) {
      out.fits.push_back({std::string(name), face, fit->letter, fit->grade});
    } else if (const auto *both = std::get_if<fixture::PlusMinus>(&tolerance)) {
      out.sizes.push_back({std::string(name), face, both->by});
    }
  }
  void runout(const fixture::Position &face, units::Length most) {
    if (most > units::Length{} && datum) {
      out.geometric.push_back({.on = face, .to = {*datum}, .datum = "A", .tolerance = most});
    }
  }
  void distance(std::string_view name, const fixture::Position &from, const fixture::Position &to,
                const fixture::Tolerance &tolerance) {
    if (const auto *both = std::get_if<fixture::PlusMinus>(&tolerance)) {
      out.distances.push_back({std::string(name), from, to, to.x - from.x, both->by});
    }
  }
  void operator()(const fixture::TurnedBody &body) {
    units::Length from = body.start_x;
    for (const auto &step : body.steps) {
      const fixture::Position face{fixture::land_middle(part, step, from), {}, step.radius};
      size(step.name, face, step.diameter);
      runout(face, step.runout);
      from = step.end_x;
    }
  }
  void operator()(const fixture::RadialGroove &groove) {
    const fixture::Position bottom{groove.start_x + 0.5 * groove.width, {}, groove.bottom_radius};
    size(groove.ring != nullptr ? "O-ring groove" : groove.name, bottom, groove.bottom);
    runout(bottom, groove.runout);
    const units::Length wall = 0.5 * (groove.bottom_radius + groove.surface_radius);
    const fixture::Position near{groove.start_x, {}, wall}, far{groove.start_x + groove.width, {}, wall};
    distance("groove's width", near, far, groove.across);
    // The stop face lies at x = 0, beyond what the groove is in.
    const bool shaft = groove.bottom_radius < groove.surface_radius;
    const units::Length beyond = units::millimetres(shaft ? 0.25 : -0.25);
    distance("groove's place", {{}, {}, groove.surface_radius + beyond}, near, groove.place);
  }
  void operator()(const fixture::Hole &hole) {
    for (std::size_t i = 0; i < hole.steps.size() && std::abs(hole.into.x) > 0.5; ++i) {
      const fixture::Position wall = fixture::wall_middle(part, hole, i);
      size(hole.steps[i].name, wall, hole.steps[i].diameter);
      runout(wall, hole.steps[i].runout);
    }
  }
  template <class Other> void operator()(const Other &) {}
};

void add_face_tolerances(const fixture::FaceTolerances &faces, Tolerances &out) {
  using Kind = GeometricTolerance::Kind;
  for (const auto &face : faces.fits) {
    out.fits.push_back({std::string(face.name), face.on, face.fit.letter, face.fit.grade});
  }
  for (const auto &size : faces.sizes) {
    out.sizes.push_back({std::string(size.name), size.on, size.by});
  }
  for (const auto &distance : faces.distances) {
    out.distances.push_back(
        {std::string(distance.name), distance.from, distance.to, distance.nominal, distance.by});
  }
  for (const auto &place : faces.places) {
    out.geometric.push_back({.kind = Kind::position,
                             .on = place.on,
                             .to = place.to,
                             .datum = std::string(place.datum),
                             .tolerance = place.zone});
  }
  for (const auto &square : faces.squareness) {
    out.geometric.push_back({.kind = Kind::squareness,
                             .on = square.on,
                             .to = {square.to},
                             .datum = std::string(square.datum),
                             .tolerance = square.zone,
                             .round_zone = true});
  }
}

Tolerances tolerances_of(const fixture::Layout &layout, std::string_view name) {
  Tolerances out;
  add_face_tolerances(fixture::face_tolerances(layout, name), out);
  for (const auto &row : fixture::feature_parts()) {
    if (row.id == name) {
      const fixture::Part part = row.make(layout);
      FeatureTolerances of_features{part, out};
      for (const auto &feature : part.features) {
        std::visit(of_features, feature);
      }
    }
  }
  return out;
}

void write_part(const std::filesystem::path &folder, const solids::Part &part, const Part &file,
                const StepHeader &header) {
  write_step(folder / fmt::format("{}.step", part.name), file, header);
  write_stl(folder / fmt::format("{}.stl", part.name), part.solid, StlOptions{.exact_volume = part.volume});
}

// The assembly's parts as files hold them, in its order.
std::vector<Part> file_parts(const job::Job &job, const fixture::Layout &layout, const BuiltFixture &built,
                             const StepHeader &header) {
  const auto metals = fixture::part_metals(job, layout, fixture::volumes(job, layout));
  std::vector<Part> files;
  for (const auto &part : built.assembly.parts) {
    files.push_back(as_file_part(part, header, material_of(job, metals, part.name)));
    if (part.made()) {
      files.back().tolerances = tolerances_of(layout, part.name);
    }
  }
  return files;
}

Assembly whole_of(const job::Job &job, const BuiltFixture &built, const std::vector<Part> &files,
                  const StepHeader &header) {
  Assembly whole{
      .name = job.identity.name, .description = described(job.identity.title, header), .items = {}};
  for (std::size_t i = 0; i < files.size(); ++i) {
    const auto &part = built.assembly.parts[i];
    for (const auto &place : part.more_places) {
      whole.items.push_back({files[i], colour_of(part), place});
    }
    whole.items.push_back({files[i], colour_of(part), part.place});
  }
  return whole;
}

// Gas of bore and chamber as bodies to look at.
Assembly as_assembly(const solids::GasSpaces &gas, const std::string &name) {
  constexpr Colour of_chamber{0.62, 0.50, 0.78}, of_bore{0.35, 0.62, 0.68};
  Assembly spaces{.name = name, .description = "gas spaces", .items = {}};
  const auto add = [&](std::string_view space, const std::vector<solids::kernel::Solid> &bodies,
                       Colour colour) {
    for (std::size_t i = 0; i < bodies.size(); ++i) {
      const std::string part = i == 0 ? std::string(space) : fmt::format("{}-{}", space, i + 1);
      spaces.items.push_back({{.name = part, .solid = bodies[i]}, colour, {}});
    }
  };
  add("bore-gas", gas.bore_bodies, of_bore);
  add("chamber-gas", gas.chamber_bodies, of_chamber);
  return spaces;
}

} // namespace

BuiltFixture build_fixture(const job::Job &job, const fixture::Layout &layout,
                           const fixture::Volumes &volumes, const OnStep &on_step) {
  solids::Assembly assembly = solids::build_assembly(
      job, layout, [&](std::string_view name) { on_step(fmt::format("building {}", name)); });
  on_step("measuring gas spaces");
  solids::GasSpaces gas = solids::measure_gas(job, layout, assembly);
  solids::require_agreement(job, volumes, assembly, gas);
  on_step("measuring clearances");
  const auto standing = solids::stand(assembly);
  solids::require_clearance_agreement(solids::measure_clearances(job, layout, standing),
                                      fixture::clearances(job, layout));
  std::vector<solids::Clash> clashes = solids::find_clashes(standing);
  return {std::move(assembly), std::move(gas), std::move(clashes)};
}

void write_view(const std::filesystem::path &folder, const job::Job &job, const fixture::Layout &layout,
                const BuiltFixture &built, const StepHeader &header) {
  write_glb(folder / "assembly.glb", whole_of(job, built, file_parts(job, layout, built, header), header),
            viewing);
  write_glb(folder / "gas-spaces.glb", as_assembly(built.gas, job.identity.name), viewing);
}

void write_fixture_files(const std::filesystem::path &folder, const job::Job &job,
                         const fixture::Layout &layout, const BuiltFixture &built, const StepHeader &header,
                         const OnStep &on_step) {
  const std::filesystem::path parts = folder / "parts";
  files::make_folder(parts);
  const auto files = file_parts(job, layout, built, header);
  for (std::size_t i = 0; i < files.size(); ++i) {
    const auto &part = built.assembly.parts[i];
    if (part.made()) {
      on_step(fmt::format("writing {}", part.name));
      write_part(parts, part, files[i], header);
    }
  }
  on_step("writing assembly");
  write_step(folder / "assembly.step", whole_of(job, built, files, header), header);
}

} // namespace purgewright::exchange
