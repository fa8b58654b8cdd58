// All sheets of a design: drawn, and written in every format.
#include "examples.hpp"

#include "purgewright/drawing/sheets.hpp"
#include "purgewright/drawing/writers.hpp"
#include "purgewright/dxf/writer.hpp"

#include <benchmark/benchmark.h>

#include <filesystem>
#include <unistd.h>

namespace {

using namespace purgewright;

void sheets(benchmark::State &state) {
  const job::Job job = bench::example_job(bench::examples.at(static_cast<std::size_t>(state.range(0))));
  const auto layout = fixture::lay_out(job);
  const auto volumes = fixture::volumes(job, layout);
  const auto assembly = solids::build_assembly(job, layout);
  const auto folder =
      std::filesystem::temp_directory_path() / ("purgewright-bench-sheets-" + std::to_string(::getpid()));
  for (auto _ : state) {
    const auto made = drawing::make_sheets(job, layout, volumes, assembly, {});
    drawing::write_drawings(folder, made);
    dxf::write_drawings(folder, made);
  }
  std::filesystem::remove_all(folder);
}

BENCHMARK(sheets)->DenseRange(0, 2)->Unit(benchmark::kMillisecond)->Iterations(3); // goal 2 s

} // namespace

BENCHMARK_MAIN();
