// Files of src/html/web and the 3D library, as they are built into the program. Private to html.
#pragma once

#include <string_view>

namespace purgewright::html::web {

extern const std::string_view report_html, page_css, page_js, viewer_js, comparison_html, comparison_js,
    watch_html, watch_js;
extern const std::string_view three_js, orbit_controls_js, gltf_loader_js; // three.js, MIT
extern const std::string_view three_licence;

} // namespace purgewright::html::web
