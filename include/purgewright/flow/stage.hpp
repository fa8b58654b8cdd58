// Stages of a job that are written as a flow case, and what is chosen of a case.
//
// Units: quantity types. Frame: none. Errors: none.
#pragma once

#include "purgewright/units/quantity.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace purgewright::flow {

enum class Stage {
  bore,              // prepurge of the bore, its outlet uppermost
  bore_outlet_below, // the same with the outlet below
  prepurge,          // of the chamber, under the closed slot cover
  open,              // cover open, cold joint, torch not yet over the slot
  away,              // torch lifted when a hold ends: joint at the shielding temperature
  torch              // torch over the joint before the arc, joint as cold as the shop
};
inline constexpr std::array<Stage, 6> all_stages{
    Stage::bore, Stage::bore_outlet_below, Stage::prepurge, Stage::open, Stage::away, Stage::torch};

std::string_view to_text(Stage); // "bore-outlet-below"
std::optional<Stage> stage_named(std::string_view);

// Whose metal is hot, so that the gas's temperature is solved as well.
bool is_hot(Stage);
bool is_bore(Stage);
// Starts with air and is timed until the joint is under its limit; the others are watched until they rest.
bool is_prepurge(Stage);

inline constexpr std::size_t usual_cells =
    20000; // minutes to an hour of one core; common practice, no source
inline constexpr std::size_t least_cells = 500, most_cells = 20000000;

// Fewer cells a process than this only wait for each other: common practice, no source.
inline constexpr std::size_t least_cells_of_process = 500;
constexpr std::size_t most_processes(std::size_t cells) {
  return cells < least_cells_of_process ? 1 : cells / least_cells_of_process;
}

struct Choice {
  Stage stage = Stage::bore;
  std::size_t cells = usual_cells;     // about so many in the gas of the half model, the room's not counted
  std::optional<units::Time> duration; // absent: by the stage
};

} // namespace purgewright::flow
