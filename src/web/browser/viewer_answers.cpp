// Questions about the build.
#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "figures/customer_words.h"
#include "figures/figures.h"
#include "figures/json.h"
#include "figures/pattern_report.h"
#include "scene/marks.h"
#include "web/browser/viewer.h"

namespace laywright {
namespace {

using Json = nlohmann::json;

std::string color_text(const Rgba& c) { return fmt::format("#{:02x}{:02x}{:02x}", c.r, c.g, c.b); }

Json maybe(const std::optional<double>& value) { return value ? Json(*value) : Json(nullptr); }

}  // namespace

// The document that the command line prints, what the page shows beside it, the patterns of the plan, its settings and the wind
// in a line each, and how fine the build is.
nlohmann::json Viewer::results(const Json& /*in*/) {
  const Pass& pass = wound_->pass;
  Json marks = Json::array();
  for (const Finding& found : wound_->measurements().findings)
    marks.push_back({{"words", words_for(found.kind)}, {"colour", color_text(finding_rgba(found.kind))}});
  const Plan& plan = wound_->plan();
  return {{"document", Json::parse(to_json(plan, wound_->build(), wound_->measurements()))},
          {"marks", std::move(marks)},
          {"pattern", Json::parse(pattern_json(plan, patterns(plan, usual_gap_d)))},
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
  return {{"turn", f.turn},
          {"layer", f.layer},
          {"direction", direction_name(f.direction)},
          {"turnInLayer", f.turn_in_layer},
          {"length", f.length_mm},
          {"x", f.x_mm},
          {"r", f.r_mm},
          {"angle", f.angle_deg},
          {"support", name_of(f.support)},
          {"ridesUp", f.rides_up},
          {"rise", maybe(f.rise_d)},
          {"gap", maybe(f.gap_d)},
          {"ways",
           {{"previous", f.before.has_value()},
            {"next", f.after.has_value()},
            {"left", f.left.has_value()},
            {"right", f.right.has_value()},
            {"above", f.above.has_value()},
            {"below", f.below.has_value()}}}};
}

}  // namespace laywright
