// Jobs as strangers bring them: tubes drawn from what stockists list, with the required keys alone, so that
// every default, kind and choice is the program's own.
//
// Sizes: outside diameters of tube in inches, pipe by NPS (ASME B36.19M, from memory) and metric tube; walls
// .020 to .120 in and 0.5 to 3 mm with 1.2 % <= wall / diameter <= 13 %; lengths from one diameter (20 mm at
// least) to 1.5 m; flat, domed and spigot caps as thick as the wall or more; with and without a vent. Which
// sizes stockists list is common practice, no source. Guarantee: one seed, one job, the same bytes on every
// machine.
#pragma once

#include <cstdint>
#include <string>

namespace purgewright::test {

struct StockJob {
  std::uint64_t seed = 0;
  std::string yaml;
  std::string in_words; // "3/4 in x .049 in x 50.0 mm, domed, vent"
};

StockJob stock_job(std::uint64_t seed);

} // namespace purgewright::test
