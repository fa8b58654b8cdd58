// A design's solids and files as purgewright-solids makes them, every check and measure included.
#include "examples.hpp"

#include "purgewright/exchange/fixture_files.hpp"

#include <benchmark/benchmark.h>

#include <filesystem>
#include <unistd.h>

namespace {

using namespace purgewright;

void design(benchmark::State &state) {
  const job::Job job = bench::example_job(bench::examples.at(static_cast<std::size_t>(state.range(0))));
  const auto layout = fixture::lay_out(job);
  const auto volumes = fixture::volumes(job, layout);
  const auto quiet = [](std::string_view) {};
  const auto folder =
      std::filesystem::temp_directory_path() / ("purgewright-bench-files-" + std::to_string(::getpid()));
  std::filesystem::create_directory(folder);
  for (auto _ : state) {
    const auto built = exchange::build_fixture(job, layout, volumes, quiet);
    exchange::write_view(folder, job, layout, built, {.time_stamp = "1970-01-01T00:00:00"});
    exchange::write_fixture_files(folder, job, layout, built, {.time_stamp = "1970-01-01T00:00:00"}, quiet);
  }
  std::filesystem::remove_all(folder);
}

BENCHMARK(design)->DenseRange(0, 2)->Unit(benchmark::kMillisecond)->Iterations(3);

} // namespace

BENCHMARK_MAIN();
