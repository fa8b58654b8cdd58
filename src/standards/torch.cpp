#include "purgewright/standards/tables.hpp"

#include <array>

namespace purgewright::standards {

namespace {

constexpr TorchCup cup(int number, double outside_millimetres) {
  return {number, units::inches(number / 16.0), units::millimetres(outside_millimetres)};
}

constexpr std::array<TorchCup, 7> cups{cup(4, 10.3), cup(5, 11.9),  cup(6, 13.5), cup(7, 15.1),
                                       cup(8, 16.7), cup(10, 20.4), cup(12, 24.0)};

} // namespace

std::span<const TorchCup> torch_cups() {
  return cups;
}

std::string_view torch_cup_source() {
  return "cup number in sixteenths of an inch: trade usage; outside diameter: estimate, bore and two walls, "
         "measure the real cup";
}

} // namespace purgewright::standards
