#include "figures/json.h"

#include <array>
#include <cmath>
#include <cstddef>
#include <optional>

#include <nlohmann/json.hpp>

#include "figures/build_document.h"
#include "figures/dial_json.h"
#include "figures/document_text.h"
#include "figures/figures.h"
#include "figures/json_number.h"
#include "figures/payoff_json.h"
#include "figures/rolling_words.h"
#include "figures/takeup_json.h"
#include "figures/verdict_json.h"
#include "measure/severity.h"
#include "plan/fields.h"
#include "plan/revision.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

Json range(const std::array<double, 2>& ends, double unit = 1.0) {
  return Json::array({number(ends[0] / unit), number(ends[1] / unit)});
}

// Null where the plan says nothing of one; each text null where it says nothing of that.
Json order(const PlanOrder& order) {
  if (order == PlanOrder{}) return nullptr;
  Json block = Json::object();
  for (const OrderField& field : order_fields()) {
    const std::string& text = order.*field.text;
    block[std::string(field.key)] = text.empty() ? Json(nullptr) : Json(text);
  }
  return block;
}

Json outer_diameter(const OuterDiameter& outer) {
  Json diameter = sides_json({outer.left_mm, outer.middle_mm, outer.right_mm});
  diameter["greatest"] = number(outer.greatest_mm);
  diameter["greatest_at"] = nullptr;
  if (outer.greatest_at) {
    diameter["greatest_at"] = {{"x", number(outer.greatest_at->x_mm)},
                               {"angle", number(outer.greatest_at->angle_deg)}};
  }
  return diameter;
}

Json unfinished_layer(const std::optional<UnfinishedLayer>& last) {
  if (!last) return nullptr;
  return {{"layer", last->layer},
          {"turns", number(last->turns)},
          {"end_x", number(last->end_x_mm)},
          {"outer_diameter", sides_json(last->outer_diameter_mm)}};
}

Json edges(const std::optional<EdgeShapes>& shapes) {
  const auto side = [&](std::size_t at) -> Json {
    if (!shapes) return {{"ridge", nullptr}, {"valley", nullptr}};
    return {{"ridge", number((*shapes)[at].ridge_mm)}, {"valley", number((*shapes)[at].valley_mm)}};
  };
  return {{"left", side(0)}, {"right", side(1)}};
}

Json totals(const Build& build, const Measurements& m) {
  return {{"turns", number(build.turns)},
          {"length_m", number(build.length_mm / 1e3)},
          {"layers", m.layers.size()},
          {"stations_per_turn", build.stations_per_turn},
          {"outer_diameter", outer_diameter(m.outer_diameter)},
          {"unfinished_layer", unfinished_layer(m.unfinished_layer)},
          {"edges", edges(m.edges)},
          {"fill_factor", number(m.fill_factor)},
          {"rim_clearance", number(m.rim_clearance_mm)},
          {"mass_kg", number(m.fiber_mass_kg)},
          {"wind_time_s", number(m.wind_time_s)},
          {"stopped_by", name_of(build.stopped_by)},
          {"seed", build.seed}};
}

Json layer(const LayerRow& row) {
  return {{"layer", row.layer},
          {"direction", direction_name(row.direction)},
          {"turns", number(row.turns)},
          {"length_m", number(row.length_mm / 1e3)},
          {"mean_diameter", number(row.mean_diameter_mm)},
          {"mean_rise_d", number(row.mean_rise_d)},
          {"gap_length_m", number(row.gap_length_mm / 1e3)},
          {"crossings", row.crossings},
          {"bridged_share", number(row.bridged_share)}};
}

// Where the largest of them are largest.
Json places(const Finding& found, const Build& build) {
  Json places = Json::array();
  const auto stations = static_cast<std::size_t>(build.stations_per_turn);
  for (const FindingPlace& place : found.places) {
    places.push_back(
        {{"turn", number(static_cast<double>(place.node) / build.stations_per_turn)},
         {"x", number(build.nodes.x(place.node))},
         {"angle", number(360.0 * static_cast<double>(place.node % stations) / build.stations_per_turn)},
         {"size", number(place.size_mm)}});
  }
  return places;
}

Json finding(const Finding& found, const Build& build) {
  return {{"kind", name_of(found.kind)},
          {"layer", found.layer},
          {"last_layer", found.last_layer},
          {"turn", number(found.turn)},
          {"side", found.side ? Json(name_of(*found.side)) : Json(nullptr)},
          {"x", range(found.x_mm)},
          {"angle", range(found.angle_deg)},
          {"length_m", range(found.length_mm, 1e3)},
          {"size", number(found.size_mm)},
          {"size_d", number(found.size_d)},
          {"occurrences", found.occurrences},
          {"severity", name_of(found.severity)},
          {"places", places(found, build)},
          {"text", found.text}};
}

}  // namespace

nlohmann::ordered_json build_document(const Plan& plan, const Build& build, const Measurements& measurements,
                                      const TakeupRun& run, const WindVerdict& verdict) {
  Json layers = Json::array(), findings = Json::array();
  for (const LayerRow& row : measurements.layers) layers.push_back(layer(row));
  for (const Finding& found : measurements.findings) findings.push_back(finding(found, build));
  return {{"format", "lay-build 1"},
          {"plan",
           {{"title", plan.title()},
            {"file", plan.file()},
            {"revision", revision_of(plan.draft())},
            {"order", order(plan.order())}}},
          {"verdict", verdict_block(plan, build, verdict)},
          {"totals", totals(build, measurements)},
          {"rolling", rolling_block(plan)},
          {"dialled", dialled_block(plan)},
          {"layers", std::move(layers)},
          {"findings", std::move(findings)},
          {"takeup", takeup_block(plan, run)},
          {"payoff", run.payoff ? payoff_block(plan, build, *run.payoff) : Json(nullptr)}};
}

std::string to_json(const Plan& plan, const Build& build, const Measurements& measurements, const TakeupRun& run,
                    const WindVerdict& verdict) {
  return document_text(build_document(plan, build, measurements, run, verdict));
}

std::string to_json(const Plan& plan, const Build& build, const Measurements& measurements, const TakeupRun& run) {
  return to_json(plan, build, measurements, run, verdict_of(plan, build, measurements, &run));
}

std::string to_json(const Plan& plan, const Build& build, const Measurements& measurements) {
  Progress progress;
  return to_json(plan, build, measurements, take_up(plan, build, measurements, progress));
}

}  // namespace laywright
