#include "scripts.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace purgewright::flow {
namespace {

// Below so many cells a process waits for its neighbours more than it works: common practice, no source.
constexpr std::size_t cells_of_process = 10000;
constexpr std::size_t most_tasks = 64;

} // namespace

std::string run_script_text(std::string_view solver) {
  return fmt::format(R"sh(#!/bin/sh
# Solves this case on N processes: sh run.sh [N]. Started again, it goes on from the last time written.
# The case is cut across the tube's axis; that needs none of the libraries that Debian leaves out.
set -eu
cd -- "$(dirname -- "$0")"
processes=${{1:-1}}
solver={}
if ! command -v "$solver" >/dev/null; then
  echo "OpenFOAM is not installed: {}" >&2
  exit 2
fi
export WM_PROJECT_DIR="${{WM_PROJECT_DIR:-/usr/share/openfoam}}"
if [ -d processor0 ]; then
  reconstructPar -latestTime >log.reconstruct 2>&1
  rm -r processor[0-9]*
fi
if [ "$processes" -eq 1 ]; then
  exec "$solver" >>log.solver 2>&1
fi
printf 'FoamFile {{ version 2.0; format ascii; class dictionary; object decomposeParDict; }}\n%s\n' \
  "numberOfSubdomains $processes; method simple; simpleCoeffs {{ n ($processes 1 1); delta 0.001; }}" >system/decomposeParDict
decomposePar -latestTime >log.decompose 2>&1
if [ "$(id -u)" -eq 0 ]; then
  export OMPI_ALLOW_RUN_AS_ROOT=1 OMPI_ALLOW_RUN_AS_ROOT_CONFIRM=1
fi
mpirun -np "$processes" "$solver" -parallel >>log.solver 2>&1
reconstructPar -latestTime >log.reconstruct 2>&1
rm -r processor[0-9]*
)sh",
                     solver, install_command);
}

std::string cluster_script_text(std::string_view job, const Case &written) {
  const std::size_t processes = std::clamp<std::size_t>(written.cells / cells_of_process, 1, most_tasks);
  return fmt::format(R"sh(#!/bin/sh
#SBATCH --job-name={}-{}
#SBATCH --ntasks={}
#SBATCH --time=24:00:00
# This case on a cluster with Slurm: sbatch cluster.sh. Submitted again, it goes on from the last time written.
# {} cells. Time grows with cells to the power of 4/3: twice as fine along each edge is 8 times the cells, and steps
# half as long: 16 times the work. {} cells a process are about as few as pay.
sh run.sh "${{SLURM_NTASKS:-{}}}"
)sh",
                     job, to_text(written.choice.stage), processes, written.cells, cells_of_process,
                     processes);
}

} // namespace purgewright::flow
