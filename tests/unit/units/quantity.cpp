// Quantity types: what must not compile, and the factories.
#include "purgewright/units/quantity.hpp"

#include <catch2/catch.hpp>

#include <concepts>
#include <type_traits>

using namespace purgewright::units;

namespace {

template <class A, class B>
concept Addable = requires(A a, B b) {
  a + b;
};
template <class A, class B>
concept Comparable = requires(A a, B b) {
  a < b;
};

static_assert(Addable<Length, Length>);
static_assert(Comparable<Length, Length>);

static_assert(!std::is_convertible_v<Length, VolumeFlow>);
static_assert(!std::is_convertible_v<Volume, Length>);
static_assert(!std::is_convertible_v<double, Length>);
static_assert(!std::is_constructible_v<Length, double>);
static_assert(!std::is_convertible_v<Length, double>);
static_assert(!Addable<Length, Area>);
static_assert(!Comparable<Pressure, Density>);
static_assert(!std::is_convertible_v<double, Angle>);
static_assert(!std::is_convertible_v<Angle, double>);
static_assert(!Addable<Angle, Length>);

// An absolute temperature is a point: the difference of two is another type.
static_assert(!std::is_same_v<Temperature, TemperatureDifference>);
static_assert(!std::is_convertible_v<TemperatureDifference, Temperature>);
static_assert(Addable<Temperature, TemperatureDifference>);
static_assert(std::same_as<decltype(celsius(1.0) - celsius(0.0)), TemperatureDifference>);

static_assert(std::same_as<decltype(Length{} * Length{}), Area>);
static_assert(std::same_as<decltype(Volume{} / Time{}), VolumeFlow>);
static_assert(std::same_as<decltype(Mass{} / Volume{}), Density>);

} // namespace

TEST_CASE("factories give SI values", "[unit][units]") {
  CHECK(inches(1.0).value() == Approx(0.0254).epsilon(1e-15));
  CHECK(millimetres(31.75).value() == Approx(inches(1.25).value()).epsilon(1e-15));
  CHECK(litres_per_minute(60.0).value() == Approx(1e-3).epsilon(1e-15));
  CHECK(celsius(0.0).value() == Approx(273.15).epsilon(1e-15));
  CHECK(degrees(180.0).value() == Approx(3.14159265358979).epsilon(1e-14));
}

TEST_CASE("what goes in through a factory comes out of its reader", "[unit][units]") {
  CHECK(to_millimetres(millimetres(12.7)) == Approx(12.7).epsilon(1e-15));
  CHECK(to_inches(inches(0.875)) == Approx(0.875).epsilon(1e-15));
  CHECK(to_litres_per_minute(litres_per_minute(6.0)) == Approx(6.0).epsilon(1e-15));
  CHECK(to_degrees(degrees(15.0)) == Approx(15.0).epsilon(1e-15));
  CHECK(to_celsius(celsius(427.0)) == Approx(427.0).epsilon(1e-15));
}
