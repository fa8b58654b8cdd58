// How a job comes in: read once, from a file or a pipe, and the same whatever its path; what is no file is
// refused and never waited for.
#include "e2e/program.hpp"

#include <sys/stat.h>
#include <thread>

using namespace purgewright::test;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
using nlohmann::json;

namespace fs = std::filesystem;

namespace {

// A shell line with the program as $0.
Finished shell(const std::string &line, const fs::path &folder) {
  return run("/bin/bash", {"-c", line, PURGEWRIGHT_PROGRAM}, {.folder = folder});
}

std::string sha256(const fs::path &file) {
  return run("/usr/bin/sha256sum", {file.string()}).out.substr(0, 64);
}

} // namespace

TEST_CASE("a job comes from a pipe as well as from a file") {
  const ScratchFolder folder;
  job_in(folder);
  const auto from_file = run_tool({"check", "--json", "job.yaml"}, {.folder = folder.path()});
  REQUIRE(from_file.status == 0);
  for (const std::string line :
       {R"(exec "$0" check --json - < job.yaml)", R"(cat job.yaml | "$0" check --json -)",
        R"(cat job.yaml | "$0" check --json /dev/stdin)", R"("$0" check --json <(cat job.yaml))",
        R"((sleep 1; cat job.yaml) | "$0" check --json -)", R"("$0" check --json /dev/fd/7 7< job.yaml)"}) {
    INFO(line);
    const auto done = shell(line, folder.path());
    CHECK(done.status == 0);
    CHECK(done.err.empty());
    CHECK(done.out == from_file.out);
  }
  const auto bad = shell(R"(echo 'job: {name: a}' | "$0" check -)", folder.path());
  CHECK(bad.status == 2);
  CHECK_THAT(bad.err, Contains("tube"));
}

TEST_CASE("a job names files; a dash in it is no standard input, however the job's path is typed") {
  const ScratchFolder folder;
  const std::string log = bytes_of(project_file("examples/logger-25-oxygen.csv"));
  write_bytes(folder / "log.csv", log);
  for (const auto &[line, key] : {std::pair("gas:\n  log: '-'", "gas.log"),
                                  std::pair("fixture: {family: ['-']}\ngas:", "fixture.family")}) {
    job_in(folder, "gas:", line);
    for (const std::string command : {R"("$0" check job.yaml < log.csv)",
                                      R"("$0" check ./job.yaml < log.csv)", R"("$0" check - < job.yaml)"}) {
      INFO(key << ": " << command);
      const auto refused = shell(command, folder.path());
      CHECK(refused.status == 2);
      CHECK(refused.out.empty());
      CHECK_THAT(refused.err, Contains(key) && Contains("'-'") && Contains("standard input"));
    }
  }
  job_in(folder, "gas:", "gas:\n  log: ./-"); // a file may have the name
  write_bytes(folder / "-", log);
  CHECK(run_tool({"check", "job.yaml"}, {.folder = folder.path()}).status == 0);
}

TEST_CASE("FIFOs without a writer, silent pipes, devices and endless files are refused, not waited for") {
  const ScratchFolder folder;
  job_in(folder, "gas:", "gas:\n  log: log.csv");
  REQUIRE(::mkfifo((folder / "fifo").c_str(), 0600) == 0);
  REQUIRE(::mkfifo((folder / "log.csv").c_str(), 0600) == 0);
  Finished silent, empty, log;
  std::thread first(
      [&] { silent = shell(R"(sleep 20 | "$0" check -; exit ${PIPESTATUS[1]})", folder.path()); });
  std::thread second([&] { empty = run_tool({"check", "fifo"}, {.folder = folder.path()}); });
  log = run_tool({"check", "job.yaml"}, {.folder = folder.path()});
  first.join();
  second.join();
  for (const auto *refused : {&silent, &empty, &log}) {
    CHECK(refused->status == 2);
    CHECK(refused->out.empty());
    CHECK_THAT(refused->err, Contains("silent"));
  }
  CHECK_THAT(log.err, Contains("gas.log"));
  for (const std::string device : {"/dev/zero", "/dev/null", "/dev/random"}) {
    const auto refused = run_tool({"check", device});
    CHECK(refused.status == 2);
    CHECK_THAT(refused.err, StartsWith(device) && Contains("device"));
  }
  const auto endless = shell(R"(yes | "$0" check -)", folder.path());
  CHECK(endless.status == 2);
  CHECK_THAT(endless.err, Contains("larger than 1 MiB"));
  const auto closed = shell(R"("$0" check - <&-)", folder.path());
  CHECK(closed.status == 2);
}

TEST_CASE("the whole of a design follows from one reading of its files") {
  const ScratchFolder folder;
  job_in(folder, "gas:", "gas:\n  log: log.csv");
  write_bytes(folder / "log.csv", bytes_of(project_file("examples/logger-25-oxygen.csv")));
  const auto from_file = run_tool({"design", "job.yaml", "-o", "a"}, {.folder = folder.path()});
  INFO(from_file.err);
  REQUIRE(from_file.status == 0);
  // A pipe gives its bytes once.
  const auto from_pipe = shell(R"("$0" design <(cat job.yaml) -o b)", folder.path());
  INFO(from_pipe.err);
  REQUIRE(from_pipe.status == 0);
  CHECK(tree(folder / "b") == tree(folder / "a"));
  // Another path, another folder, another name, an absolute path to the log.
  const ScratchFolder elsewhere;
  fs::create_symlink(folder / "job.yaml", elsewhere / "other-name.yml");
  const auto from_link = run_tool({"design", "./other-name.yml", "-o", (elsewhere / "c").string()},
                                  {.folder = elsewhere.path()});
  INFO(from_link.err);
  REQUIRE(from_link.status == 0);
  const auto files = tree(elsewhere / "c");
  CHECK(files == tree(folder / "a"));
  for (const auto &[path, bytes] : files) {
    INFO(path);
    for (const std::string &trace :
         {folder.path().string(), elsewhere.path().string(), std::string("job.yaml"),
          std::string("other-name"), fs::current_path().string()}) {
      CHECK(bytes.find(trace) == std::string::npos);
    }
  }
}

TEST_CASE("a job that is replaced while its solids are built changes nothing of its design") {
  const ScratchFolder folder;
  const std::string job = job_in(folder, "title: Tide-gauge logger housing, 25 mm", "title: the first");
  const std::string first = sha256(job);
  Finished done;
  std::thread side([&] { done = run_tool({"design", "job.yaml", "-o", "out"}, {.folder = folder.path()}); });
  constexpr auto solids_begin = std::chrono::milliseconds(300);
  std::this_thread::sleep_for(solids_begin);
  write_bytes(folder / "next.yaml",
              with(with(bytes_of(job), "the first", "the second"), "length: 190 mm", "length: 200 mm"));
  fs::rename(folder / "next.yaml", folder / "job.yaml");
  side.join();
  INFO(done.err);
  REQUIRE(done.status == 0);
  const std::string second = sha256(job);
  const std::string hash = json::parse(bytes_of(folder / "out/manifest.json"))["job_sha256"];
  CHECK((hash == first || hash == second));
  const std::string title = hash == first ? "the first" : "the second";
  const std::string page = run("/usr/bin/pdftotext", {(folder / "out/setup-sheet.pdf").string(), "-"}).out;
  CHECK_THAT(page, Contains(title) && Contains(hash));
  CHECK(json::parse(bytes_of(folder / "out/results.json"))["job"]["title"] == title);
  CHECK_THAT(run("/usr/bin/pdftotext", {(folder / "out/drawings/end-plug.pdf").string(), "-"}).out,
             Contains(title));
}

TEST_CASE("compare's manifest is of the jobs that were read, each by its name") {
  const ScratchFolder folder;
  const auto done = run_tool({"compare", example("logger-25"), example("logger-51"), "-o", "both"},
                             {.folder = folder.path()});
  REQUIRE(done.status == 0);
  const auto jobs = json::parse(bytes_of(folder / "both/manifest.json"))["jobs"];
  REQUIRE(jobs.size() == 2);
  CHECK(jobs[0]["name"] == "logger-25");
  CHECK(jobs[0]["job_sha256"] == sha256(example("logger-25")));
  CHECK(jobs[1]["job_sha256"] == sha256(example("logger-51")));
}
