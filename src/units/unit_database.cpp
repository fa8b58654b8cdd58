#include "units/unit_database.hpp"

#include <udunits2.h>

#include <array>
#include <memory>
#include <mutex>
#include <string_view>
#include <utility>
#include <vector>

namespace purgewright::units {

namespace {

struct Release {
  void operator()(ut_system *system) const { ut_free_system(system); }
  void operator()(ut_unit *unit) const { ut_free(unit); }
  void operator()(cv_converter *converter) const { cv_free(converter); }
};
using System = std::unique_ptr<ut_system, Release>;
using Unit = std::unique_ptr<ut_unit, Release>;
using Converter = std::unique_ptr<cv_converter, Release>;

// Dimensions a unit by itself can have; count, cost and price are read by rules of their own.
constexpr std::array known_dimensions{
    Dimension::ratio,    Dimension::length,  Dimension::area,        Dimension::volume,
    Dimension::mass,     Dimension::time,    Dimension::velocity,    Dimension::flow,
    Dimension::pressure, Dimension::density, Dimension::temperature, Dimension::angle,
    Dimension::current,  Dimension::voltage, Dimension::power,       Dimension::frequency};

// The unit's product of base units without its factor and origin: "m3.s-1", "rad", "1". The library treats
// the radian as convertible to a plain number; its text keeps them apart.
std::string base_units_of(const ut_unit *unit) {
  std::array<char, 256> buffer{};
  const int length = ut_format(unit, buffer.data(), buffer.size() - 1, UT_ASCII | UT_DEFINITION);
  if (length < 0)
    return {};
  std::string_view text(buffer.data(), static_cast<std::size_t>(length));
  text = text.substr(0, text.find(" @"));
  const auto space = text.rfind(' ');
  return std::string(space == std::string_view::npos ? text : text.substr(space + 1));
}

class Database {
 public:
  Database() {
    ut_set_error_message_handler(ut_ignore);
    system_.reset(ut_read_xml(nullptr));
    if (!system_)
      return;
    for (const Dimension dimension : known_dimensions) {
      Unit unit(ut_parse(system_.get(), std::string(si_unit(dimension)).c_str(), UT_ASCII));
      std::string base_units = base_units_of(unit.get());
      targets_.push_back({dimension, std::move(base_units), std::move(unit)});
    }
  }

  DatabaseReading read(double value, const std::string &text) const {
    DatabaseReading reading;
    if (!system_) {
      reading.status = DatabaseReading::Status::no_database;
      return reading;
    }
    const Unit unit(ut_parse(system_.get(), text.c_str(), UT_ASCII));
    if (!unit)
      return reading;
    reading.status = DatabaseReading::Status::read;
    reading.base_units = base_units_of(unit.get());
    for (const Target &target : targets_)
      if (target.base_units == reading.base_units)
        if (const Converter to_si(ut_get_converter(unit.get(), target.unit.get())); to_si) {
          reading.dimension = target.dimension;
          reading.si = cv_convert_double(to_si.get(), value);
        }
    return reading;
  }

 private:
  struct Target {
    Dimension dimension;
    std::string base_units;
    Unit unit;
  };
  System system_; // before targets_, whose units it must outlive
  std::vector<Target> targets_;
};

} // namespace

DatabaseReading read_by_database(double value, const std::string &unit) {
  static std::mutex lock;
  const std::scoped_lock guard(lock);
  static const Database database;
  return database.read(value, unit);
}

} // namespace purgewright::units
