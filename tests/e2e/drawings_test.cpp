// The sheets of a design as other programs read them.
#include "e2e/program.hpp"
#include "support/paths.hpp"

using namespace purgewright::test;

namespace {

struct Paper {
  const char *name, *width, *height; // mm
};
constexpr Paper a4{"A4", "210", "297"}, a3{"A3", "420", "297"}, letter{"Letter", "215.9", "279.4"},
    tabloid{"Tabloid", "431.8", "279.4"};

// A part that the first paper cannot show legibly may stand on the last.
Finished read_drawings(const std::filesystem::path &folder, const std::vector<Paper> &papers) {
  std::vector<std::string> words{purgewright::test::project_file("tests/e2e/read_drawings.py"),
                                 (folder / "drawings").string()};
  for (const Paper &paper : papers) {
    words.insert(words.end(), {paper.width, paper.height});
  }
  return run("/usr/bin/python3", words);
}

} // namespace

TEST_CASE("ezdxf, poppler and an XML parser read the sheets of every example, and its STEP files say what "
          "they do") {
  for (const auto &[name, paper] : std::vector<std::pair<std::string, Paper>>{{"logger-25", a3},
                                                                              {"logger-38", tabloid},
                                                                              {"logger-51", a3},
                                                                              {"pipe-33", a3},
                                                                              {"sensor-6", a3},
                                                                              {"well-114", a3}}) {
    INFO(name);
    const ScratchFolder scratch;
    REQUIRE(run_tool({"design", example(name), "-o", (scratch / "out").string()}).status <= 1);
    const auto read = read_drawings(scratch / "out", {paper});
    INFO(read.err);
    CHECK(read.status == 0);
    const auto models =
        run("/usr/bin/python3", {project_file("tests/e2e/read_step.py"), (scratch / "out").string()});
    INFO(models.out);
    INFO(models.err);
    CHECK(models.status == 0);
  }
}

TEST_CASE("a design whose rules fail is marked on every sheet and in every STEP file") {
  const ScratchFolder scratch;
  const std::string narrow = job_in(scratch, "gas:", "fixture: {slot: {width: 27 mm}}\ngas:");
  REQUIRE(run_tool({"design", narrow, "-o", (scratch / "out").string()}).status == 1);
  constexpr std::string_view mark = "NOT FOR USE", rule = "Slot is wide enough";
  std::string pages =
      run("/usr/bin/pdftotext", {"-raw", (scratch / "out/drawings/all.pdf").string(), "-"}).out;
  std::size_t count = 0;
  for (std::size_t end = pages.find('\f'); end != std::string::npos; end = pages.find('\f')) {
    const std::string page = pages.substr(0, end);
    CHECK_THAT(page, Catch::Contains(std::string(mark)) && Catch::Contains(std::string(rule)));
    pages.erase(0, end + 1);
    ++count;
  }
  CHECK(count > 15);
  std::vector<std::filesystem::path> models{scratch / "out/assembly.step"};
  for (const auto &entry : std::filesystem::directory_iterator(scratch / "out/parts")) {
    if (entry.path().extension() == ".step") {
      models.push_back(entry.path());
    }
  }
  CHECK(models.size() > 12);
  for (const auto &model : models) {
    INFO(model);
    std::string text = bytes_of(model);
    std::erase(text, '\n'); // strings go on in the next line
    CHECK_THAT(text.substr(0, text.find("FILE_NAME")), Catch::Contains(std::string(mark)));
    const auto product = text.find("= PRODUCT(");
    CHECK_THAT(text.substr(product, 1000), Catch::Contains(std::string(rule)));
  }
}

TEST_CASE("the sheets have the size that the job asks for, in every size there is") {
  for (const auto &[paper, larger] : {std::pair{a4, a3}, std::pair{letter, tabloid}}) {
    INFO(paper.name);
    const ScratchFolder scratch;
    const std::string job = job_in(scratch);
    write_bytes(job, bytes_of(job) + "\nshop: {sheet: " + paper.name + "}\n");
    REQUIRE(run_tool({"design", job, "-o", (scratch / "out").string()}).status <= 1);
    const auto read = read_drawings(scratch / "out", {paper, larger});
    INFO(read.err);
    CHECK(read.status == 0);
    CHECK(read_drawings(scratch / "out", {larger}).status == 1); // the reader can say no
  }
}
