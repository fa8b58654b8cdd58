// What a folder's manifest vouches for, and which command may replace it.
#include "purgewright/report/manifest.hpp"

#include "purgewright/files/file.hpp"
#include "support/run_program.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace purgewright;
using namespace purgewright::report;
using test::ScratchFolder;

namespace {

constexpr std::string_view piece_command = "compare --shard";

void write_piece(const ScratchFolder &folder) {
  files::write(folder / "piece.json", "rows");
  files::write(folder / "manifest.json",
               manifest_json(folder.path(), {.command = piece_command, .version = "1", .jobs = {}}));
}

} // namespace

TEST_CASE("a folder is replaced by the very command that wrote it, not by one of a like name") {
  const ScratchFolder folder;
  write_piece(folder);
  CHECK_NOTHROW(require_replaceable(folder.path(), piece_command));
  CHECK_THROWS_AS(require_replaceable(folder.path(), "compare"), files::FileError);
}

TEST_CASE("a file is read as its manifest lists it, or refused") {
  const ScratchFolder folder;
  write_piece(folder);
  CHECK(read_as_listed(folder.path(), "piece.json", piece_command) == "rows");
  CHECK_THROWS_AS(read_as_listed(folder.path(), "piece.json", "compare"), files::FileError);
  CHECK_THROWS_AS(read_as_listed(folder.path(), "other.json", piece_command), files::FileError);
  files::write(folder / "other.json", "rows");
  CHECK_THROWS_AS(read_as_listed(folder.path(), "other.json", piece_command), files::FileError);
  files::write(folder / "piece.json", "ROWS"); // as long as it was
  CHECK_THROWS_AS(read_as_listed(folder.path(), "piece.json", piece_command), files::FileError);
}
