// purgewright-solids JOB FOLDER VERSION [KEY=NUMBER]...: builds a job's solids and writes them into FOLDER,
// with their drawings, the setup sheet and plots. Started by `purgewright design`, which stays quick to start
// because the many libraries of the geometry kernel and of lettering are loaded here alone, and which
// survives a crash of the kernel.
//
// KEY=NUMBER states a job value in SI that the job leaves open.
//
// A line on stdout says what begins, or, as `clash FIRST SECOND VOLUME`, which two parts share how much metal
// in cubic metres; a failure says why on stderr. Exit status: as the command line's.
#include "purgewright/cli/exit_code.hpp"
#include "purgewright/drawing/sheets.hpp"
#include "purgewright/drawing/writers.hpp"
#include "purgewright/dxf/writer.hpp"
#include "purgewright/exchange/file_error.hpp"
#include "purgewright/exchange/fixture_files.hpp"
#include "purgewright/exchange/silence.hpp"
#include "purgewright/pages/plots.hpp"
#include "purgewright/pages/setup_sheet.hpp"
#include "purgewright/report/manifest.hpp"
#include "purgewright/solids/kernel/solid.hpp"

#include "exchange/file.hpp"

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <charconv>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <signal.h>
#include <span>
#include <stdexcept>
#include <string>
#include <sys/prctl.h>
#include <utility>

namespace {

using purgewright::cli::ExitCode;

void say(std::FILE *stream, std::string_view line) {
  const std::string whole = fmt::format("{}\n", line);
  std::fwrite(whole.data(), 1, whole.size(), stream);
  std::fflush(stream);
}

// Files carry a date chosen from outside, never the clock, so that the same job gives the same bytes.
std::string time_stamp() {
  std::time_t seconds = 0;
  if (const char *epoch = std::getenv("SOURCE_DATE_EPOCH")) {
    const std::string_view text(epoch);
    std::from_chars(text.data(), text.data() + text.size(), seconds);
  }
  return fmt::format("{:%Y-%m-%dT%H:%M:%S}", fmt::gmtime(seconds));
}

// The job with the values that were chosen for it.
purgewright::job::Resolution read(const char *job_path, std::span<char *> values) {
  auto reading = purgewright::job::read_draft(job_path);
  if (purgewright::job::has_errors(reading.problems)) {
    return {.job = std::nullopt, .problems = std::move(reading.problems)};
  }
  for (const std::string_view value : values) {
    const auto equals = value.find('=');
    const auto *field = purgewright::job::field(value.substr(0, equals));
    if (field == nullptr || equals == std::string_view::npos) {
      throw std::invalid_argument(fmt::format("'{}' is not KEY=NUMBER", value));
    }
    auto &entry = reading.draft[field->key];
    entry.stated = true;
    const char *end = value.data() + value.size();
    if (std::from_chars(value.data() + equals + 1, end, entry.number).ptr != end) {
      throw std::invalid_argument(fmt::format("'{}' is not KEY=NUMBER", value));
    }
  }
  return purgewright::job::resolve(reading.draft);
}

void write_pages(const std::filesystem::path &folder, const char *job_path, const purgewright::job::Job &job,
                 std::span<const purgewright::solids::Clash> clashes, const char *version) {
  namespace exchange = purgewright::exchange;
  namespace pages = purgewright::pages;
  say(stdout, "setup sheet and plots");
  auto design = purgewright::checks::evaluate(job);
  design.solids_known = true;
  for (const auto &clash : clashes) {
    design.clashes.push_back({clash.first, clash.second, clash.shared});
  }
  const auto findings = purgewright::report::find(std::move(design));
  const pages::SheetMark mark{.job_sha256 = purgewright::report::sha256(exchange::read_bytes(job_path)),
                              .tool_version = version};
  exchange::write_bytes(folder / "setup-sheet.pdf", pages::setup_sheet_pdf(findings, mark));
  std::filesystem::create_directory(folder / "plots");
  exchange::write_bytes(folder / "plots/temperatures.svg", pages::temperatures_svg(findings));
  exchange::write_bytes(folder / "plots/oxygen.svg", pages::oxygen_svg(findings));
}

ExitCode build(const char *job_path, const char *folder, const char *version, std::span<char *> values) {
  const auto resolution = read(job_path, values);
  if (!resolution.job) {
    for (const auto &problem : resolution.problems) {
      say(stderr, purgewright::job::to_text(problem));
    }
    return ExitCode::bad_input;
  }
  const auto &job = *resolution.job;
  const auto layout = purgewright::fixture::lay_out(job);
  const purgewright::exchange::StepHeader header{.time_stamp = time_stamp(),
                                                 .author = job.identity.prepared_by,
                                                 .originating_system =
                                                     fmt::format("purgewright {}", version)};
  const auto volumes = purgewright::fixture::volumes(job, layout);
  const auto written = purgewright::exchange::write_fixture_files(
      folder, job, layout, volumes, header, [](std::string_view step) { say(stdout, step); });
  write_pages(folder, job_path, job, written.clashes, version);
  for (const auto &clash : written.clashes) {
    say(stdout, fmt::format("clash {} {} {}", clash.first, clash.second, clash.shared.value()));
  }
  say(stdout, "drawing sheets");
  const purgewright::drawing::Issue issue{
      .date = purgewright::drawing::date_of_epoch(std::getenv("SOURCE_DATE_EPOCH")),
      .program = header.originating_system};
  const auto drawings = std::filesystem::path(folder) / "drawings";
  const auto sheets = purgewright::drawing::make_sheets(job, layout, volumes, written.assembly, issue);
  purgewright::drawing::write_drawings(drawings, sheets);
  purgewright::dxf::write_drawings(drawings, sheets);
  return ExitCode::done;
}

ExitCode guarded(const char *job_path, const char *folder, const char *version, std::span<char *> values) {
  try {
    return build(job_path, folder, version, values);
  } catch (const purgewright::exchange::FileError &error) {
    say(stderr, fmt::format("error: {}: {}", error.path.string(), error.reason));
    return ExitCode::cannot_write;
  } catch (const purgewright::drawing::WriteError &error) {
    say(stderr, fmt::format("error: {}: {}", error.path.string(), error.reason));
    return ExitCode::cannot_write;
  } catch (const purgewright::solids::kernel::SolidError &error) {
    say(stderr, fmt::format("internal fault: {}: {} ({}): {}", error.part, error.operation, error.inputs_mm,
                            error.kernel_text));
  } catch (const std::exception &error) {
    say(stderr, fmt::format("internal fault: {}", error.what()));
  }
  return ExitCode::internal_fault;
}

} // namespace

int main(int argc, char **argv) {
  ::prctl(PR_SET_PDEATHSIG,
          SIGKILL); // an orphan would go on writing into a folder that the next run sweeps away
  purgewright::exchange::silence_kernel();
  constexpr int fixed = 4; // words before the values
  if (argc < fixed) {
    say(stderr, "purgewright-solids JOB FOLDER VERSION is started by `purgewright design`; use that");
    return static_cast<int>(ExitCode::bad_input);
  }
  return static_cast<int>(
      guarded(argv[1], argv[2], argv[3], std::span(argv, static_cast<std::size_t>(argc)).subspan(fixed)));
}
