// The JSON Schema (draft 2020-12) of the job file, made from the key table, so editors complete job files.
#pragma once

#include <string>

namespace purgewright::job {

// The schema's text, indented by two spaces, same bytes each time; templates/job.schema.json holds a copy.
std::string job_schema_json();

} // namespace purgewright::job
