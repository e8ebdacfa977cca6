// Questions about the build.
#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "base/spelling.h"
#include "desk/place_words.h"
#include "figures/customer_words.h"
#include "figures/figures.h"
#include "figures/json.h"
#include "figures/pattern_report.h"
#include "figures/pattern_words.h"
#include "figures/wind_rows.h"
#include "measure/severity.h"
#include "scene/marks.h"
#include "web/browser/viewer.h"

namespace laywright {
namespace {

using Json = nlohmann::json;

std::string color_text(const Rgba& c) { return fmt::format("#{:02x}{:02x}{:02x}", c.r, c.g, c.b); }

Json rows_of(const std::vector<FigureRow>& rows) {
  Json all = Json::array();
  for (const FigureRow& row : rows) all.push_back({{"name", row.name}, {"value", row.value}, {"more", row.more}});
  return all;
}

// Null where nothing is crossed.
Json pattern_of(const PatternTable& table, bool inch) {
  if (std::none_of(table.rows.begin(), table.rows.end(), is_crossed)) return nullptr;
  Json rows = Json::array(), told = Json::array();
  for (const PatternRow& row : table.rows) {
    rows.push_back(pattern_cells(row, inch));
    Json safe = Json::array();
    for (const SafeSetting& each : row.safe) safe.push_back(safe_words(row, each, inch));
    told.push_back({{"text", fmt::format("Layers {}: {}", layers_text(row), pattern_words(row, table.gap_d))},
                    {"safe", std::move(safe)}});
  }
  return {{"head", pattern_heads()}, {"rows", std::move(rows)}, {"told", std::move(told)}};
}

// All figures of a build as the page sets them, in one system of units.
Json told_of(const Wound& wound, const PatternTable& table, bool inch) {
  const Measurements& m = wound.measurements();
  Json layers = Json::array(), findings = Json::array();
  for (const LayerRow& layer : m.layers) layers.push_back(layer_cells(layer, inch));
  for (const Finding& found : m.findings) findings.push_back(finding_line(found, inch));
  return {{"figures", rows_of(wind_figures(wound.build(), m, inch))},
          {"layers", {{"head", layer_heads(inch)}, {"rows", std::move(layers)}}},
          {"pattern", pattern_of(table, inch)},
          {"findings", std::move(findings)}};
}

}  // namespace

// The document that the command line prints, what the page shows of it in either system of units, its settings and the wind in a
// line each, and how fine the build is.
nlohmann::json Viewer::results(const Json& /*in*/) {
  const Pass& pass = wound_->pass;
  Json marks = Json::array();
  const std::vector<Finding>& findings = wound_->measurements().findings;
  for (const Finding& found : findings)
    marks.push_back(
        {{"words", capitalised(words_for(found.kind))}, {"colour", color_text(finding_rgba(found.kind))}});
  const auto small = static_cast<std::size_t>(std::count_if(findings.begin(), findings.end(), is_small));
  const Plan& plan = wound_->plan();
  const PatternTable table = patterns(plan, usual_gap_d);
  return {{"document", Json::parse(to_json(plan, wound_->build(), wound_->measurements()))},
          {"marks", std::move(marks)},
          {"pattern", Json::parse(pattern_json(plan, table))},
          {"metric", told_of(*wound_, table, false)},
          {"inch", told_of(*wound_, table, true)},
          {"laid", fmt::format("Laid: {}, {}.", counted(wound_->measurements().layers.size(), "layer"),
                               counted(findings.size(), "finding"))},
          {"small", counted(small, "small one")},
          {"settings", settings_line(plan)},
          {"wound", wound_sentence(plan, laid_figures(wound_->build(), wound_->measurements()))},
          {"share", pass.share},
          {"full", pass.full()}};
}

// Of all that was laid, as hexadecimal digits.
nlohmann::json Viewer::hash(const Json& /*in*/) { return fmt::format("{:016x}", wound_->build().hash()); }

// {x, y}: the turn at that place of the picture.
nlohmann::json Viewer::pick(const Json& in) {
  const Ray ray = ray_through(view(), in.at("x"), in.at("y"));
  const std::optional<FiberHit> hit = pick_fiber(wound_->source, view(), ray);
  stage_ = with_picked_node(std::move(stage_), *wound_, hit ? std::optional(hit->node) : std::nullopt);
  return facts();
}

// {way}: from the picked turn to the one beside it; "none" lets it go, "here" winds up to it.
nlohmann::json Viewer::toward(const Json& in) {
  constexpr std::array<std::string_view, 6> ways{"next", "previous", "above", "below", "left", "right"};
  const std::string way = in.at("way");
  const std::optional<std::size_t> node = picked_node(stage_, *wound_);
  if (!node) return nullptr;
  if (way == "none") {
    stage_ = with_picked_node(std::move(stage_), *wound_, std::nullopt);
  } else if (way == "here") {
    return scrub({{"turn", *stage_.picked_turn}});
  } else {
    const auto* const found = std::find(ways.begin(), ways.end(), way);
    if (found == ways.end()) return nullptr;
    const auto there = neighbour(*wound_, *node, static_cast<Toward>(found - ways.begin()));
    if (there) stage_ = with_picked_node(std::move(stage_), *wound_, there);
  }
  return nullptr;
}

// {finding}: where its worst place is in the picture now; null when it is not before the eye.
nlohmann::json Viewer::place(const Json& in) {
  const std::size_t finding = in.at("finding");
  if (finding >= wound_->measurements().findings.size()) return nullptr;
  const auto at = in_picture(view(), mark_of(wound_->source, view(), finding).place);
  return at ? Json{{"x", at->x}, {"y", at->y}} : Json(nullptr);
}

nlohmann::json Viewer::facts() const {
  const std::optional<std::size_t> node = picked_node(stage_, *wound_);
  if (!node) return nullptr;
  const NodeFacts f = facts_of(wound_->source, *node);
  Json rows = Json::array();
  for (const Fact& each : turn_facts(f, wound_->source.d(), stage_.view.units))
    rows.push_back({each.name, each.value});
  return {{"turn", f.turn},
          {"layer", f.layer},
          {"direction", direction_name(f.direction)},
          {"x", f.x_mm},
          {"r", f.r_mm},
          {"angle", f.angle_deg},
          {"rows", std::move(rows)},
          {"ways",
           {{"previous", f.before.has_value()},
            {"next", f.after.has_value()},
            {"left", f.left.has_value()},
            {"right", f.right.has_value()},
            {"above", f.above.has_value()},
            {"below", f.below.has_value()}}}};
}

}  // namespace laywright
