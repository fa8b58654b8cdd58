// A sweep in pieces: rows I, I + N, I + 2 N ... of it as a file, made anywhere, and the pieces put together
// to what one run of the whole sweep would have made.
//
// Units: SI. Frame: none.
// Range and errors: a file that is no piece, one whose rows contradict their sweep or their own counts,
// pieces of different sweeps, one that is missing or there twice throw BadShard, which says which and what
// would be right. Guarantee: numbers go through the file exactly; the order in which pieces are given does
// not matter.
#pragma once

#include "purgewright/report/compare.hpp"
#include "purgewright/report/manifest.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::report {

struct BadShard : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// The index-th of so many pieces, from 1.
struct ShardOf {
  std::size_t index = 1, count = 1;

  // Rows of the piece among so many of the whole.
  std::size_t rows(std::size_t total) const { return (total + count - index) / count; }
  // Place in the whole of the piece's n-th row, from 0.
  std::size_t row(std::size_t n) const { return index - 1 + n * count; }
};

// "2/8".
ShardOf parse_shard(std::string_view text);

struct Shard {
  ShardOf of;
  std::string version; // of the program
  ReadJob job;
  std::vector<std::string> sweeps; // as typed
  Comparison comparison;           // its own rows alone
};

std::string shard_json(const Shard &);
// `name`: what the text is called in a message.
Shard read_shard(std::string_view json, std::string_view name);

// All pieces of one sweep as the whole.
Shard merged(std::vector<Shard>);

// A sweep under way, line by line: what it is of (version, job, sweeps, piece, figures asked for), then its
// rows as they come. A line of a row is tied to that head and to its place, so that no row of another sweep
// or job, or one that was changed, is ever taken for its own.
std::string kept_head(const Shard &);
std::string kept_row(std::string_view head, std::size_t place, const ComparedDesign &);
// Without the line's end; nothing for a line that is not that row.
std::optional<ComparedDesign> read_kept_row(std::string_view head, std::size_t place, std::string_view line);

} // namespace purgewright::report
