#include "purgewright/cli/app.hpp"

#include "commands.hpp"
#include "kernel_process.hpp"
#include "signals.hpp"

#include "purgewright/files/file.hpp"
#include "purgewright/files/text.hpp"
#include "purgewright/job/nearest.hpp"
#include "purgewright/report/shard.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <csignal>
#include <cstddef>
#include <filesystem>
#include <functional>
#include <optional>
#include <span>
#include <sstream>
#include <string>
#include <string_view>
#include <system_error>
#include <vector>

namespace purgewright::cli {
namespace {

struct Options {
  NewOptions fresh;
  CheckOptions check;
  DesignOptions design;
  CompareOptions compare;
  FlowOptions flow;
  TraceOptions trace;
  WatchOptions watch;
};

// What is written goes under a name: nothing goes to standard output but by --json.
std::string a_name(const std::string &name) {
  if (name.empty()) {
    return "a name is wanted, not an empty one";
  }
  return name == "-" ? "'-' is no place to write to; of that name itself: ./-" : "";
}

std::string a_value(const std::string &text) {
  return text.empty() ? "a value is wanted, not an empty one" : "";
}

std::string a_piece(const std::string &text) {
  try {
    report::parse_shard(text);
    return {};
  } catch (const report::BadShard &error) {
    return error.what();
  }
}

std::string a_port(const std::string &text) {
  constexpr int most = 65535;
  int port = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), port);
  const bool whole = read.ec == std::errc() && read.ptr == text.data() + text.size();
  return whole && port >= 0 && port <= most
             ? ""
             : fmt::format("a port is a number up to {}; 0 is any that is free", most);
}

void describe(CLI::App &app, Options &options, std::function<ExitCode()> &command) {
  app.set_version_flag("--version", fmt::format("purgewright {}", tool_version));
  app.require_subcommand(1);

  auto *fresh = app.add_subcommand(
      "new", "Write a commented job file to start from, and beside it job.schema.json for editors");
  fresh->add_option("template", options.fresh.template_name, "flat-cap, domed-cap or spigot-cap");
  fresh
      ->add_option("--tube", options.fresh.tube,
                   "Instead of a template: OUTSIDE x WALL x LENGTH, such as '1 in x 0.035 in x 8 in'")
      ->check(a_value);
  fresh->add_option("--cap", options.fresh.cap, "With --tube: flat, domed or spigot; flat by default")
      ->check(a_value);
  fresh->add_option("-o,--output", options.fresh.output, "Job file to write; TEMPLATE.yaml by default")
      ->check(a_name);
  fresh->callback([&] { command = [&] { return run_new(options.fresh); }; });

  auto *check = app.add_subcommand("check", "All numbers and rules of a job, without files");
  check->add_option("job", options.check.job, "Job file")->required();
  check->add_flag("--json", options.check.json, "Print results.json");
  check->add_flag("--all", options.check.all,
                  "Reasons, parts with their chips, rules that pass and defaults as well");
  check->add_flag("--solve", options.check.solve,
                  "Choose what the job leaves open, kinds included: smallest chamber that passes every rule");
  check->add_flag("--strict", options.check.strict, "No effect here: nothing is written");
  check->callback([&] { command = [&] { return run_check(options.check); }; });

  auto *design = app.add_subcommand("design", "Parts as STEP and STL, assembly, drawings, report, results");
  design->add_option("job", options.design.job, "Job file")->required();
  design->add_option("-o,--output", options.design.output, "Folder to write; out/NAME by default")
      ->check(a_name);
  design->add_flag("--json", options.design.json, "Print results.json");
  design->add_flag(
      "--solve", options.design.solve,
      "Choose what the job leaves open, kinds included: smallest chamber that passes every rule");
  design->add_flag("--strict", options.design.strict, "Write nothing when a rule fails");
  design->add_flag("--open", options.design.open, "Open the report in the browser");
  design->callback([&] { command = [&] { return run_design(options.design); }; });

  auto *compare = app.add_subcommand(
      "compare", "Designs side by side, or a sweep of one; exit status 1 when any of them fails a rule");
  compare->add_option("jobs", options.compare.jobs, "Job files; with --merge, folders")->required();
  compare->add_option("--vary", options.compare.vary, "KEY=FROM:TO:STEP, may be given more than once");
  compare
      ->add_option("--shard", options.compare.shard,
                   "I/N: only every N-th design of the sweep, from the I-th on, for --merge")
      ->check(a_piece);
  compare->add_flag("--merge", options.compare.merge,
                    "Put the pieces of a sweep together: give their folders");
  compare->add_flag("--quick", options.compare.quick,
                    "Sweep in closed form: purge, heat and measured log are not judged");
  compare->add_option("--show", options.compare.wanted.show,
                      "ID of a further quantity, may be given more than once");
  compare->add_option("--rank", options.compare.wanted.rank,
                      "ID of a quantity to choose by, two or more: which designs no other beats");
  compare
      ->add_option("-o,--output", options.compare.output,
                   "Folder for page, CSV and JSON; out/compare by default")
      ->check(a_name);
  compare->add_flag("--json", options.compare.json, "Print comparison.json");
  compare->callback([&] { command = [&] { return run_compare(options.compare); }; });

  auto *flow = app.add_subcommand(
      "flow",
      "The gas of a job in three dimensions: a case for OpenFOAM, solved, and read beside the network's "
      "answer");
  flow->add_option("job", options.flow.job, "Job file")->required();
  flow->add_option("-o,--output", options.flow.output, "Folder of the case; out/NAME-flow-STAGE by default")
      ->check(a_name);
  flow->add_option("--stage", options.flow.stage,
                   "bore, bore-outlet-below, prepurge, open, away or torch; bore by default");
  flow->add_option("--cells", options.flow.cells, "Cells in the fixture's gas, about; 20000 by default");
  flow->add_option("--duration", options.flow.duration, "How long the flow is followed, such as '5 s'")
      ->check(a_value);
  flow->add_option("--run", options.flow.processes,
                   "Solve it on so many processes; a case begun before goes on from the last time written");
  flow->add_flag("--read", options.flow.read, "Print what was solved beside the network's answer");
  flow->callback([&] { command = [&] { return run_flow(options.flow); }; });

  auto *trace =
      app.add_subcommand("trace", "Where one number comes from, or what a rule judged; or a list of them");
  trace->add_option("job", options.trace.job, "Job file")->required();
  trace->add_option(
      "quantity", options.trace.words,
      "Ids of quantities or rules, such as volume.chamber_gas, traced in turn; or words to look "
      "for, such as oxygen; without one all are listed");
  trace->callback([&] { command = [&] { return run_trace(options.trace); }; });

  auto *watch = app.add_subcommand(
      "watch",
      "The report as a page of this machine alone, renewed whenever a job file is saved; Ctrl-C ends it");
  watch->add_option("jobs", options.watch.jobs, "Job files; several stand side by side")->required();
  watch->add_option("--port", options.watch.port, "Port of 127.0.0.1; any that is free by default")
      ->check(a_port);
  watch->add_flag("--open", options.watch.open, "Open the page in the browser");
  watch->callback([&] { command = [&] { return run_watch(options.watch); }; });
}

ExitCode guarded(const std::function<ExitCode()> &command) {
  try {
    const ExitCode code = command();
    flush();
    return code;
  } catch (const Interrupted &interrupted) {
    finish(interrupted);
  } catch (const files::FileError &error) {
    complain(fmt::format("error: {}: {}", error.path.string(), error.reason));
    return ExitCode::cannot_write;
  } catch (const std::filesystem::filesystem_error &error) {
    complain(fmt::format("error: {}: {}", error.path1().string(), error.code().message()));
    return ExitCode::cannot_write;
  } catch (const KernelFault &error) {
    complain(error.what());
    return error.code;
  } catch (const std::exception &error) {
    complain(fmt::format("internal fault: {}", error.what()));
    return ExitCode::internal_fault;
  }
}

ExitCode no_such(std::string_view kind, std::string_view word, const std::vector<std::string_view> &names) {
  const auto nearest = job::nearest_choice(word, names);
  return guarded([&] {
    complain(fmt::format("there is no {} '{}'; allowed: {}{}", kind, files::shown(word),
                         fmt::join(names, ", "), job::did_you_mean(nearest)));
    return ExitCode::bad_input;
  });
}

std::vector<std::string> long_options(const CLI::App &command) {
  std::vector<std::string> options;
  for (const CLI::Option *option : command.get_options()) {
    for (const std::string &name : option->get_lnames()) {
      options.push_back("--" + name);
    }
  }
  return options;
}

std::optional<ExitCode> strange_option(const CLI::App &command, std::span<const char *const> words) {
  const auto known = long_options(command);
  for (const std::string_view word : words) {
    const std::string_view name = word.substr(0, word.find('='));
    if (name == "--") {
      break;
    }
    if (name.starts_with("--") && std::ranges::find(known, name) == known.end()) {
      return no_such(fmt::format("option of {}", command.get_name()), name, {known.begin(), known.end()});
    }
  }
  return std::nullopt;
}

const CLI::Option *option_of(const CLI::App &command, std::string_view word) {
  const std::string name(word.substr(0, word.find('=')));
  return name.size() > 1 && name.starts_with('-') ? command.get_option_no_throw(name) : nullptr;
}

// The parser would take the next option for the value.
std::optional<ExitCode> option_without_value(const CLI::App &command, std::span<const char *const> words) {
  for (std::size_t i = 0; i + 1 < words.size() && std::string_view(words[i]) != "--"; ++i) {
    const std::string_view word = words[i], next = words[i + 1];
    const CLI::Option *option = option_of(command, word);
    const bool wants_value = option != nullptr && option->get_items_expected_min() > 0;
    if (wants_value && word.find('=') == std::string_view::npos && option_of(command, next) != nullptr) {
      return guarded([&] {
        complain(fmt::format("{} wants a value; '{}' is an option", word, files::shown(next)));
        return ExitCode::bad_input;
      });
    }
  }
  return std::nullopt;
}

// The parser would say only that a command, or the job, is missing.
std::optional<ExitCode> stranger_among(const CLI::App &app, std::span<const char *const> words) {
  if (words.empty() || words.front()[0] == '-') {
    return std::nullopt;
  }
  std::vector<std::string_view> names;
  for (const CLI::App *command : app.get_subcommands([](const CLI::App *) { return true; })) {
    if (command->get_name() == words.front()) {
      const auto refused = strange_option(*command, words.subspan(1));
      return refused ? refused : option_without_value(*command, words.subspan(1));
    }
    names.push_back(command->get_name());
  }
  return no_such("command", words.front(), names);
}

} // namespace

ExitCode run(int argc, const char *const *argv) {
  fill_standard_descriptors();
  std::signal(SIGPIPE, SIG_IGN); // a reader that goes away is an error of writing, with its exit status
  std::signal(SIGXFSZ, SIG_IGN); // so is a file above the limit of the shell; purgewright-solids inherits it
  CLI::App app{"Designs weld-purge fixtures for tubes of reactive metal closed by small welded caps",
               "purgewright"};
  Options options;
  std::function<ExitCode()> command;
  describe(app, options, command);
  const std::span words(argv, static_cast<std::size_t>(argc));
  if (const auto refused = stranger_among(app, words.subspan(std::min<std::size_t>(1, words.size())))) {
    return *refused;
  }
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError &error) {
    return guarded([&] {
      std::ostringstream results, messages;
      const int status = app.exit(error, results, messages);
      print(results.str());
      if (!messages.str().empty()) {
        complain(messages.str());
      }
      return status == 0 ? ExitCode::done : ExitCode::bad_input;
    });
  }
  return guarded(command);
}

} // namespace purgewright::cli
