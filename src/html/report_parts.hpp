// The report's page as its parts, which stand in one template whether the page is a file or is renewed in
// place.
//
// Units, frame, errors, guarantee: as report_page.hpp. Private to html.
#pragma once

#include "purgewright/html/report_page.hpp"
#include "purgewright/html/watch_page.hpp"

#include <map>
#include <string>
#include <string_view>

namespace purgewright::html {

std::string head(const report::Findings &, std::string_view version); // name, title, revision
Parts number_parts(const report::Findings &);                         // all that needs no solids
Parts view_parts(const report::Findings &, const Shown &);            // the fixture's bodies, plots

struct Frame {
  std::string name;         // of the design, as text
  std::string kept;         // the page's last words: where its files come from
  std::string own_script;   // of a page that is renewed; none else
  std::string_view sources; // from where the page may fetch: "'self'"; nothing else
};

// The page's policy: no script runs but its own, and nothing is asked of any network but of `sources`.
std::string report_policy(const Frame &);

// The template filled with these parts; one that is not given stays empty.
std::string framed(const Frame &, Parts);

} // namespace purgewright::html
