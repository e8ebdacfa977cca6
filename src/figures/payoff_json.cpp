#include "figures/payoff_json.h"

#include <utility>

#include <nlohmann/json.hpp>

#include "base/units.h"
#include "figures/document_text.h"
#include "figures/json_number.h"
#include "figures/payoff_report.h"
#include "measure/severity.h"
#include "payoff/payoff_words.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

Json catch_json(const Plan& plan, const PayoffCatch& caught) {
  return {{"held_by", name_of(caught.by)},
          {"layer", caught.layer},
          {"turn", number(caught.turn)},
          {"x", number(caught.x_mm)},
          {"angle", number(caught.angle_deg)},
          {"from_outer_end_m", number(caught.from_outer_end_mm / mm_per_m)},
          {"length_m", number(caught.length_mm / mm_per_m)},
          {"force", number(caught.multiple)},
          {"severity", name_of(caught.severity)},
          {"text", sentence_of(caught, plan)}};
}

}  // namespace

nlohmann::ordered_json payoff_block(const Plan& plan, const Build& build, const PayoffRun& run) {
  Json layers = Json::array(), catches = Json::array();
  for (const PayoffLayer& layer : run.layers) {
    layers.push_back({{"layer", layer.layer},
                      {"greatest_force", number(layer.greatest)},
                      {"mean_force", number(layer.mean)},
                      {"catches", layer.catches},
                      {"caught_m", number(layer.caught_mm / mm_per_m)}});
  }
  for (const PayoffCatch& caught : run.catches) catches.push_back(catch_json(plan, caught));
  return {{"drawn_off", name_of(run.way)},
          {"line", payoff_line(run, build.length_mm)},
          {"basis", basis_of(run)},
          {"limit", number(run.limit)},
          {"friction", number(run.friction)},
          {"eye", number(run.eye_mm)},
          {"greatest_force", number(run.greatest)},
          {"mean_force", number(run.mean)},
          {"caught_m", number(run.caught_mm / mm_per_m)},
          {"catches", run.catch_count},
          {"grave_catches", run.of_severity[static_cast<std::size_t>(FindingSeverity::grave)]},
          {"hardest", run.hardest ? catch_json(plan, *run.hardest) : Json(nullptr)},
          {"hardest_catches", std::move(catches)},
          {"layers", std::move(layers)}};
}

std::string payoff_json(const Plan& plan, const Build& build, const PayoffRun& run) {
  return document_text({{"format", "lay-payoff 1"},
                        {"plan", {{"title", plan.title()}, {"file", plan.file()}}},
                        {"payoff", payoff_block(plan, build, run)}});
}

}  // namespace laywright
