// purgewright-solids JOB FOLDER VERSION [KEY=NUMBER]...: builds a job's solids and writes them into FOLDER. Started by
// `purgewright design`, which stays quick to start because the geometry kernel's many libraries are loaded
// here alone, and which survives a crash of the kernel.
//
// KEY=NUMBER states a job value in SI that the job leaves open.
//
// A line on stdout says what begins, or, as `clash FIRST SECOND VOLUME`, which two parts share how much metal in
// cubic metres; a failure says why on stderr. Exit status: as the command line's.
#include "purgewright/cli/exit_code.hpp"
#include "purgewright/exchange/file_error.hpp"
#include "purgewright/exchange/fixture_files.hpp"
#include "purgewright/exchange/silence.hpp"
#include "purgewright/solids/kernel/solid.hpp"

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <charconv>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <signal.h>
#include <span>
#include <stdexcept>
#include <string>
#include <sys/prctl.h>

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
    std::from_chars(value.data() + equals + 1, value.data() + value.size(), entry.number);
  }
  return purgewright::job::resolve(reading.draft);
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
  const auto clashes = purgewright::exchange::write_fixture_files(
      folder, job, layout, purgewright::fixture::volumes(job, layout), header,
      [](std::string_view step) { say(stdout, step); });
  for (const auto &clash : clashes) {
    say(stdout, fmt::format("clash {} {} {}", clash.first, clash.second, clash.shared.value()));
  }
  return ExitCode::done;
}

ExitCode guarded(const char *job_path, const char *folder, const char *version, std::span<char *> values) {
  try {
    return build(job_path, folder, version, values);
  } catch (const purgewright::exchange::FileError &error) {
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
  return static_cast<int>(guarded(argv[1], argv[2], argv[3], std::span(argv, static_cast<std::size_t>(argc)).subspan(fixed)));
}
