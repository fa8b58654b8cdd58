// The kernel's own work for the same files: Booleans, chamfer, meshes, STEP, STL and glb, with nothing else.
#include "bare_files.hpp"
#include "examples.hpp"

#include "purgewright/solids/parts.hpp"

#include <benchmark/benchmark.h>

#include <filesystem>
#include <unistd.h>

namespace {

using namespace purgewright;

void bare_kernel(benchmark::State &state) {
  const job::Job job = bench::example_job(bench::examples.at(static_cast<std::size_t>(state.range(0))));
  const auto layout = fixture::lay_out(job);
  const auto folder =
      std::filesystem::temp_directory_path() / ("purgewright-bench-kernel-" + std::to_string(::getpid()));
  std::filesystem::create_directory(folder);
  for (auto _ : state) {
    const auto assembly = solids::build_assembly(job, layout);
    solids::measure_gas(job, layout, assembly);
    bench::write_bare_files(folder, assembly);
  }
  std::filesystem::remove_all(folder);
}

BENCHMARK(bare_kernel)->DenseRange(0, 2)->Unit(benchmark::kMillisecond)->Iterations(3);

} // namespace

BENCHMARK_MAIN();
