#include "purgewright/exchange/static_scope.hpp"

#include <Interface_Static.hxx>
#include <STEPCAFControl_Controller.hxx>

#include <stdexcept>

namespace purgewright::exchange {

namespace {

void require_settings() {
  STEPCAFControl_Controller::Init();
} // they exist only after this; done once

} // namespace

std::string static_value(std::string const &name) {
  require_settings();
  if (!Interface_Static::IsPresent(name.c_str()))
    throw std::invalid_argument("exchange setting " + name + " is unknown");
  return Interface_Static::CVal(name.c_str());
}

StaticScope::StaticScope(Settings const &settings) {
  require_settings();
  for (auto const &[name, value] : settings) {
    bool const present = Interface_Static::IsPresent(name.c_str()) == Standard_True;
    std::string const former = present ? Interface_Static::CVal(name.c_str()) : "";
    if (!present || !Interface_Static::SetCVal(name.c_str(), value.c_str())) {
      restore();
      throw std::invalid_argument("exchange setting " + name + " cannot be " + value);
    }
    former_.emplace_back(name, former);
  }
}

StaticScope::~StaticScope() {
  restore();
}

// Last changed, first restored: a setting may be listed twice.
void StaticScope::restore() noexcept {
  for (auto at = former_.rbegin(); at != former_.rend(); ++at)
    Interface_Static::SetCVal(at->first.c_str(), at->second.c_str());
  former_.clear();
}

} // namespace purgewright::exchange
