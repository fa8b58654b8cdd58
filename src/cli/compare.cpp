#include "commands.hpp"
#include "kept_rows.hpp"
#include "output_folder.hpp"
#include "signals.hpp"

#include "purgewright/files/text.hpp"
#include "purgewright/html/comparison_page.hpp"
#include "purgewright/study/comparison.hpp"

#include "purgewright/files/file.hpp"

#include <fmt/format.h>

#include <chrono>
#include <filesystem>
#include <optional>
#include <utility>

namespace purgewright::cli {
namespace {

// Each file read once; those that cannot be read are told with the rest of their faults.
std::vector<job::Sources> gather_all(const std::vector<std::string> &paths) {
  std::vector<job::Sources> all;
  all.reserve(paths.size());
  for (const auto &path : paths) {
    all.push_back(job::gather(path));
  }
  return all;
}

std::vector<report::ReadJob> read_jobs(const std::vector<job::Sources> &all) {
  std::vector<report::ReadJob> jobs;
  jobs.reserve(all.size());
  for (const auto &sources : all) {
    jobs.push_back(read_job_of(job::read_draft(sources).draft[job::Key::job_name].text, sources));
  }
  return jobs;
}

// What does not go together, or an empty text.
std::string misused(const CompareOptions &options) {
  const bool sweep = !options.vary.empty();
  if (options.merge && (sweep || options.quick || !options.shard.empty() || !options.wanted.show.empty() ||
                        !options.wanted.rank.empty())) {
    return "--merge takes what the pieces were made with: give their folders alone";
  }
  if (options.quick && !sweep) {
    return "--quick is for sweeps: give --vary";
  }
  if (!options.shard.empty() && !sweep) {
    return "--shard is for sweeps: give --vary";
  }
  if (sweep && options.jobs.size() != 1) {
    return "--vary sweeps one job; give one file";
  }
  return {};
}

constexpr const char *piece_file = "piece.json";

// As manifests name it: a piece took as long as its share of the sweep and is replaced by the same piece
// alone.
constexpr std::string_view whole_command = "compare", piece_command = "compare --shard ";

// What is to be written: the comparison and what it was made from.
struct Made {
  report::Comparison comparison;
  std::vector<report::ReadJob> jobs;
};

// Where it goes, and what the folder is called by its manifest.
struct Place {
  std::string target, kind;
};

Place place_of(const CompareOptions &options, report::ShardOf piece) {
  return {options.output.empty() ? "out/compare" : options.output,
          options.shard.empty() ? std::string(whole_command)
                                : fmt::format("{}{}/{}", piece_command, piece.index, piece.count)};
}

void write_manifest(const OutputFolder &folder, const std::string &kind,
                    const std::vector<report::ReadJob> &jobs) {
  folder.write(
      "manifest.json",
      report::manifest_json(folder.staging(), {.command = kind, .version = tool_version, .jobs = jobs}));
}

ExitCode outcome(const report::Overview &all) {
  return all.any_fails() ? ExitCode::rule_fails : ExitCode::done;
}

std::string where(const Place &place) {
  return fmt::format("\nFiles are in {}\n", files::printable(place.target));
}

void write_tables(const OutputFolder &folder, const report::Comparison &comparison) {
  folder.write("comparison.csv", report::comparison_csv(comparison));
  folder.write("comparison.json", report::comparison_json(comparison));
  if (comparison.designs.size() <= html::most_designs_shown) {
    folder.write("comparison.html", html::comparison_page(comparison, tool_version));
  }
}

// Nothing when there is a fault, which then stands on stderr.
std::optional<Made> compared(const CompareOptions &options) {
  const auto all = gather_all(options.jobs);
  study::Comparing comparing = study::compare(all, options.wanted);
  if (complain_of(comparing.problems) || !comparing.comparison) {
    return std::nullopt;
  }
  return Made{std::move(*comparing.comparison), read_jobs(all)};
}

Made pieces_together(const CompareOptions &options) {
  std::vector<report::Shard> shards;
  for (const std::string &folder : options.jobs) {
    const auto path = std::filesystem::path(folder) / piece_file;
    try {
      shards.push_back(report::read_shard(report::read_as_listed(folder, piece_file, piece_command),
                                          files::printable(path.string())));
    } catch (const files::FileError &error) {
      throw report::BadShard(fmt::format("{}: {}", files::printable(error.path.string()), error.reason));
    }
  }
  report::Shard whole = report::merged(std::move(shards));
  return {.comparison = std::move(whole.comparison), .jobs = {std::move(whole.job)}};
}

ExitCode compare_jobs(const CompareOptions &options) {
  const std::optional<Made> made = options.merge ? pieces_together(options) : compared(options);
  if (!made) {
    return ExitCode::bad_input;
  }
  const report::Comparison &comparison = made->comparison;
  const Place place = place_of(options, {});
  {
    Signals signals;
    OutputFolder folder(place.target, place.kind);
    write_tables(folder, comparison);
    write_manifest(folder, place.kind, made->jobs);
    signals.check();
    folder.commit();
  }
  print(options.json ? report::comparison_json(comparison)
                     : report::comparison_text(comparison) + where(place));
  return outcome(report::overview(comparison));
}

// ---- sweeps: rows go to a file as they come, and from there into the folder

// Of more rows, comparison.csv and the lines alone are written, from one row to the next.
constexpr std::size_t most_listed = 10'000;

struct Swept {
  const CompareOptions &options;
  const study::Sweep &sweep;
  const std::vector<report::ReadJob> &jobs;
  const Place &place;
  report::ShardOf piece;
};

// Builds of one version differ while it is not released: rows and pieces of two are not mixed.
std::string this_build() {
  return fmt::format("{}, build {:.16}", tool_version, report::sha256(files::read("/proc/self/exe")));
}

std::string kept_head(const Swept &s) {
  return report::kept_head({.of = s.piece,
                            .version = this_build(),
                            .job = s.jobs.front(),
                            .sweeps = s.options.vary,
                            .comparison = s.sweep.head()});
}

// The rows that are still missing. False when one is no design, which then stands on stderr.
bool make_rows(const Swept &s, KeptRows &kept, report::Overview &all, Signals &signals) {
  using Clock = std::chrono::steady_clock;
  constexpr std::chrono::milliseconds between{200};
  kept.each([&](const report::ComparedDesign &row) { all.add(row); });
  if (kept.count() > 0) {
    complain(fmt::format("goes on after {} of {} designs, kept in {}", kept.count(), s.sweep.rows(),
                         kept.path().string()));
  }
  Progress progress;
  auto said = Clock::now();
  const auto take = [&](const report::ComparedDesign &row) {
    signals.check();
    all.add(row);
    kept.add(row);
    if (Clock::now() - said > between) {
      said = Clock::now();
      progress.say(fmt::format("{} of {} designs", kept.count(), s.sweep.rows()));
    }
  };
  try {
    return !complain_of(s.sweep.make(kept.count(), take));
  } catch (const Interrupted &) {
    if (kept.count() > 0 && kept.stands()) {
      complain(fmt::format("{} of {} designs are kept in {}; the same command goes on from there",
                           kept.count(), s.sweep.rows(), kept.path().string()));
    }
    throw;
  }
}

report::Comparison all_of(const Swept &s, KeptRows &kept) {
  report::Comparison comparison = s.sweep.head();
  comparison.designs.reserve(kept.count());
  kept.each([&](report::ComparedDesign &&row) { comparison.designs.push_back(std::move(row)); });
  return comparison;
}

void write_piece(const OutputFolder &folder, const Swept &s, KeptRows &kept) {
  folder.write(piece_file, report::shard_json({.of = s.piece,
                                               .version = this_build(),
                                               .job = s.jobs.front(),
                                               .sweeps = s.options.vary,
                                               .comparison = all_of(s, kept)}));
}

void write_table(const OutputFolder &folder, const Swept &s, KeptRows &kept, const report::Overview &all) {
  folder.write_pieces("comparison.csv", [&](const OutputFolder::Sink &sink) {
    report::SweepTable table(s.sweep.head(), all);
    sink(table.head());
    kept.each([&](const report::ComparedDesign &row) { sink(table.row(row)); });
  });
}

void print_rows(const Swept &s, KeptRows &kept, const report::Overview &all) {
  if (!s.options.shard.empty()) {
    print(fmt::format("Piece {} of the sweep alone\n", s.options.shard));
  }
  report::SweepLines lines(s.sweep.head(), all);
  print(lines.head());
  kept.each([&](const report::ComparedDesign &row) { print(lines.row(row)); });
  print(lines.foot());
}

ExitCode write_sweep(const Swept &s) {
  report::Overview all(s.sweep.head().ranked);
  std::optional<KeptRows> kept;
  const bool listed = s.sweep.rows() <= most_listed;
  bool begun_before = false; // rows of an interrupted run are not lost by another fault
  const auto write = [&] {
    Signals signals;
    OutputFolder folder(s.place.target, s.place.kind);
    kept.emplace(s.place.target, kept_head(s));
    begun_before = kept->count() > 0;
    if (!make_rows(s, *kept, all, signals)) {
      kept->remove();
      return false;
    }
    study::require_ranked_known(s.sweep.head(), all);
    if (!s.options.shard.empty()) {
      write_piece(folder, s, *kept);
    } else if (listed) {
      write_tables(folder, all_of(s, *kept));
    } else {
      write_table(folder, s, *kept, all);
    }
    write_manifest(folder, s.place.kind, s.jobs);
    signals.check();
    folder.commit();
    kept->remove();
    return true;
  };
  try {
    if (!write()) {
      return ExitCode::bad_input;
    }
  } catch (const Interrupted &) { // to go on from
    throw;
  } catch (...) {
    if (kept && !begun_before) {
      kept->remove();
    }
    throw;
  }
  if (s.options.json) {
    print(report::comparison_json(all_of(s, *kept)));
    return outcome(all);
  }
  print_rows(s, *kept, all);
  print((listed ? ""
                : fmt::format("\nOf more than {} designs there is no comparison.json and no page\n",
                              most_listed)) +
        where(s.place));
  return outcome(all);
}

ExitCode sweep_job(const CompareOptions &options) {
  const auto sources = gather_all(options.jobs);
  study::Wanted wanted = options.wanted;
  if (!options.shard.empty()) {
    wanted.piece = report::parse_shard(options.shard);
  }
  const study::Sweep sweep(sources.front(), options.vary,
                           options.quick ? study::Judging::quick : study::Judging::every_rule, wanted);
  if (complain_of(sweep.problems())) {
    return ExitCode::bad_input;
  }
  if (options.json && sweep.rows() > most_listed) {
    complain(fmt::format("error: --json: at most {} designs; comparison.csv has them all without it",
                         most_listed));
    return ExitCode::bad_input;
  }
  const auto jobs = read_jobs(sources);
  const Place place = place_of(options, wanted.piece);
  return write_sweep({options, sweep, jobs, place, wanted.piece});
}

} // namespace

ExitCode run_compare(const CompareOptions &options) {
  if (const std::string fault = misused(options); !fault.empty()) {
    complain("error: " + fault);
    return ExitCode::bad_input;
  }
  try {
    return options.vary.empty() ? compare_jobs(options) : sweep_job(options);
  } catch (const study::BadSweep &error) {
    complain(fmt::format("error: {}", error.what()));
  } catch (const report::BadShard &error) {
    complain(fmt::format("error: {}", error.what()));
  }
  return ExitCode::bad_input;
}

} // namespace purgewright::cli
