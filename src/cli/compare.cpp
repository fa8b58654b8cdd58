#include "commands.hpp"
#include "output_folder.hpp"
#include "signals.hpp"

#include "purgewright/files/text.hpp"
#include "purgewright/html/comparison_page.hpp"
#include "purgewright/study/comparison.hpp"

#include "purgewright/files/file.hpp"

#include <fmt/format.h>

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
  report::ShardOf piece{};
};

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
  study::Wanted wanted = options.wanted;
  if (!options.shard.empty()) {
    wanted.piece = report::parse_shard(options.shard);
  }
  study::Comparing comparing =
      options.vary.empty()
          ? study::compare(all, wanted)
          : study::sweep(all.front(), options.vary,
                         options.quick ? study::Judging::quick : study::Judging::every_rule, wanted);
  if (complain_of(comparing.problems) || !comparing.comparison) {
    return std::nullopt;
  }
  return Made{std::move(*comparing.comparison), read_jobs(all), wanted.piece};
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

} // namespace

ExitCode run_compare(const CompareOptions &options) {
  std::optional<Made> made;
  try {
    if (const std::string fault = misused(options); !fault.empty()) {
      complain("error: " + fault);
      return ExitCode::bad_input;
    }
    made = options.merge ? pieces_together(options) : compared(options);
  } catch (const study::BadSweep &error) {
    complain(fmt::format("error: {}", error.what()));
    return ExitCode::bad_input;
  } catch (const report::BadShard &error) {
    complain(fmt::format("error: {}", error.what()));
    return ExitCode::bad_input;
  }
  if (!made) {
    return ExitCode::bad_input;
  }
  const report::Comparison &comparison = made->comparison;
  const std::string target = options.output.empty() ? "out/compare" : options.output;
  const std::string kind = options.shard.empty()
                               ? std::string(whole_command)
                               : fmt::format("{}{}/{}", piece_command, made->piece.index, made->piece.count);
  {
    Signals signals;
    OutputFolder folder(target, kind);
    if (options.shard.empty()) {
      write_tables(folder, comparison);
    } else {
      const report::Shard piece{.of = made->piece,
                                .version = std::string(tool_version),
                                .job = made->jobs.front(),
                                .sweeps = options.vary,
                                .comparison = comparison};
      folder.write(piece_file, report::shard_json(piece));
    }
    folder.write("manifest.json",
                 report::manifest_json(folder.staging(),
                                       {.command = kind, .version = tool_version, .jobs = made->jobs}));
    signals.check();
    folder.commit();
  }
  const std::string piece =
      options.shard.empty() ? "" : fmt::format("Piece {} of the sweep alone\n", options.shard);
  print(options.json ? report::comparison_json(comparison)
                     : piece + report::comparison_text(comparison) +
                           fmt::format("\nFiles are in {}\n", files::printable(target)));
  return report::any_fails(comparison) ? ExitCode::rule_fails : ExitCode::done;
}

} // namespace purgewright::cli
