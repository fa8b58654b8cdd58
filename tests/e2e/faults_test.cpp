// What goes wrong around the program: signals, full disks, closed outputs, missing fonts and programs, texts
// and logs that mean harm. Each ends with a status and a reason, and leaves what was there.
#include "e2e/program.hpp"

#include <algorithm>
#include <chrono>
#include <csignal>
#include <set>
#include <thread>

using namespace purgewright::test;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
using nlohmann::json;

namespace fs = std::filesystem;

namespace {

Finished shell(const std::string &line, const fs::path &folder) {
  return run("/bin/bash", {"-c", line, PURGEWRIGHT_PROGRAM}, {.folder = folder});
}

std::set<std::string> names_in(const fs::path &folder) {
  std::set<std::string> names;
  for (const auto &entry : fs::directory_iterator(folder)) {
    names.insert(entry.path().filename().string());
  }
  return names;
}

// The program with another one beside it in place of purgewright-solids; none when the text is empty.
std::string with_solids(const ScratchFolder &folder, const std::string &script) {
  const fs::path program = folder / "purgewright";
  fs::copy_file(PURGEWRIGHT_PROGRAM, program);
  if (!script.empty()) {
    write_bytes(folder / "purgewright-solids", "#!/bin/bash\n" + script);
    fs::permissions(folder / "purgewright-solids", fs::perms::owner_all);
  }
  return program.string();
}

std::string text_of(const fs::path &pdf) {
  return run("/usr/bin/pdftotext", {"-raw", pdf.string(), "-"}).out; // cell by cell, as it was written
}

constexpr const char *title_line = "title: Tide-gauge logger housing, 25 mm";

} // namespace

TEST_CASE("a signal that asks to end removes what was begun and ends the program by that signal") {
  for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
    INFO(signal);
    const ScratchFolder folder;
    job_in(folder);
    constexpr double while_building = 0.8; // s: solids take longer
    const auto ended = run_tool({"design", "job.yaml", "-o", "out"},
                                {.folder = folder.path(), .kill_after = while_building, .kill_with = signal});
    CHECK(ended.status == 128 + signal);
    CHECK(ended.out.empty());
    CHECK(names_in(folder.path()) == std::set<std::string>{"job.yaml"});
  }
}

TEST_CASE("the program that builds the solids does not outlive a signal") {
  const ScratchFolder folder;
  with_solids(folder, "echo $$ > \"$1/../../pid\"; exec sleep 1000\n");
  job_in(folder);
  const auto ended = shell(
      R"(./purgewright design job.yaml -o out & begun=$!
         until [ -s pid ]; do sleep 0.05; done; kill -TERM $begun; wait $begun)",
      folder.path());
  CHECK(ended.status == 128 + SIGTERM);
  CHECK(::kill(std::stoi(bytes_of(folder / "pid")), 0) != 0);
  CHECK(names_in(folder.path()) ==
        std::set<std::string>{"job.yaml", "pid", "purgewright", "purgewright-solids"});
}

TEST_CASE("the program that builds the solids does nothing once the one that started it was killed") {
  const ScratchFolder folder;
  // It has the whole job, and is slow to start: the other is gone by then.
  with_solids(folder, R"(here="$1/../.."; cat > "$here/message"; touch "$here/begun"
      until [ -e "$here/killed" ]; do sleep 0.05; done
      ')" + (fs::path(PURGEWRIGHT_PROGRAM).parent_path() / "purgewright-solids").string() +
                          R"(' "$1" < "$here/message"; echo $? > "$here/ended")" + "\n");
  job_in(folder);
  const auto killed = shell(
      R"(./purgewright design job.yaml -o out & begun=$!
         until [ -e begun ]; do sleep 0.05; done; kill -KILL $begun; wait $begun; status=$?
         mkdir killed; until [ -s ended ]; do sleep 0.05; done; exit $status)",
      folder.path());
  CHECK(killed.status == 128 + SIGKILL);
  CHECK(bytes_of(folder / "ended") == "4\n");
  for (const auto &entry : fs::recursive_directory_iterator(folder.path())) {
    CHECK(entry.path().extension() != ".step");
  }
}

TEST_CASE("a signal that the caller has switched off stays off") {
  const ScratchFolder folder;
  job_in(folder);
  const auto done =
      shell(R"(trap '' HUP; "$0" design job.yaml -o out & sleep 0.8; kill -HUP $!; wait $!)", folder.path());
  INFO(done.err);
  CHECK(done.status == 0);
  CHECK(fs::exists(folder / "out/manifest.json"));
}

TEST_CASE(
    "a program for the solids that is missing, lies or keeps silent is a fault, and nothing is written") {
  const std::string solids =
      "'" + (fs::path(PURGEWRIGHT_PROGRAM).parent_path() / "purgewright-solids").string() + "'";
  const std::string of = "of 0000000000000000000000000000000000000000000000000000000000000000\n";
  for (const std::string &script :
       {std::string(), std::string("cat > /dev/null\n"), std::string("exit 0\n"),
        "LC_ALL=C sed 's/Tide-gauge/Tide-gouge/' | " + solids + " \"$@\"\n",
        solids + " \"$@\" && echo >> \"$1/parts/end-plug.stl\"\n",
        solids + " \"$@\" && rm \"$1/setup-sheet.pdf\"\n", "cat > /dev/null; echo '" + of + "'\n",
        std::string("echo of $(sha256sum | cut -c1-64)\n"), std::string("cat > /dev/null; echo clash a\n"),
        std::string("kill -SEGV $$\n"), std::string("cat > /dev/null; exit 7\n")}) {
    INFO(script);
    const ScratchFolder folder;
    const std::string program = with_solids(folder, script);
    job_in(folder);
    const auto before = names_in(folder.path());
    const auto fault = run(program, {"design", "job.yaml", "-o", "out"}, {.folder = folder.path()});
    CHECK(fault.status == 4);
    CHECK(fault.out.empty());
    CHECK_THAT(fault.err, Contains("nothing is written"));
    CHECK(names_in(folder.path()) == before);
  }
}

TEST_CASE("stdout that is closed or full is status 3 for every command") {
  const ScratchFolder folder;
  job_in(folder);
  for (const std::string command :
       {"check job.yaml", "check --json job.yaml", "trace job.yaml volume.chamber_gas", "--help", "--version",
        "new flat-cap -o OUT.yaml", "compare job.yaml --vary 'fixture.wall=4 mm:4 mm:1 mm' -o OUT",
        "design job.yaml -o OUT"}) {
    int number = 0;
    for (const std::string to : {">&-", "> /dev/full"}) {
      const std::string out = "o" + std::to_string(number++);
      std::string line = "\"$0\" " + command + " " + to;
      if (const auto at = line.find("OUT"); at != std::string::npos) {
        line.replace(at, 3, out);
      }
      INFO(line);
      const auto refused = shell(line, folder.path());
      CHECK(refused.status == 3);
      CHECK_THAT(refused.err, Contains("standard output"));
    }
    for (const auto &name : names_in(folder.path())) {
      if (name != "job.yaml") {
        fs::remove_all(folder / name);
      }
    }
  }
  CHECK(shell(R"("$0" check job.yaml 2>&- <&- > text)", folder.path()).status == 0);
}

TEST_CASE("a reader that goes away is status 3 and no signal") {
  const ScratchFolder folder;
  job_in(folder);
  const auto gone = shell(R"("$0" check --json job.yaml | true; exit ${PIPESTATUS[0]})", folder.path());
  CHECK(gone.status == 3);
}

TEST_CASE("a disk without room for bytes or files leaves the earlier folder and nothing beside it") {
  // A disk of its own in a space of its own, which ends with the shell.
  for (const std::string room : {"size=400k", "size=64m,nr_inodes=12", "size=64m,nr_inodes=40"}) {
    INFO(room);
    const ScratchFolder folder;
    job_in(folder);
    fs::create_directory(folder / "disk");
    REQUIRE(shell(R"("$0" compare job.yaml --vary 'fixture.wall=4 mm:4 mm:1 mm' -o earlier)", folder.path())
                .status == 0);
    auto manifest = nlohmann::ordered_json::parse(bytes_of(folder / "earlier/manifest.json"));
    manifest["command"] = "design";
    write_bytes(folder / "earlier/manifest.json", sealed(manifest));
    const std::string line = "mount -t tmpfs -o " + room + " none disk && cd disk && " +
                             R"(cp -r ../earlier out || exit 90
           find . | sort > ../before
           "$0" design ../job.yaml -o out; status=$?
           find . | sort > ../after; diff -r out ../earlier >&2 || exit 91
           exit $status)";
    const auto full = run("/usr/bin/unshare", {"-rm", "/bin/bash", "-c", line, PURGEWRIGHT_PROGRAM},
                          {.folder = folder.path()});
    INFO(full.out << full.err);
    CHECK(full.status == 3);
    CHECK_THAT(full.err, Contains("No space left"));
    CHECK(bytes_of(folder / "after") == bytes_of(folder / "before"));
  }
}

TEST_CASE("a limit on the size of files is status 3 with a reason, leaves nothing behind and no signal") {
  const ScratchFolder folder;
  job_in(folder);
  for (const std::string command :
       {"compare job.yaml --vary 'fixture.wall=4 mm:4 mm:1 mm' -o out", "new flat-cap"}) {
    INFO(command);
    const auto limited = shell("ulimit -f 1; exec \"$0\" " + command, folder.path()); // KiB
    CHECK(limited.status == 3);
    CHECK_THAT(limited.err, Contains("File too large"));
    CHECK(names_in(folder.path()) == std::set<std::string>{"job.yaml"});
  }
}

TEST_CASE("a disk that may only be read is status 3") {
  const ScratchFolder folder;
  job_in(folder);
  fs::create_directory(folder / "disk");
  const auto refused =
      run("/usr/bin/unshare",
          {"-rm", "/bin/bash", "-c",
           R"(mount -t tmpfs -o ro none disk && exec "$0" design job.yaml -o disk/out)", PURGEWRIGHT_PROGRAM},
          {.folder = folder.path()});
  CHECK(refused.status == 3);
  CHECK_THAT(refused.err, Contains("Read-only"));
}

TEST_CASE("odd places for temporary files, no home and a decimal comma change nothing") {
  const ScratchFolder folder;
  job_in(folder);
  const std::string locale = "de_DE.UTF-8";
  run("/usr/bin/localedef", {"-i", "de_DE", "-f", "UTF-8", (folder / locale).string()});
  const auto point = run("/usr/bin/locale", {"decimal_point"},
                         {.environment = {{"LC_ALL", locale}, {"LOCPATH", folder.path().string()}}});
  REQUIRE(point.out == ",\n");
  const auto plain = run_tool({"design", "job.yaml", "-o", "a"}, {.folder = folder.path()});
  REQUIRE(plain.status == 0);
  const auto odd =
      run_tool({"design", "job.yaml", "-o", "b"}, {.folder = folder.path(),
                                                   .environment = {{"TMPDIR", "/nowhere/a b"},
                                                                   {"HOME", "/nowhere/\x1b[31m"},
                                                                   {"XDG_CACHE_HOME", "/proc"},
                                                                   {"LC_ALL", locale},
                                                                   {"LANG", locale},
                                                                   {"LOCPATH", folder.path().string()},
                                                                   {"CSF_OCCTResourcePath", "/nowhere"},
                                                                   {"COLUMNS", "1"}}});
  INFO(odd.err);
  CHECK(odd.status == 0);
  CHECK(tree(folder / "b") == tree(folder / "a"));
}

TEST_CASE("without fonts a design stops and names the font") {
  const ScratchFolder folder;
  job_in(folder);
  fs::create_directory(folder / "fonts");
  write_bytes(folder / "fonts.conf", "<?xml version=\"1.0\"?><fontconfig><dir>" +
                                         (folder / "fonts").string() + "</dir><cachedir>" +
                                         (folder / "cache").string() + "</cachedir></fontconfig>");
  const RunOptions few{.folder = folder.path(),
                       .environment = {{"FONTCONFIG_FILE", (folder / "fonts.conf").string()}}};
  const auto none = run_tool({"design", "job.yaml", "-o", "out"}, few);
  CHECK(none.status == 4);
  CHECK_THAT(none.err, Contains("osifont") && Contains("nothing is written"));
  CHECK_FALSE(fs::exists(folder / "out"));
}

TEST_CASE("titles that cannot be drawn are refused where they stand, before anything is written") {
  const auto refused_with = [](const std::string &title, const std::string &reason) {
    const ScratchFolder folder;
    job_in(folder, title_line, "title: " + title);
    const auto refused = run_tool({"design", "job.yaml", "-o", "out"}, {.folder = folder.path()});
    INFO(title.substr(0, 40) << ": " << refused.err);
    CHECK(refused.status == 2);
    CHECK_THAT(refused.err, StartsWith("job.yaml:5:") && Contains(reason));
    CHECK(names_in(folder.path()) == std::set<std::string>{"job.yaml"});
  };
  refused_with("\"a\\uFFFFb\"", "job.title");
  refused_with("\"a\\uFFFEb\"", "job.title");
  refused_with("\"a\\uFDD0b\"", "job.title");
  refused_with("\"a\\U0001FFFFb\"", "job.title");
  refused_with("a\xEF\xBF\xBF", "U+FFFF");
  refused_with("a\xE2\x80\xAE", "U+202E"); // text from here on would read backwards
  refused_with("\"a\\u202Eb\"", "job.title");
  refused_with("\"a\\u200B\"", "job.title"); // nothing to see
  refused_with("\xE2\x80\x8B", "U+200B");
  refused_with("\"bore %%c 25\"", "%");
  refused_with(std::string(200, 'W'), "80 characters");
  refused_with("\xE6\xBD\xAE\xE4\xBD\x8D", "U+6F6E"); // Chinese, for which no font is installed here
}

TEST_CASE("the longest and oddest titles that are accepted stand whole on every sheet") {
  const ScratchFolder folder;
  const std::string title =
      R"("W\\P {a} ^J \\U+0041 %d <&> 100 % Größe Ж 60, up to eighty letters, WWWWWWWWWW!")";
  const std::string shown =
      R"(W\P {a} ^J \U+0041 %d <&> 100 % Größe Ж 60, up to eighty letters, WWWWWWWWWW!)";
  std::string text = with(bytes_of(example("logger-25")), title_line, "title: " + title);
  text = with(text, "name: logger-25", "name: " + std::string(64, 'W'));
  text = with(text, "revision: A",
              "revision: " + std::string(16, 'W') + "\n  prepared_by: " + std::string(40, 'W'));
  write_bytes(folder / "job.yaml", text);
  const auto done = run_tool({"design", "job.yaml", "-o", "out"}, {.folder = folder.path()});
  INFO(done.err);
  REQUIRE(done.status == 0);
  const fs::path out = folder / "out";
  const auto squeezed = [](std::string words) {
    std::erase_if(words, [](char c) { return c == ' ' || c == '\n' || c == '\f'; });
    return words;
  };
  CHECK_THAT(squeezed(text_of(out / "setup-sheet.pdf")), Contains(squeezed(shown)));
  CHECK_THAT(squeezed(text_of(out / "drawings/end-plug.pdf")), Contains(squeezed(shown)));
  const auto read = run("/usr/bin/python3",
                        {project_file("tests/e2e/dxf_texts.py"), (out / "drawings/end-plug.dxf").string()});
  INFO(read.err);
  REQUIRE(read.status == 0);
  CHECK_THAT(squeezed(read.out), Contains(squeezed(shown)));
  // No word of the setup sheet leaves the page or lies on another.
  const auto overlaps = run("/usr/bin/python3",
                            {project_file("tests/e2e/page_overlaps.py"), (out / "setup-sheet.pdf").string()});
  INFO(overlaps.out << overlaps.err);
  CHECK(overlaps.status == 0);
}

TEST_CASE("a log that means harm moves no terminal and fills no screen") {
  const ScratchFolder folder;
  job_in(folder, "gas:", "gas:\n  log: \"log.csv\"");
  write_bytes(folder / "log.csv",
              "time [s],oxygen [ppm],circuit\n\x1b]0;owned\x07,1,bore\n1,\xff\xfe\x1b[2J,bore\n" +
                  std::string(1'000'000, 'x') + ",1,bore\n");
  const auto refused = run_tool({"check", "job.yaml"}, {.folder = folder.path()});
  CHECK(refused.status == 2);
  CHECK_THAT(refused.err, Contains("log.csv:2:1") && Contains("log.csv:4:1"));
  CHECK(refused.err.size() < 2000);
  CHECK(std::ranges::all_of(refused.err, [](char c) { return c == '\n' || (c >= ' ' && c < 0x7F); }));
  const auto named = run_tool({"check", "\x1b[31mno.yaml"}, {.folder = folder.path()});
  CHECK(named.status == 2);
  CHECK(named.err.find('\x1b') == std::string::npos);
}
