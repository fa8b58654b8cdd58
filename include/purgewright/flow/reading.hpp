// What a solved case says of the oxygen at the joint, and the network's answer beside it.
//
// Units: quantity types; oxygen is a volume fraction. Frame: none.
// Range and errors: BadRecord with file and line for a text that is not what OpenFOAM's probes write, for a
// share of air that is not a number or well outside 0 to 1, and for times that do not rise in a file.
// Guarantee: a run that went on from an earlier time counts from there; what it repeats is read once.
// Source: OpenFOAM user guide, function object "probes".
#pragma once

#include "purgewright/flow/case.hpp"

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::flow {

struct BadRecord : std::runtime_error {
  using std::runtime_error::runtime_error;
};

struct Record {
  std::vector<std::string> places;
  std::vector<double> times;               // s, rising
  std::vector<std::vector<double>> oxygen; // by time and place
};

struct ProbesFile {
  std::string name; // in messages
  std::string text;
};

// The probes' files in the order in which the runs began.
Record read_record(const std::vector<ProbesFile> &, const job::Job &, const Case &);

// The worst of the places at the joint: how long until it stays under the limit, and the most that it saw, as
// plumes waver.
double worst_at_joint(const Record &, std::size_t time);
struct Solved {
  std::optional<units::Time> reached;
  double most = 0.0, at_end = 0.0;
  units::Time most_at{}, end{};
};
Solved judge(const Record &, double limit);

// Time until the limit for a prepurge, most oxygen for the other stages.
struct Bracket {
  double low = 0.0, best = 0.0, high = 0.0;
};
Bracket network_bracket(const gas::Purge &, Stage);
double limit_of(const job::Job &, Stage); // of the joint's side that the stage is about

// Whether the bracket holds the solution; absent when the run was too short to say.
std::optional<bool> holds(const Bracket &, const Solved &, Stage);

std::string comparison_text(const job::Job &, const gas::Purge &, const Case &, const Record &);
std::string comparison_csv(const job::Job &, const gas::Purge &, const Case &, const Record &);
std::string record_csv(const Record &);

} // namespace purgewright::flow
