// The settings under which STEP is written and read, whatever else ran in the process before.
//
// Units: millimetres in the model and in the file. Frame: none.
// Range and errors: as StaticScope.
// Guarantee: every setting that shapes the file is set; all are put back at the end of the scope.
// Source: OpenCASCADE 7.6.3; its defaults but for nothing left to chance.
#pragma once

#include "purgewright/exchange/static_scope.hpp"

#include <string>

namespace purgewright::exchange {

StaticScope step_settings(std::string const &schema = "AP214IS");

} // namespace purgewright::exchange
