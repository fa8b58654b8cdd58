#include "purgewright/solids/agreement.hpp"

#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace purgewright::solids {
namespace {

double mm3(units::Volume volume) {
  return volume.value() * 1e9;
}

// Not written as a difference above a limit, so that a value that is not a number disagrees.
void compare(std::string_view name, units::Volume measured, units::Volume closed_form) {
  if (std::abs(units::ratio(measured - closed_form, closed_form)) <= volume_agreement) {
    return;
  }
  throw kernel::SolidError(std::string(name), "compare volume", "",
                           fmt::format("the solid holds {:.9g} mm3, the closed form gives {:.9g} mm3",
                                       mm3(measured), mm3(closed_form)));
}

struct Expected {
  std::string_view name;
  units::Volume volume;
};

} // namespace

void require_agreement(const job::Job &job, const fixture::Volumes &volumes, const Assembly &assembly,
                       const GasSpaces &gas) {
  const std::array<Expected, 11> expected{{{ids::chamber_body, volumes.chamber_body},
                                           {ids::wiper_plate, volumes.wiper_plate},
                                           {ids::plenum_cover, volumes.plenum_cover},
                                           {ids::chamber_end_plate, volumes.end_plate},
                                           {ids::backing_pin, volumes.backing_pin},
                                           {ids::cradle_stand, volumes.cradle_stand},
                                           {ids::index_collar, volumes.index_collar},
                                           {ids::axial_stop, volumes.axial_stop},
                                           {ids::base_plate, volumes.base_plate},
                                           {ids::slot_cover, volumes.slot_cover},
                                           {"cap", fixture::cap_metal(job.cap)}}};
  for (const Part &part : assembly.parts) {
    if (const units::Volume metal = volumes.of(part.name); metal > units::Volume{}) {
      compare(part.name, part.volume, metal);
    }
    for (const Expected &known : expected) {
      if (part.name == known.name) {
        compare(part.name, part.volume, known.volume);
      }
    }
  }
  compare("chamber gas", gas.chamber, volumes.chamber_gas);
  compare("bore gas", gas.bore, volumes.bore_gas);
}

} // namespace purgewright::solids
