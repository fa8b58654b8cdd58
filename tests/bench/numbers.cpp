// Designs without solids: what `check` and a sweep pay for one.
#include "examples.hpp"

#include "purgewright/checks/design.hpp"
#include "purgewright/job/draft.hpp"
#include "purgewright/report/compare.hpp"
#include "purgewright/report/results.hpp"

#include <benchmark/benchmark.h>

namespace {

using namespace purgewright;

std::string name_of(const benchmark::State &state) {
  return bench::examples.at(static_cast<std::size_t>(state.range(0)));
}

void read(benchmark::State &state) {
  const std::string path = bench::example_path(name_of(state));
  for (auto _ : state) {
    benchmark::DoNotOptimize(job::read_draft(path));
  }
}

void resolve(benchmark::State &state) {
  const job::DraftReading reading = job::read_draft(bench::example_path(name_of(state)));
  for (auto _ : state) {
    benchmark::DoNotOptimize(job::resolve(reading.draft));
  }
}

void lay_out(benchmark::State &state) {
  const job::Job job = bench::example_job(name_of(state));
  for (auto _ : state) {
    benchmark::DoNotOptimize(fixture::lay_out(job));
  }
}

void closed_volumes(benchmark::State &state) {
  const job::Job job = bench::example_job(name_of(state));
  const auto layout = fixture::lay_out(job);
  for (auto _ : state) {
    benchmark::DoNotOptimize(fixture::volumes(job, layout));
  }
}

void evaluate(benchmark::State &state) {
  const job::Job job = bench::example_job(name_of(state));
  for (auto _ : state) {
    benchmark::DoNotOptimize(checks::evaluate(job));
  }
}

void evaluate_closed_form(benchmark::State &state) {
  const job::Job job = bench::example_job(name_of(state));
  for (auto _ : state) {
    benchmark::DoNotOptimize(checks::evaluate_closed_form(job));
  }
}

// One step of a sweep: a value changed, resolved, evaluated, measured.
void sweep(benchmark::State &state) {
  job::DraftReading reading = job::read_draft(bench::example_path(name_of(state)));
  auto &entry = reading.draft[job::field("fixture.wall")->key];
  entry.stated = true;
  int step = 0;
  for (auto _ : state) {
    entry.number = 4e-3 + 1e-6 * double(step++ % 1000);
    job::Resolution resolution = job::resolve(reading.draft);
    benchmark::DoNotOptimize(report::measure(checks::evaluate_closed_form(std::move(*resolution.job))));
  }
  state.SetItemsProcessed(state.iterations());
}

void find(benchmark::State &state) {
  const job::Job job = bench::example_job(name_of(state));
  for (auto _ : state) {
    benchmark::DoNotOptimize(report::results_json(report::find(checks::evaluate(job))));
  }
}

void plan_heat(benchmark::State &state) {
  const job::Job job = bench::example_job(name_of(state));
  const auto layout = fixture::lay_out(job);
  const auto detail = state.range(1) == 0 ? heat::Detail::fine : heat::Detail::coarse;
  for (auto _ : state) {
    benchmark::DoNotOptimize(heat::plan_heat(job, layout, {.detail = detail}));
  }
}

BENCHMARK(read)->DenseRange(0, 2)->Unit(benchmark::kMicrosecond);
BENCHMARK(resolve)->DenseRange(0, 2)->Unit(benchmark::kMicrosecond);
BENCHMARK(lay_out)->DenseRange(0, 2)->Unit(benchmark::kMicrosecond);
BENCHMARK(closed_volumes)->DenseRange(0, 2)->Unit(benchmark::kMicrosecond);
BENCHMARK(evaluate)->DenseRange(0, 2)->Unit(benchmark::kMicrosecond);
BENCHMARK(evaluate_closed_form)->DenseRange(0, 2)->Unit(benchmark::kMicrosecond);
BENCHMARK(sweep)->DenseRange(0, 2)->Unit(benchmark::kMicrosecond);
BENCHMARK(plan_heat)->ArgsProduct({{0, 1, 2}, {0, 1}})->Unit(benchmark::kMillisecond); // 0 fine, 1 coarse
BENCHMARK(find)->DenseRange(0, 2)->Unit(benchmark::kMicrosecond);

} // namespace

BENCHMARK_MAIN();
