#include "html/markup.hpp"
#include "html/sections.hpp"

#include "purgewright/fixture/parts_list.hpp"
#include "purgewright/report/lines.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <utility>

namespace purgewright::html {
namespace {

using Json = nlohmann::ordered_json;
using report::Findings;

// Where a part goes when the fixture is taken apart, in steps along X (to the cap's side), Y and Z (up): the
// way back along which it is put in. What is put in later stands farther out.
struct Way {
  std::string_view part; // its name, or what its name begins with
  std::array<double, 3> steps;
  bool turns = false; // with the tube, when it is indexed
};

constexpr std::array<Way, 50> ways{{
    {ids::base_plate, {0, 0, -1.6}},
    {"foot", {0, 0, -2.4}},
    {"foot-nut", {0, 0, -2.2}},
    {"screw-chamber", {0, 0, -2.6}},
    {"screw-stand", {-1, 0, 0.2}},
    {"screw-clamp", {-1.5, 0, 0.2}},
    {"screw-tail", {-1, 0, 0.2}},
    {ids::clamp_bar, {-1, 0, -2.6}},
    {"dowel", {0, 0, -1.3}},
    {ids::plenum_cover, {0, 0, -0.8}},
    {"plenum-gasket", {0, 0, -0.4}},
    {ids::chamber_body, {0, 0, 0}},
    {ids::chamber_floor, {0, 0, 0}},
    {ids::chamber_side, {0, 0, 0.4}},
    {ids::chamber_top, {0, 0, 1}},
    {ids::chamber_rear, {-0.3, 0, 0}},
    {"side-gasket", {0, 0, 0.2}},
    {"rear-gasket", {-0.15, 0, 0}},
    {"screw-side", {0, 0, 1.3}},
    {"screw-rear", {-0.6, 0, 0}},
    {"dowel-rear", {-0.1, 0, 0}},
    {"end-gasket", {0.5, 0, 0}},
    {ids::chamber_end_plate, {1, 0, 0}},
    {ids::backing_pin, {2.4, 0, 0}},
    {"screw-end-plate", {2, 0, 0}},
    {"fitting-chamber", {1.8, 0, 0}},
    {ids::wiper_plate, {-0.8, 0, 0}},
    {"wiper", {-0.4, 0, 0}},
    {"screw-wiper", {-1.2, 0, 0}},
    {ids::slot_cover, {0, 0, 1.5}},
    {"cap", {0, 0, 0.8}, true},
    {"tube", {-1.5, 0, 1}, true},
    {ids::index_collar, {-2, 0, 1}, true},
    {ids::end_plug, {-3.5, 0, 1}, true},
    {ids::purge_lance, {-2.5, 0, 1}, true},
    {"plug-sleeve", {-3, 0, 1}, true},
    {ids::plug_bush, {-3.8, 0, 1}, true},
    {ids::plug_knob, {-4.2, 0, 1}, true},
    {ids::spindle, {-4, 0, 1}, true},
    {"fitting-plug", {-4.5, 0, 1}, true},
    {ids::cradle_stand, {-1, 0, -1}},
    {"ball-bearing", {-1, 0, -0.3}},
    {"screw-axle", {-1.6, 0, -0.3}},
    {ids::tail_foot, {-1, 0, -1.5}},
    {ids::axial_stop, {-2, 0, -1}},
    {"press-", {-2.6, 0, -1}},
    {ids::gas_port_block, {0, -1.5, -0.8}},
    {"screw-port-block", {0, -1.5, 0.2}},
    {"needle-valve", {0, -1.5, -0.2}},
    {"", {0, -1.5, -0.8}}, // fittings of the block
}};

const Way &way_of(std::string_view part) {
  return *std::ranges::find_if(ways, [&](const Way &way) { return part.starts_with(way.part); });
}

Json part_json(const fixture::Item &item) {
  const Way &way = way_of(item.id);
  return {{"number", item.number},
          {"title", item.title},
          {"pieces", item.quantity},
          {"material", item.material},
          {"size", item.size},
          {"for", item.purpose},
          {"made", item.kind == fixture::ItemKind::made},
          {"way", way.steps},
          {"turns", way.turns}};
}

} // namespace

std::string viewer_data(const Findings &f) {
  const auto &d = f.design;
  Json root;
  root["parts"] = Json::object();
  for (const auto &item : fixture::parts_list(d.job, d.layout, d.volumes)) {
    root["parts"][item.id] = part_json(item);
  }
  root["passes"] = Json::array();
  for (const auto &[kind, welds] : {std::pair("tack", &d.heat.tacks), std::pair("run", &d.heat.runs)}) {
    for (std::size_t i = 0; i < welds->size(); ++i) {
      root["passes"].push_back({{"name", fmt::format("{} {}", kind, i + 1)},
                                {"start", units::to_degrees((*welds)[i].pass.start)},
                                {"end", units::to_degrees((*welds)[i].pass.end)}});
    }
  }
  return safe_json(root.dump());
}

} // namespace purgewright::html
