#include "commands.hpp"
#include "output_folder.hpp"
#include "signals.hpp"
#include "solver_process.hpp"

#include "purgewright/files/file.hpp"
#include "purgewright/files/text.hpp"
#include "purgewright/flow/case.hpp"
#include "purgewright/flow/pictures.hpp"
#include "purgewright/flow/reading.hpp"
#include "purgewright/job/nearest.hpp"
#include "purgewright/units/parse.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <filesystem>
#include <iterator>
#include <utility>

namespace purgewright::cli {
namespace {

namespace fs = std::filesystem;

// The command line is wrong, or what it asks for is not there.
struct Refusal : std::runtime_error {
  using std::runtime_error::runtime_error;
};

flow::Stage stage_of(const FlowOptions &options) {
  std::vector<std::string_view> names;
  std::ranges::transform(flow::all_stages, std::back_inserter(names), flow::to_text);
  const auto stage = flow::stage_named(options.stage);
  if (!stage) {
    const auto nearest = job::nearest_choice(options.stage, names);
    throw Refusal(fmt::format("there is no stage '{}'; allowed: {}{}", files::shown(options.stage),
                              fmt::join(names, ", "), job::did_you_mean(nearest)));
  }
  return *stage;
}

std::optional<units::Time> duration_of(const FlowOptions &options) {
  if (options.duration.empty()) {
    return std::nullopt;
  }
  const auto read = units::parse_quantity(options.duration, units::Dimension::time);
  if (!read.si || *read.si <= 0.0) {
    throw Refusal(fmt::format("--duration: {}", read.si ? "it is not above 0" : read.problem));
  }
  return units::seconds(*read.si);
}

flow::Choice choice_of(const FlowOptions &options) {
  if (options.cells < flow::least_cells || options.cells > flow::most_cells) {
    throw Refusal(fmt::format("--cells: {} to {}", flow::least_cells, flow::most_cells));
  }
  if (options.processes && *options.processes < 1) {
    throw Refusal("--run: at least 1 process");
  }
  return {stage_of(options), options.cells, duration_of(options)};
}

flow::Case case_of(const checks::Design &design, const flow::Choice &choice) {
  if (!design.layout.buildable()) {
    throw Refusal("dimensions clash, the fixture cannot be built as asked; see check");
  }
  try {
    return flow::write_case(design.job, design.layout, design.volumes, design.purge, choice,
                            design.series.settled);
  } catch (const std::invalid_argument &error) {
    throw Refusal(error.what());
  }
}

void require_few(const FlowOptions &options, const flow::Case &written) {
  const std::size_t most = flow::most_processes(written.cells);
  if (options.processes && static_cast<std::size_t>(*options.processes) > most) {
    throw Refusal(fmt::format("--run: {} processes for {} cells; at most {}, with {} cells each",
                              *options.processes, written.cells, most, flow::least_cells_of_process));
  }
}

bool stands_in(const fs::path &folder, const flow::Case &written) {
  return std::ranges::all_of(written.files, [&](const flow::CaseFile &file) {
    std::error_code error;
    return fs::is_regular_file(folder / file.path, error) && files::read(folder / file.path) == file.text;
  });
}

void write_folder(const fs::path &target, const flow::Case &written, const study::Study &study,
                  Signals &signals) {
  OutputFolder folder(target, "flow");
  for (const flow::CaseFile &file : written.files) {
    folder.write(file.path, file.text);
  }
  folder.write(
      "manifest.json",
      report::manifest_json(folder.staging(),
                            {.command = "flow",
                             .version = tool_version,
                             .jobs = {read_job_of(study.findings.design.job.identity.name, study.sources)}}));
  signals.check();
  folder.commit();
}

void solve(const fs::path &target, const flow::Case &written, long processes, Signals &signals) {
  Progress progress;
  run_case(target, processes, signals, [&](units::Time time) {
    progress.say(fmt::format("{:.3g} s of {:.3g} s of flow", time.value(), written.duration.value()));
  });
}

// The probes' files, one for each time that the solver was started from.
std::vector<flow::ProbesFile> probes_files(const fs::path &target, flow::Stage stage) {
  std::vector<std::pair<double, fs::path>> runs;
  std::error_code error;
  for (const auto &entry : fs::directory_iterator(target / "postProcessing/probes", error)) {
    const std::string name = entry.path().filename().string();
    double from = 0.0;
    if (std::from_chars(name.data(), name.data() + name.size(), from).ec == std::errc()) {
      runs.emplace_back(from, entry.path());
    }
  }
  if (runs.empty()) {
    throw Refusal(fmt::format("{} holds no result yet; start it with --run", target.string()));
  }
  std::ranges::sort(runs);
  std::vector<flow::ProbesFile> probes;
  std::ranges::transform(runs, std::back_inserter(probes), [&](const auto &run) {
    const fs::path path = run.second / flow::field_name(stage);
    return flow::ProbesFile{files::printable(path.string()), files::read(path)};
  });
  return probes;
}

struct Field {
  fs::path path;
  units::Time at{};
};

// Of the last time written; absent while a run on several processes is under way.
std::optional<Field> last_field(const fs::path &target, flow::Stage stage) {
  std::optional<Field> last;
  for (const auto &entry : fs::directory_iterator(target)) {
    const std::string name = entry.path().filename().string();
    double time = 0.0;
    const bool whole =
        std::from_chars(name.data(), name.data() + name.size(), time).ptr == name.data() + name.size();
    const fs::path field = entry.path() / flow::field_name(stage);
    if (whole && time > 0.0 && (!last || time > last->at.value()) && fs::is_regular_file(field)) {
      last = Field{field, units::seconds(time)};
    }
  }
  return last;
}

void read_back(const fs::path &target, const flow::Case &written, const study::Study &study,
               Signals &signals) {
  const auto &design = study.findings.design;
  const auto record = flow::read_record(probes_files(target, written.choice.stage), design.job, written);
  const std::string text = flow::comparison_text(design.job, design.purge, written, record);
  const fs::path answer = target / "answer";
  OutputFolder folder(answer, "flow --read");
  folder.write("comparison.csv", flow::comparison_csv(design.job, design.purge, written, record));
  folder.write("oxygen.csv", flow::record_csv(record));
  folder.write("oxygen.svg", flow::curve_svg(design.job, design.purge, written, record));
  if (const auto last = last_field(target, written.choice.stage)) {
    const auto oxygen = flow::read_field(files::read(last->path), design.job, written);
    folder.write("slice.svg", flow::slice_svg(design.job, written, oxygen, last->at));
  }
  folder.write("manifest.json",
               report::manifest_json(folder.staging(),
                                     {.command = "flow --read",
                                      .version = tool_version,
                                      .jobs = {read_job_of(design.job.identity.name, study.sources)}}));
  signals.check();
  folder.commit();
  print(text + fmt::format("Tables and pictures are in {}\n", files::printable(answer.string())));
}

void run(const FlowOptions &options, const study::Study &study) {
  const auto &design = study.findings.design;
  const flow::Choice choice = choice_of(options);
  const flow::Case written = case_of(design, choice);
  const fs::path target = options.output.empty()
                              ? fmt::format("out/{}-flow-{}", design.job.identity.name, options.stage)
                              : options.output;
  const bool solving = options.processes.has_value();
  require_few(options, written);
  const auto solver = flow::is_hot(choice.stage) ? flow::hot_solver : flow::cold_solver;
  if (solving && !program_in_path(solver)) {
    throw Refusal(fmt::format("OpenFOAM is not installed: {}", flow::install_command));
  }
  Signals signals;
  const bool there = stands_in(target, written);
  if (options.read && !solving && !there) {
    throw Refusal(fmt::format("{} does not hold this case; write and solve it with --run", target.string()));
  }
  if (!there) {
    write_folder(target, written, study, signals);
  }
  if (solving) {
    solve(target, written, *options.processes, signals);
  }
  if (options.read) {
    read_back(target, written, study, signals);
  } else {
    print(fmt::format("{} cells, {:.3g} s of flow; the case is in {}\n", written.cells,
                      written.duration.value(), files::printable(target.string())));
  }
}

} // namespace

ExitCode run_flow(const FlowOptions &options) {
  const auto study = load(options.job);
  if (!study) {
    return ExitCode::bad_input;
  }
  try {
    run(options, *study);
  } catch (const Refusal &refusal) {
    complain(fmt::format("error: {}", refusal.what()));
    return ExitCode::bad_input;
  } catch (const flow::BadRecord &bad) {
    complain(fmt::format("error: {}", bad.what()));
    return ExitCode::bad_input;
  } catch (const SolverFault &fault) {
    complain(fmt::format("error: {}", fault.what()));
    return ExitCode::internal_fault;
  }
  return outcome(study->findings);
}

} // namespace purgewright::cli
