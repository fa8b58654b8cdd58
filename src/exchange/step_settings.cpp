#include "exchange/step_settings.hpp"

namespace purgewright::exchange {

StaticScope step_settings(std::string const &schema) {
  return StaticScope({{"xstep.cascade.unit", "MM"},
                      {"write.step.unit", "MM"},
                      {"write.step.schema", schema},
                      {"write.step.assembly", "Auto"},
                      {"write.step.vertex.mode", "Compound"},
                      {"write.step.nonmanifold", "Off"},
                      {"write.stepcaf.subshapes.name", "Off"},
                      {"read.step.codepage", "UTF8"},
                      {"write.precision.mode", "Average"},
                      {"write.surfacecurve.mode", "On"},
                      {"read.step.product.mode", "ON"},
                      {"read.precision.mode", "File"},
                      {"read.surfacecurve.mode", "Default"}});
}

} // namespace purgewright::exchange
