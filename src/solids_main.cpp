// purgewright-solids FOLDER: builds a job's solids and writes them into FOLDER, with their drawings, the
// setup sheet and plots. Started by `purgewright design`, which stays quick to start because the many
// libraries of the geometry kernel and of lettering are loaded here alone, and which survives a crash of the
// kernel.
//
// The job comes as a message on stdin and the answer goes to stdout (study/request.hpp), also why it failed.
// Exit status: as the command line's.
#include "purgewright/cli/exit_code.hpp"
#include "purgewright/drawing/sheets.hpp"
#include "purgewright/drawing/writers.hpp"
#include "purgewright/dxf/writer.hpp"
#include "purgewright/exchange/fixture_files.hpp"
#include "purgewright/exchange/silence.hpp"
#include "purgewright/files/file.hpp"
#include "purgewright/files/text.hpp"
#include "purgewright/letters/fonts.hpp"
#include "purgewright/pages/plots.hpp"
#include "purgewright/pages/setup_sheet.hpp"
#include "purgewright/solids/kernel/solid.hpp"
#include "purgewright/study/request.hpp"
#include "purgewright/study/study.hpp"

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <charconv>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <poll.h>
#include <signal.h>
#include <string>
#include <sys/prctl.h>
#include <unistd.h>
#include <utility>
#include <vector>

namespace {

namespace files = purgewright::files;
namespace study = purgewright::study;
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

// The setup sheet says what cures a failing rule; of a job with values chosen for it the draft has none.
purgewright::report::Findings judged(const study::Request &request, const purgewright::job::Job &job,
                                     const std::vector<purgewright::solids::Clash> &clashes) {
  say(stdout, "judging rules");
  auto design = purgewright::checks::evaluate(job);
  design.solids_known = true;
  for (const auto &clash : clashes) {
    design.clashes.push_back({clash.first, clash.second, clash.shared});
  }
  auto findings = purgewright::report::find(std::move(design));
  if (request.chosen.empty()) {
    purgewright::checks::add_changes(purgewright::job::read_draft(request.sources).draft, findings.design,
                                     findings.rules);
  }
  return findings;
}

void write_pages(const std::filesystem::path &folder, const study::Request &request,
                 const purgewright::report::Findings &findings) {
  namespace pages = purgewright::pages;
  say(stdout, "setup sheet and plots");
  const pages::SheetMark mark{.job_sha256 = purgewright::report::sha256(request.sources.job.bytes),
                              .tool_version = request.version};
  files::write(folder / "setup-sheet.pdf", pages::setup_sheet_pdf(findings, mark));
  files::make_folder(folder / "plots");
  files::write(folder / "plots/temperatures.svg", pages::temperatures_svg(findings));
  files::write(folder / "plots/oxygen.svg", pages::oxygen_svg(findings));
}

void name_what_stands_in(const std::filesystem::path &folder) {
  for (const auto &[path, mark] : purgewright::report::marks_below(folder)) {
    say(stdout, study::made_line(path, mark.sha256));
  }
}

void write_all(const std::filesystem::path &folder, const study::Request &request,
               const purgewright::job::Job &job) {
  namespace drawing = purgewright::drawing;
  const auto on_step = [](std::string_view step) { say(stdout, step); };
  const auto layout = purgewright::fixture::lay_out(job);
  const auto volumes = purgewright::fixture::volumes(job, layout);
  const auto built = purgewright::exchange::build_fixture(job, layout, volumes, on_step);
  const auto findings = judged(request, job, built.clashes);
  const auto failing = purgewright::report::titles(findings, purgewright::checks::Status::fail);
  const purgewright::exchange::StepHeader header{
      .time_stamp = time_stamp(),
      .author = job.identity.prepared_by,
      .originating_system = fmt::format("purgewright {}", request.version),
      .caution = failing.empty() ? "" : fmt::format("NOT FOR USE. Broken: {}", fmt::join(failing, "; "))};
  say(stdout, "writing what there is to look at");
  purgewright::exchange::write_view(folder, job, layout, built, header);
  write_pages(folder, request, findings);
  for (const auto &clash : findings.design.clashes) {
    say(stdout, study::clash_line(clash));
  }
  name_what_stands_in(folder);
  say(stdout, study::view_line);
  const bool to_keep = request.extent == study::Extent::folder;
  if (to_keep) {
    purgewright::exchange::write_fixture_files(folder, job, layout, built, header, on_step);
  }
  say(stdout, "drawing sheets");
  const drawing::Issue issue{.date = drawing::date_of_epoch(std::getenv("SOURCE_DATE_EPOCH")),
                             .program = header.originating_system,
                             .failing = failing};
  const auto drawings = folder / "drawings";
  const auto sheets = drawing::make_sheets(job, layout, volumes, built.assembly, issue);
  drawing::write_drawings(drawings, sheets);
  if (to_keep) {
    purgewright::dxf::write_drawings(drawings, sheets);
  }
}

// Characters of the job's own texts that no font here has: the job must change, or the fonts. Throws
// FontError when there are none at all.
purgewright::job::Diagnostics undrawable(const purgewright::job::Job &job) {
  using purgewright::job::Key;
  namespace letters = purgewright::letters;
  const auto &identity = job.identity;
  purgewright::job::Diagnostics problems;
  for (const auto &[key, text] :
       {std::pair(Key::job_title, &identity.title), std::pair(Key::job_revision, &identity.revision),
        std::pair(Key::job_prepared_by, &identity.prepared_by)}) {
    for (const char *font : {letters::drawing_font, letters::page_font}) {
      if (const auto missing = letters::missing_in(*text, font)) {
        problems.push_back({.file = job.file,
                            .mark = job.origin(key).mark,
                            .key = std::string(purgewright::job::field(key).path),
                            .problem = fmt::format("no installed font has the character {} of '{}'",
                                                   files::code_text(*missing), files::shown(*text)),
                            .allowed = "characters of the installed fonts",
                            .nearest = {}});
        break;
      }
    }
  }
  return problems;
}

ExitCode refuse(const purgewright::job::Diagnostics &problems) {
  for (const auto &problem : problems) {
    say(stdout, study::fault_line(purgewright::job::to_text(problem)));
  }
  return ExitCode::bad_input;
}

ExitCode build(const std::filesystem::path &folder) {
  const std::string message = files::read(files::standard_input);
  const study::Request request = study::read_message(message);
  const auto resolution = study::chosen_job(request.sources, request.chosen);
  if (!resolution.job) {
    return refuse(resolution.problems);
  }
  if (const auto problems = undrawable(*resolution.job); !problems.empty()) {
    return refuse(problems);
  }
  write_all(folder, request, *resolution.job);
  name_what_stands_in(folder);
  say(stdout, study::of_line(purgewright::report::sha256(message)));
  return ExitCode::done;
}

// A line of the answer for each of the text's.
void fault(std::string_view text) {
  for (std::size_t end = 0; end != std::string_view::npos;) {
    end = text.find('\n');
    say(stdout, study::fault_line(text.substr(0, end)));
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  }
}

ExitCode guarded(const std::filesystem::path &folder) {
  try {
    return build(folder);
  } catch (const files::FileError &error) {
    fault(fmt::format("error: {}: {}", error.path.string(), error.reason));
    return ExitCode::cannot_write;
  } catch (const purgewright::solids::kernel::SolidError &error) {
    fault(fmt::format("internal fault: {}: {} ({}): {}", error.part, error.operation, error.inputs_mm,
                      error.kernel_text));
  } catch (const purgewright::letters::FontError &error) {
    fault(fmt::format("error: {}", error.what()));
  } catch (const std::exception &error) {
    fault(fmt::format("internal fault: {}", error.what()));
  }
  return ExitCode::internal_fault;
}

// An orphan would go on writing into a folder that the next run sweeps away: from now on this program dies
// with the one that started it. That one may have been killed while the libraries here were loading; then the
// line is dead.
bool lives_with_reader() {
  ::prctl(PR_SET_PDEATHSIG, SIGKILL);
  pollfd line{STDOUT_FILENO, 0, 0};
  return ::poll(&line, 1, 0) == 0 || (line.revents & (POLLHUP | POLLERR)) == 0;
}

} // namespace

int main(int argc, char **argv) {
  if (!lives_with_reader()) {
    return static_cast<int>(ExitCode::internal_fault);
  }
  purgewright::exchange::silence_kernel();
  if (argc != 2) {
    say(stderr, "purgewright-solids is started by `purgewright design`; use that");
    return static_cast<int>(ExitCode::bad_input);
  }
  return static_cast<int>(guarded(argv[1]));
}
