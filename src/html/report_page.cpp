#include "purgewright/html/report_page.hpp"

#include "html/markup.hpp"
#include "html/sections.hpp"
#include "html/web.hpp"

#include <fmt/format.h>

#include <array>

namespace purgewright::html {
namespace {

std::string script(std::string_view text) {
  return fmt::format("<script>{}</script>\n", text);
}

constexpr std::array scripts{&web::three_js, &web::orbit_controls_js, &web::gltf_loader_js, &web::page_js,
                             &web::viewer_js};

// Nothing may be asked of any network, and no script may run but the page's own.
std::string policy() {
  std::string allowed;
  for (const auto *text : scripts) {
    allowed += fmt::format(" {}", policy_hash(*text));
  }
  return fmt::format("default-src 'none'; img-src data: blob:; style-src {}; script-src{}; base-uri 'none'; "
                     "form-action 'none'",
                     policy_hash(web::page_css), allowed);
}

std::string all_scripts() {
  std::string text;
  for (const auto *one : scripts) {
    text += script(*one);
  }
  return text;
}

} // namespace

std::string report_page(const report::Findings &f, const Shown &shown) {
  const auto &identity = f.design.job.identity;
  const std::string revision =
      identity.revision.empty() ? std::string() : fmt::format("Revision {} · ", safe(identity.revision));
  return filled(web::report_html, {{"policy", policy()},
                                   {"style", std::string(web::page_css)},
                                   {"name", safe(identity.name)},
                                   {"title", safe(identity.title)},
                                   {"by", fmt::format("{}purgewright {}", revision, safe(shown.version))},
                                   {"answer", answer(f)},
                                   {"bench", at_bench(f)},
                                   {"settings", settings(f)},
                                   {"plots", plots(f, shown)},
                                   {"rules", rules(f)},
                                   {"sheets", sheets(shown)},
                                   {"parts", parts_list(f)},
                                   {"numbers", all_numbers(f)},
                                   {"licence", safe(web::three_licence)},
                                   {"viewer_data", viewer_data(f)},
                                   {"assembly", packed(shown.assembly_glb)},
                                   {"gas_spaces", packed(shown.gas_spaces_glb)},
                                   {"scripts", all_scripts()}});
}

} // namespace purgewright::html
