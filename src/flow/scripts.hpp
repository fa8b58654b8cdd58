// Scripts beside a case: run it here, run it on a cluster. Private to the flow floor.
//
// Units, frame: none. Errors: none. Guarantee: no path of the machine but where Debian puts OpenFOAM.
#pragma once

#include "purgewright/flow/case.hpp"

#include <string>

namespace purgewright::flow {

std::string run_script_text(std::string_view solver);
std::string cluster_script_text(std::string_view job, const Case &);

} // namespace purgewright::flow
