#include "commands.hpp"
#include "output_folder.hpp"

#include "purgewright/exchange/file_error.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

namespace purgewright::cli {

ExitCode run_new(const NewOptions &options) {
  const auto &all = templates();
  const auto found = std::ranges::find(all, options.template_name, &Template::name);
  if (found == all.end()) {
    std::string names;
    for (const auto &known : all) {
      names += fmt::format("{}{}", names.empty() ? "" : ", ", known.name);
    }
    complain(fmt::format("error: there is no template '{}'; there are: {}", options.template_name, names));
    return ExitCode::bad_input;
  }
  const std::string path = options.output.empty() ? fmt::format("{}.yaml", found->name) : options.output;
  if (std::filesystem::exists(path)) {
    complain(fmt::format("error: {} stands already; name another file with -o", path));
    return ExitCode::cannot_write;
  }
  write_file(path, found->text);
  print(fmt::format("{}\n", path));
  return ExitCode::done;
}

} // namespace purgewright::cli
