// The table of everyday units against its slow twin, the unit database.
#include "../../../src/units/unit_database.hpp"
#include "../../../src/units/unit_text.hpp"

#include <catch2/catch.hpp>

#include <set>
#include <string>

using namespace purgewright::units;

TEST_CASE("everyday units mean what the database says", "[unit][units]") {
  REQUIRE(everyday_units().size() > 20);
  for (const EverydayUnit &unit : everyday_units())
    for (const double value : {1.0, 37.5}) {
      INFO(unit.name);
      const DatabaseReading reading = read_by_database(value, std::string(unit.name));
      REQUIRE(reading.status == DatabaseReading::Status::read);
      REQUIRE(reading.dimension == unit.dimension);
      CHECK((value + unit.zero) * unit.scale == Approx(reading.si).epsilon(1e-14));
    }
}

TEST_CASE("an everyday unit stands once in its table", "[unit][units]") {
  std::set<std::string_view> names;
  for (const EverydayUnit &unit : everyday_units())
    CHECK(names.insert(unit.name).second);
  CHECK(everyday_unit("furlong") == nullptr);
}

TEST_CASE("the database tells the coulomb, unknown units and angles apart", "[unit][units]") {
  const DatabaseReading coulomb = read_by_database(1.0, "C");
  CHECK(coulomb.status == DatabaseReading::Status::read);
  CHECK_FALSE(coulomb.dimension.has_value());
  CHECK(read_by_database(1.0, "cubit_of_argon").status == DatabaseReading::Status::unknown_unit);
  CHECK(read_by_database(1.0, "arcmin").dimension == Dimension::angle);
  CHECK(read_by_database(1.0, "percent").dimension == Dimension::ratio);
}

TEST_CASE("trade names and typographic signs become plain units", "[unit][units]") {
  CHECK(with_trade_names("cfh") == "ft3/h");
  CHECK(with_trade_names("thou/min") == "mil/min");
  CHECK(with_trade_names("kg/cfh") == "kg/(ft3/h)");
  CHECK(with_trade_names("deg") == "degree");
  CHECK(with_trade_names("/h") == "1/h");
  CHECK(with_trade_names("mm") == "mm");
  CHECK(plain_signs("\u00b0C") == "degC");
  CHECK(plain_signs("ft^3/h") == "ft3/h");
  CHECK(plain_signs("m^-3") == "m^-3");
}
