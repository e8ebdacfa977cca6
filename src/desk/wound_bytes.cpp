#include "desk/wound_bytes.h"

#include <stdexcept>
#include <utility>

#include <nlohmann/json.hpp>

namespace laywright {
namespace {

using Json = nlohmann::json;

template <class T>
Json maybe(const std::optional<T>& value) {
  return value ? Json(*value) : Json(nullptr);
}

template <class T>
std::optional<T> maybe(const Json& json) {
  if (json.is_null()) return std::nullopt;
  return json.get<T>();
}

Json json_of(const Grid& grid) { return {grid.origin_mm, grid.step_mm, grid.steps_per_mm}; }
Grid grid_of(const Json& json) { return {json.at(0), json.at(1), json.at(2)}; }

Json json_of(const Build& build) {
  Json strokes = Json::array();
  for (const Stroke& stroke : build.strokes) strokes.push_back({stroke.first_node, stroke.direction});
  return {{"stations", build.stations_per_turn},
          {"x", json_of(build.nodes.x_grid())},
          {"r", json_of(build.nodes.r_grid())},
          {"nodes", build.nodes.size()},
          {"strokes", std::move(strokes)},
          {"turns", build.turns},
          {"length", build.length_mm},
          {"diameter", build.fiber_diameter_mm},
          {"half_diameters", build.diameters.knots()},
          {"half_diameters_per_node", build.diameters.knots_per_node()},
          {"stopped", static_cast<int>(build.stopped_by)},
          {"seed", build.seed}};
}

bool of_one_length(const NodeStore::Columns& columns, std::size_t nodes) {
  return columns.x.size() == nodes && columns.r.size() == nodes && columns.flags.size() == nodes;
}

Build build_of(const Json& json, NodeStore::Columns columns) {
  if (!of_one_length(columns, json.at("nodes"))) throw std::length_error("columns of another build");
  Build build;
  build.stations_per_turn = json.at("stations");
  build.nodes = NodeStore(grid_of(json.at("x")), grid_of(json.at("r")), std::move(columns));
  for (const Json& stroke : json.at("strokes")) build.strokes.push_back({stroke.at(0), stroke.at(1)});
  build.turns = json.at("turns");
  build.length_mm = json.at("length");
  build.fiber_diameter_mm = json.at("diameter");
  build.diameters =
      FiberDiameter(json.at("half_diameters").get<std::vector<float>>(), json.at("half_diameters_per_node"));
  build.stopped_by = static_cast<StopReason>(json.at("stopped").get<int>());
  build.seed = json.at("seed");
  return build;
}

// Left ridge and valley, right ridge and valley.
Json json_of(const std::optional<EdgeShapes>& edges) {
  if (!edges) return nullptr;
  const auto& [left, right] = *edges;
  return {left.ridge_mm, left.valley_mm, right.ridge_mm, right.valley_mm};
}

std::optional<EdgeShapes> edges_of(const Json& json) {
  if (json.is_null()) return std::nullopt;
  return EdgeShapes{EdgeShape{json.at(0), json.at(1)}, EdgeShape{json.at(2), json.at(3)}};
}

Json json_of(const LayerRow& row) {
  return {row.layer,
          row.direction,
          row.turns,
          row.length_mm,
          row.mean_diameter_mm,
          maybe(row.mean_rise_d),
          row.gap_length_mm,
          row.flange_gap_length_mm,
          row.crossings,
          row.bridged_share,
          row.outer_diameter_mm,
          json_of(row.edges)};
}

LayerRow layer_of(const Json& json) {
  LayerRow row;
  row.layer = json.at(0);
  row.direction = json.at(1);
  row.turns = json.at(2);
  row.length_mm = json.at(3);
  row.mean_diameter_mm = json.at(4);
  row.mean_rise_d = maybe<double>(json.at(5));
  row.gap_length_mm = json.at(6);
  row.flange_gap_length_mm = json.at(7);
  row.crossings = json.at(8);
  row.bridged_share = json.at(9);
  row.outer_diameter_mm = json.at(10);
  row.edges = edges_of(json.at(11));
  return row;
}

Json json_of(const Finding& found) {
  Json places = Json::array();
  for (const FindingPlace& place : found.places)
    places.push_back({place.first_node, place.end_node, place.node, place.size_mm});
  const Json side = found.side ? Json(static_cast<int>(*found.side)) : Json(nullptr);
  return {{"kind", static_cast<int>(found.kind)},
          {"layers", {found.layer, found.last_layer}},
          {"turn", found.turn},
          {"side", side},
          {"x", found.x_mm},
          {"angle", found.angle_deg},
          {"length", found.length_mm},
          {"size", {found.size_mm, found.size_d}},
          {"count", found.occurrences},
          {"severity", static_cast<int>(found.severity)},
          {"places", std::move(places)},
          {"text", found.text}};
}

Finding finding_of(const Json& json) {
  Finding found;
  found.kind = static_cast<FindingKind>(json.at("kind").get<int>());
  found.layer = json.at("layers").at(0);
  found.last_layer = json.at("layers").at(1);
  found.turn = json.at("turn");
  if (const std::optional<int> side = maybe<int>(json.at("side"))) found.side = static_cast<Side>(*side);
  found.x_mm = json.at("x");
  found.angle_deg = json.at("angle");
  found.length_mm = json.at("length");
  found.size_mm = json.at("size").at(0);
  found.size_d = json.at("size").at(1);
  found.occurrences = json.at("count");
  found.severity = static_cast<FindingSeverity>(json.at("severity").get<int>());
  for (const Json& place : json.at("places"))
    found.places.push_back({place.at(0), place.at(1), place.at(2), place.at(3)});
  found.text = json.at("text");
  return found;
}

Json json_of(const OuterDiameter& outer) {
  Json at = nullptr;
  if (outer.greatest_at) at = {outer.greatest_at->x_mm, outer.greatest_at->angle_deg};
  return {outer.left_mm, outer.middle_mm, outer.right_mm, outer.greatest_mm, std::move(at)};
}

OuterDiameter outer_of(const Json& json) {
  OuterDiameter outer{json.at(0), json.at(1), json.at(2), json.at(3), {}};
  const Json& at = json.at(4);
  if (!at.is_null()) outer.greatest_at = {at.at(0), at.at(1)};
  return outer;
}

Json json_of(const std::optional<UnfinishedLayer>& last) {
  if (!last) return nullptr;
  return {last->layer, last->turns, last->end_x_mm, last->outer_diameter_mm};
}

std::optional<UnfinishedLayer> unfinished_of(const Json& json) {
  if (json.is_null()) return std::nullopt;
  return UnfinishedLayer{json.at(0), json.at(1), json.at(2), json.at(3)};
}

Json json_of(const Measurements& m) {
  Json layers = Json::array(), findings = Json::array();
  for (const LayerRow& row : m.layers) layers.push_back(json_of(row));
  for (const Finding& found : m.findings) findings.push_back(json_of(found));
  return {{"layers", std::move(layers)},
          {"surface", {m.surface.x_mm, m.surface.mean_mm, m.surface.least_mm, m.surface.greatest_mm}},
          {"outer", json_of(m.outer_diameter)},
          {"unfinished", json_of(m.unfinished_layer)},
          {"edges", json_of(m.edges)},
          {"fill", m.fill_factor},
          {"rim", m.rim_clearance_mm},
          {"mass", maybe(m.fiber_mass_kg)},
          {"time", maybe(m.wind_time_s)},
          {"findings", std::move(findings)}};
}

Measurements measurements_of(const Json& json) {
  Measurements m;
  for (const Json& row : json.at("layers")) m.layers.push_back(layer_of(row));
  const Json& surface = json.at("surface");
  m.surface = {surface.at(0), surface.at(1), surface.at(2), surface.at(3)};
  m.outer_diameter = outer_of(json.at("outer"));
  m.unfinished_layer = unfinished_of(json.at("unfinished"));
  m.edges = edges_of(json.at("edges"));
  m.fill_factor = json.at("fill");
  m.rim_clearance_mm = json.at("rim");
  m.fiber_mass_kg = maybe<double>(json.at("mass"));
  m.wind_time_s = maybe<double>(json.at("time"));
  for (const Json& found : json.at("findings")) m.findings.push_back(finding_of(found));
  return m;
}

}  // namespace

std::vector<std::uint8_t> to_bytes(const Build& build, const Measurements& measurements) {
  return Json::to_cbor({{"build", json_of(build)}, {"measurements", json_of(measurements)}});
}

std::optional<ReceivedWound> from_bytes(const std::uint8_t* bytes, std::size_t count, NodeStore::Columns columns) {
  try {
    const Json json = Json::from_cbor(bytes, bytes + count);
    Measurements measurements = measurements_of(json.at("measurements"));
    return ReceivedWound{build_of(json.at("build"), std::move(columns)), std::move(measurements)};
  } catch (const Json::exception&) {
    return std::nullopt;
  } catch (const std::length_error&) {
    return std::nullopt;
  }
}

}  // namespace laywright
