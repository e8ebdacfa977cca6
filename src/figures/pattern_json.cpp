
#include <nlohmann/json.hpp>

#include "base/spelling.h"
#include "base/units.h"
#include "figures/document_text.h"
#include "figures/pattern_report.h"
#include "figures/pattern_words.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

// What the next double stroke does; the same keys in a row and in a setting that mends it.
Json pattern_keys(const Pattern& pattern) {
  const bool applies = pattern.kind != PatternKind::close_wind;
  const Displacement& next = pattern.nearest;
  const auto or_null = [&](const auto& value) { return applies ? Json(value) : Json(nullptr); };
  return {{"turns_per_double_stroke", pattern.ratio},
          {"verdict", name_of(pattern.kind)},
          {"near_turns", or_null(next.turns)},
          {"near_double_strokes", or_null(next.starts)},
          {"ahead", or_null(next.ahead_mm)},
          {"ahead_d", or_null(next.ahead_d)},
          {"returns_after_double_strokes", or_null(pattern.returns_after)}};
}

Json safe_json(const PatternRow& row) {
  Json list = Json::array();
  for (const SafeSetting& setting : row.safe) {
    Json one = {
        {"key", key_of(row, setting.what)}, {"value", setting.value_mm}, {"instead_of", setting.instead_of_mm}};
    one.update(pattern_keys(setting.pattern));
    list.push_back(std::move(one));
  }
  return list;
}

Json row_json(const PatternRow& row, double gap_d) {
  const bool applies = row.pattern.kind != PatternKind::close_wind;
  Json json = {
      {"from_layer", row.from_layer},
      {"to_layer", row.reached ? Json(row.to_layer) : Json(nullptr)},
      {"pitch", row.cycle.pitch_mm},
      {"stroke", row.cycle.stroke_mm},
      {"diameter", {{"inside", row.inside_mm}, {"outside", row.outside_mm}}},
      {"angle", {{"inside", row.inside_angle_rad * deg_per_rad}, {"outside", row.outside_angle_rad * deg_per_rad}}}};
  json.update(pattern_keys(row.pattern));
  json["outside_ahead_d"] = applies ? Json(row.outside_ahead_d) : Json(nullptr);
  json["scatter_d"] = applies ? Json(row.scatter_d) : Json(nullptr);
  json["safe_settings"] = safe_json(row);
  json["text"] = capitalised(pattern_words(row, gap_d));
  return json;
}

}  // namespace

std::string pattern_json(const Plan& plan, const PatternTable& table) {
  Json rows = Json::array();
  for (const PatternRow& row : table.rows) rows.push_back(row_json(row, table.gap_d));
  return document_text({{"format", "lay-pattern 1"},
                        {"plan", {{"title", plan.title()}, {"file", plan.file()}}},
                        {"stepped", table.stepped},
                        {"fiber_diameter", plan.fiber().diameter_mm},
                        {"gap_d", table.gap_d},
                        {"rows", std::move(rows)}});
}

}  // namespace laywright
