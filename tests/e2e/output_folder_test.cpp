// What an output folder may replace: nothing that this program did not write itself, by the same command, and
// that nobody has touched since. A sweep of one row writes such a folder in no time.
#include "e2e/program.hpp"

#include <chrono>
#include <fcntl.h>
#include <set>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

using namespace purgewright::test;
using Catch::Matchers::Contains;
using nlohmann::json;

namespace fs = std::filesystem;

namespace {

std::vector<std::string> sweep_to(const std::string &job, const std::string &target) {
  return {"compare", job, "--vary", "fixture.wall=4 mm:4 mm:1 mm", "-o", target};
}

Finished sweep(const ScratchFolder &folder, const std::string &target) {
  return run_tool(sweep_to("job.yaml", target), {.folder = folder.path()});
}

std::set<std::string> names_in(const fs::path &folder) {
  std::set<std::string> names;
  for (const auto &entry : fs::directory_iterator(folder)) {
    names.insert(entry.path().filename().string());
  }
  return names;
}

// A folder of compare's with a sub-folder, all of it the program's by its manifest.
void make_deep(const ScratchFolder &folder, const fs::path &out) {
  REQUIRE(sweep(folder, out.string()).status == 0);
  auto manifest = nlohmann::ordered_json::parse(bytes_of(out / "manifest.json"));
  const fs::path table = out / "comparison.csv", below = out / "tables/comparison.csv";
  fs::create_directory(out / "tables");
  fs::copy(table, below);
  for (auto entry : manifest["files"]) {
    if (entry["path"] == "comparison.csv") {
      entry["path"] = "tables/comparison.csv";
      manifest["files"].push_back(entry);
      break;
    }
  }
  write_bytes(out / "manifest.json", sealed(manifest));
}

struct stat status_of(const fs::path &path) {
  struct stat status {};
  REQUIRE(::stat(path.c_str(), &status) == 0);
  return status;
}

constexpr unsigned nobody = 65534;

// Refused, with this name in the message, and nothing anywhere has changed.
void check_refused(const ScratchFolder &folder, const std::string &target, const std::string &named) {
  const auto before = tree(folder.path());
  const auto names = names_in(folder.path());
  const auto refused = sweep(folder, target);
  INFO(target << ": " << refused.err);
  CHECK(refused.status == 3);
  CHECK(refused.out.empty());
  CHECK_THAT(refused.err, Contains(named));
  CHECK(tree(folder.path()) == before);
  CHECK(names_in(folder.path()) == names);
}

} // namespace

TEST_CASE("a folder is replaced when all of it is the same command's and untouched") {
  const ScratchFolder folder;
  job_in(folder);
  for (int i = 0; i < 2; ++i) {
    const auto done = sweep(folder, "out");
    INFO(done.err);
    CHECK(done.status == 0);
  }
  const auto manifest = json::parse(bytes_of(folder / "out/manifest.json"));
  CHECK(manifest["program"] == "purgewright");
  CHECK(manifest["command"] == "compare");
  fs::remove(folder / "out/comparison.csv"); // gone already: nothing is lost
  CHECK(sweep(folder, "out").status == 0);
  fs::create_directory(folder / "empty");
  CHECK(sweep(folder, "empty").status == 0);
  CHECK(names_in(folder.path()) == std::set<std::string>{"job.yaml", "out", "empty"});
}

TEST_CASE("a file that the program did not write, or that has changed, keeps its folder") {
  const ScratchFolder folder;
  job_in(folder);
  REQUIRE(sweep(folder, "out").status == 0);
  const fs::path out = folder / "out";
  const auto with_file = [&](const std::string &name, const std::string &bytes) {
    const bool there = fs::exists(out / name);
    const std::string former = there ? bytes_of(out / name) : "";
    fs::create_directories((out / name).parent_path());
    write_bytes(out / name, bytes);
    check_refused(folder, "out", fs::path(name).begin()->string());
    there ? write_bytes(out / name, former) : (void)fs::remove_all(out / *fs::path(name).begin());
  };
  with_file("notes.txt", "tell nobody");
  with_file(".git/HEAD", "ref: refs/heads/main\n");
  with_file("cam/program.nc", "G0 X0\n");
  with_file("comparison.csv", bytes_of(out / "comparison.csv") + " ");
  std::string same_length = bytes_of(out / "comparison.json");
  same_length[0] = ' ';
  with_file("comparison.json", same_length);
  with_file("job.yaml", bytes_of(folder / "job.yaml"));
  with_file("manifest.json", "{}\n");
  with_file("manifest.json", "[\"program\"");
  const std::string manifest = bytes_of(out / "manifest.json");
  REQUIRE(sealed(nlohmann::ordered_json::parse(manifest)) == manifest); // the seal is SHA-256 of the rest
  with_file("manifest.json", manifest + "\n");
  with_file("manifest.json", with(manifest, "{\n", "{\n  \"note\": \"for the blue machine\",\n"));
  with_file("manifest.json", with(manifest, R"("name": "logger-25")", R"("name": "logger-26")"));
  with_file("manifest.json", with(manifest, R"("manifest_sha256": ")", R"("manifest_sha256": "0)"));
  with_file("manifest.json", json::parse(manifest).dump());
  fs::create_directory(out / "empty");
  check_refused(folder, "out", "empty");
  fs::remove(out / "empty");
  fs::create_symlink("comparison.csv", out / "link");
  check_refused(folder, "out", "link");
  fs::remove(out / "link");
  fs::rename(out / "comparison.csv", folder / "table.csv");
  fs::create_symlink("../table.csv", out / "comparison.csv"); // a listed name, but not the file
  check_refused(folder, "out", "comparison.csv");
  fs::remove(out / "comparison.csv");
  fs::rename(folder / "table.csv", out / "comparison.csv");
  CHECK(sweep(folder, "out").status == 0);
}

TEST_CASE("a folder of another command, of another origin, or the one worked in is refused") {
  const ScratchFolder folder;
  job_in(folder);
  REQUIRE(sweep(folder, "out").status == 0);
  std::string manifest = bytes_of(folder / "out/manifest.json");
  write_bytes(folder / "out/manifest.json", with(manifest, R"("compare")", R"("design")"));
  check_refused(folder, "out", "purgewright design");
  check_refused(folder, "out", "-o");
  fs::create_directory(folder / "foreign");
  write_bytes(folder / "foreign/manifest.json", R"({"name": "an app", "files": []})");
  check_refused(folder, "foreign", "manifest.json");
  for (const std::string here : {".", "./", "out/.."}) {
    check_refused(folder, here, "the folder you work in");
  }
  check_refused(folder, folder.path().string(), "the folder you work in");
  check_refused(folder, "/", "the folder you work in");
}

TEST_CASE("design refuses before it builds anything") {
  const ScratchFolder folder;
  job_in(folder);
  REQUIRE(sweep(folder, "out").status == 0);
  const auto before = tree(folder.path());
  const auto refused = run_tool({"design", "job.yaml", "-o", "out"}, {.folder = folder.path()});
  CHECK(refused.status == 3);
  CHECK_THAT(refused.err, Contains("manifest.json") && Contains("purgewright compare"));
  CHECK(tree(folder.path()) == before);
}

TEST_CASE("a job of the name compare, whose folder is compare's own, is told the cure") {
  const ScratchFolder folder;
  job_in(folder, "name: logger-25", "name: compare");
  REQUIRE(
      run_tool({"compare", "job.yaml", "--vary", "fixture.wall=4 mm:4 mm:1 mm"}, {.folder = folder.path()})
          .status == 0);
  const auto before = tree(folder.path());
  const auto refused = run_tool({"design", "job.yaml"}, {.folder = folder.path()});
  CHECK(refused.status == 3);
  CHECK_THAT(refused.err, Contains("out/compare") && Contains("choose another folder with -o"));
  CHECK(tree(folder.path()) == before);
}

TEST_CASE("a symbolic link is written through and stays a link") {
  const ScratchFolder folder;
  job_in(folder);
  fs::create_directory(folder / "shelf");
  fs::create_symlink("shelf/results", folder / "link"); // its end is not there yet
  for (int i = 0; i < 2; ++i) {
    const auto done = sweep(folder, "link");
    INFO(done.err);
    CHECK(done.status == 0);
    CHECK(fs::is_symlink(folder / "link"));
    CHECK(fs::exists(folder / "shelf/results/comparison.csv"));
  }
  CHECK(names_in(folder / "shelf") == std::set<std::string>{"results"});
  write_bytes(folder / "shelf/results/notes.txt", "mine");
  check_refused(folder, "link", "notes.txt");
  fs::remove(folder / "shelf/results/notes.txt");
  for (const std::string target : {"link/", "link/.", "./link//", "shelf/../link"}) {
    INFO(target);
    fs::remove(folder / "shelf/results/comparison.csv");
    const auto done = sweep(folder, target);
    INFO(done.err);
    CHECK(done.status == 0);
    CHECK(fs::is_symlink(folder / "link"));
    CHECK(fs::exists(folder / "shelf/results/comparison.csv"));
  }
  CHECK(names_in(folder.path()) == std::set<std::string>{"job.yaml", "link", "shelf"});
  fs::create_symlink("round", folder / "round");
  const auto round = sweep(folder, "round");
  CHECK(round.status == 3);
}

TEST_CASE("the folder above a link's end is the system's, not the one the path's letters say") {
  const ScratchFolder folder;
  job_in(folder);
  fs::create_directories(folder / "far/shelf");
  fs::create_directory_symlink("far/shelf", folder / "link");
  fs::create_directory_symlink("far/later", folder / "dangling");
  REQUIRE(sweep(folder, "out").status == 0);
  const auto out = status_of(folder / "out").st_ino;
  for (const std::string above : {"link/../", "dangling/../"}) {
    const auto done = sweep(folder, above + "out");
    INFO(above << ": " << done.err);
    CHECK(done.status == 0);
    CHECK(fs::exists(folder / "far/out/comparison.csv"));
    fs::remove_all(folder / "far/out");
  }
  CHECK(status_of(folder / "out").st_ino == out); // not replaced
}

TEST_CASE("a folder that is replaced keeps its mode and its group") {
  const ScratchFolder folder;
  job_in(folder);
  REQUIRE(sweep(folder, "out").status == 0);
  for (const mode_t mode : {0700U, 0750U, 02775U}) {
    REQUIRE(::chown((folder / "out").c_str(), ::geteuid(), nobody) == 0);
    REQUIRE(::chmod((folder / "out").c_str(), mode) == 0);
    const auto before = status_of(folder / "out").st_ino;
    REQUIRE(sweep(folder, "out").status == 0);
    const struct stat after = status_of(folder / "out");
    CHECK(after.st_ino != before);
    CHECK((after.st_mode & 07777U) == mode);
    CHECK(after.st_gid == nobody);
  }
  CHECK(status_of(folder / "out/comparison.csv").st_gid == nobody); // the last was of setgid
}

TEST_CASE("a sub-folder that may only be read goes with its folder; another user's keeps it") {
  const ScratchFolder folder;
  job_in(folder);
  const fs::path out = folder / "out", below = out / "tables";
  make_deep(folder, out);
  fs::permissions(folder.path(), fs::perms::all);
  for (const fs::path &path : {out, below}) {
    REQUIRE(::chown(path.c_str(), nobody, nobody) == 0);
  }
  const auto as_nobody = [&] {
    return run_tool(sweep_to((folder / "job.yaml").string(), out.string()), {.as_nobody = true});
  };
  REQUIRE(::chown(below.c_str(), 0, 0) == 0);
  const auto before = tree(folder.path());
  const auto refused = as_nobody();
  CHECK(refused.status == 3);
  CHECK_THAT(refused.err, Contains("out/tables") && Contains("another user"));
  CHECK(tree(folder.path()) == before);
  REQUIRE(::chown(below.c_str(), nobody, nobody) == 0);
  REQUIRE(::chmod(below.c_str(), 0555) == 0);
  const auto done = as_nobody();
  INFO(done.err);
  CHECK(done.status == 0);
  CHECK(done.err.empty());
  CHECK_FALSE(fs::exists(below));
  CHECK(names_in(folder.path()) == std::set<std::string>{"job.yaml", "out"});
}

TEST_CASE("a folder of another user, or one that may not be written, is refused") {
  const ScratchFolder folder;
  job_in(folder);
  REQUIRE(sweep(folder, "out").status == 0);
  fs::permissions(folder.path(), fs::perms::all);
  const auto theirs =
      run_tool(sweep_to((folder / "job.yaml").string(), (folder / "out").string()), {.as_nobody = true});
  CHECK(theirs.status == 3);
  CHECK_THAT(theirs.err, Contains("another user"));
  REQUIRE(::chown((folder / "out").c_str(), 65534, 65534) == 0);
  fs::permissions(folder / "out", fs::perms::owner_read | fs::perms::owner_exec);
  const auto locked =
      run_tool(sweep_to((folder / "job.yaml").string(), (folder / "out").string()), {.as_nobody = true});
  CHECK(locked.status == 3);
  CHECK_THAT(locked.err, Contains("Permission denied"));
  CHECK(names_in(folder.path()) == std::set<std::string>{"job.yaml", "out"});
}

TEST_CASE("what a killed run left is swept away, what a run under way or another machine has is not") {
  const ScratchFolder folder;
  job_in(folder);
  const std::string boot = "purgewright, boot " + bytes_of("/proc/sys/kernel/random/boot_id");
  const auto left = [&](const std::string &name, const std::string &owner, int days) {
    const fs::path holder = folder / (".out.partial-" + name);
    fs::create_directories(holder / "new/parts");
    write_bytes(holder / "new/parts/half.step", "ISO-10303-21;");
    if (!owner.empty()) {
      write_bytes(holder / "owner", owner);
    }
    const auto then = fs::file_time_type::clock::now() - std::chrono::hours(24 * days);
    for (const auto &entry : fs::directory_iterator(holder)) {
      fs::last_write_time(entry, then);
    }
    fs::last_write_time(holder, then);
    return holder;
  };
  left("killed", boot, 0);
  left("elsewhere-old", "purgewright, boot another", 2);
  left("mine", "", 2); // made by hand, as the next
  left("mine-too", "belongs to the night shift", 2);
  const fs::path running = left("running", boot, 0);
  const int lock = ::open((running / "owner").c_str(), O_RDWR);
  REQUIRE(::flock(lock, LOCK_EX | LOCK_NB) == 0);
  left("elsewhere", "purgewright, boot another", 0);
  fs::create_directory(folder / ".out.partial-unmarked"); // killed before it wrote its mark, and while it did
  fs::create_directory(folder / ".out.partial-half-marked");
  write_bytes(folder / ".out.partial-half-marked/owner", "");
  write_bytes(folder / ".out.partial-file", "not a folder");
  fs::create_directory_symlink("/usr", folder / ".out.partial-link");
  CHECK(sweep(folder, "out").status == 0);
  ::close(lock);
  CHECK(names_in(folder.path()) == std::set<std::string>{"job.yaml", "out", ".out.partial-running",
                                                         ".out.partial-elsewhere", ".out.partial-mine",
                                                         ".out.partial-mine-too", ".out.partial-file",
                                                         ".out.partial-link"});
  CHECK(fs::exists("/usr/bin"));
}

TEST_CASE("an empty hidden folder stays as long as another run may be about to mark it") {
  const ScratchFolder folder;
  job_in(folder);
  fs::create_directory(folder / ".out.partial-unmarked");
  const int marking = ::open(folder.path().c_str(), O_RDONLY | O_DIRECTORY);
  REQUIRE(::flock(marking, LOCK_SH | LOCK_NB) == 0);
  CHECK(sweep(folder, "out").status == 0);
  CHECK(fs::exists(folder / ".out.partial-unmarked"));
  ::close(marking);
  CHECK(sweep(folder, "out").status == 0);
  CHECK_FALSE(fs::exists(folder / ".out.partial-unmarked"));
}

TEST_CASE("a folder that a killed run had moved aside is put back") {
  const ScratchFolder folder;
  job_in(folder);
  REQUIRE(sweep(folder, "out").status == 0);
  const auto former = tree(folder / "out");
  fs::create_directory(folder / ".out.partial-killed");
  write_bytes(folder / ".out.partial-killed/owner",
              "purgewright, boot " + bytes_of("/proc/sys/kernel/random/boot_id"));
  fs::rename(folder / "out", folder / ".out.partial-killed/old");
  write_bytes(folder / ".out.partial-killed/old/notes.txt", "mine");
  const auto refused = sweep(folder, "out"); // the folder that is back holds a note
  INFO(refused.err);
  CHECK(refused.status == 3);
  CHECK(fs::exists(folder / "out/notes.txt"));
  CHECK(names_in(folder.path()) == std::set<std::string>{"job.yaml", "out"});
}
