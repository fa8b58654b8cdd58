#include "purgewright/html/report_page.hpp"

#include "html/markup.hpp"
#include "html/report_parts.hpp"
#include "html/sections.hpp"
#include "html/web.hpp"

#include <fmt/format.h>

#include <array>
#include <utility>

namespace purgewright::html {
namespace {

constexpr std::array scripts{&web::three_js, &web::orbit_controls_js, &web::gltf_loader_js, &web::page_js,
                             &web::viewer_js};

std::string script(std::string_view text) {
  return fmt::format("<script>{}</script>\n", text);
}

std::string all_scripts(const Frame &frame) {
  std::string text;
  for (const auto *one : scripts) {
    text += script(*one);
  }
  return frame.own_script.empty() ? text : text + script(frame.own_script);
}

} // namespace

std::string report_policy(const Frame &frame) {
  std::string allowed;
  for (const auto *text : scripts) {
    allowed += fmt::format(" {}", policy_hash(*text));
  }
  if (!frame.own_script.empty()) {
    allowed += fmt::format(" {}", policy_hash(frame.own_script));
  }
  return fmt::format("default-src 'none'; img-src data: blob:; style-src {}; script-src{};{} base-uri "
                     "'none'; form-action 'none'",
                     policy_hash(web::page_css), allowed,
                     frame.sources.empty() ? std::string() : fmt::format(" connect-src {};", frame.sources));
}

std::string head(const report::Findings &f, std::string_view version) {
  const auto &identity = f.design.job.identity;
  const std::string revision =
      identity.revision.empty() ? std::string() : fmt::format("Revision {} · ", safe(identity.revision));
  return fmt::format("<p class=\"name\">{}</p>\n<h1>{}</h1>\n<p class=\"by\">{}purgewright {}</p>",
                     safe(identity.name), safe(identity.title), revision, safe(version));
}

Parts number_parts(const report::Findings &f) {
  return {{"answer", answer(f)}, {"bench", at_bench(f)},   {"settings", settings(f)},
          {"rules", rules(f)},   {"parts", parts_list(f)}, {"numbers", all_numbers(f)}};
}

Parts view_parts(const report::Findings &f, const Shown &shown) {
  return {{"plots", plots(f, shown)},
          {"viewer-data", viewer_data(f)},
          {"assembly", packed(shown.assembly_glb)},
          {"gas-spaces", packed(shown.gas_spaces_glb)}};
}

std::string framed(const Frame &frame, Parts parts) {
  return filled(web::report_html, {{"policy", report_policy(frame)},
                                   {"style", std::string(web::page_css)},
                                   {"name", safe(frame.name)},
                                   {"head", std::move(parts["head"])},
                                   {"watched", std::move(parts["watched"])},
                                   {"answer", std::move(parts["answer"])},
                                   {"bench", std::move(parts["bench"])},
                                   {"fixture_note", std::move(parts["fixture-note"])},
                                   {"settings", std::move(parts["settings"])},
                                   {"plots", std::move(parts["plots"])},
                                   {"rules", std::move(parts["rules"])},
                                   {"sheets", std::move(parts["sheets"])},
                                   {"parts", std::move(parts["parts"])},
                                   {"numbers", std::move(parts["numbers"])},
                                   {"kept", frame.kept},
                                   {"licence", safe(web::three_licence)},
                                   {"viewer_data", std::move(parts["viewer-data"])},
                                   {"assembly", std::move(parts["assembly"])},
                                   {"gas_spaces", std::move(parts["gas-spaces"])},
                                   {"scripts", all_scripts(frame)}});
}

std::string report_page(const report::Findings &f, const Shown &shown) {
  Parts parts = number_parts(f);
  parts.merge(view_parts(f, shown));
  parts["head"] = head(f, shown.version);
  parts["sheets"] = sheets(shown);
  return framed({.name = f.design.job.identity.name,
                 .kept = "<a href=\"manifest.json\">manifest.json</a> tells which job this was made from.",
                 .own_script = {},
                 .sources = {}},
                std::move(parts));
}

} // namespace purgewright::html
