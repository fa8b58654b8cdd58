#include "purgewright/units/figure.hpp"

#include <catch2/catch.hpp>

using namespace purgewright::units;

TEST_CASE("a basis is spelled as results.json spells it", "[unit][units]") {
  CHECK(to_text(Basis::computed) == "computed");
  CHECK(to_text(Basis::given) == "given");
  CHECK(to_text(Basis::fallback) == "default");
  CHECK(to_text(Basis::standard) == "standard");
  CHECK(to_text(Basis::common_practice) == "common practice");
}

TEST_CASE("a figure is found by its whole id", "[unit][units]") {
  Figures figures(2);
  figures[0].id = "volume.bore_gas";
  figures[1].id = "volume.chamber_gas";
  CHECK(find(figures, "volume.chamber_gas") == &figures[1]);
  CHECK(find(figures, "volume.chamber") == nullptr);
  CHECK(find({}, "volume.bore_gas") == nullptr);
}
