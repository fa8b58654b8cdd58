// The two steps of resolving a draft: fill every value, then check what the values say together.
#pragma once

#include "purgewright/job/job.hpp"

#include <bitset>
#include <initializer_list>

namespace purgewright::job {

// Keys whose value is wrong or missing and already reported: no check that depends on one speaks again.
using KeySet = std::bitset<key_count>;

inline bool contains(const KeySet &set, Key key) {
  return set.test(static_cast<std::size_t>(key));
}

// The keys that this file's faults concern, sections spread out to their keys; all keys for a fault of the
// file.
KeySet faulty_keys(const Diagnostics &, const std::string &file);

// Fills every value and origin of the job; a missing required value stays zero. Reports nothing.
void fill(const Draft &, Job &);

// Faults between values, and values outside their key's limits; a value in `faulty` is left alone.
Diagnostics conflicts(const Draft &, const Job &, KeySet faulty);

} // namespace purgewright::job
