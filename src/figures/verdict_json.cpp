#include "figures/verdict_json.h"

#include <utility>

#include "figures/json_number.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

}  // namespace

nlohmann::ordered_json verdict_block(const Plan& plan, const Build& build, const WindVerdict& verdict) {
  Json checks = Json::array();
  for (const Check& check : verdict.checks) {
    checks.push_back({{"name", name_of(check)},
                      {"value", number(check.value)},
                      {"limit", number(check.limit)},
                      {"margin", number(check.margin)},
                      {"grade", name_of(check.grade)},
                      {"unit", unit_of(check.what)},
                      {"at_least", check.at_least}});
  }
  Json draws = verdict.draws.empty() ? Json(nullptr) : Json::array();
  for (const DrawSeen& draw : verdict.draws) {
    draws.push_back({{"seed", draw.seed},
                     {"fiber_diameter", number(draw.fiber_diameter_mm)},
                     {"grade", name_of(draw.grade)},
                     {"decides", draw.decides}});
  }
  return {{"grade", name_of(verdict.grade)}, {"line", verdict_line(verdict)},
          {"reason", verdict.reason},        {"first", verdict.first ? Json(*verdict.first) : Json(nullptr)},
          {"weighed_as", weighed_as(plan)},  {"draw", draw_words(build, verdict)},
          {"draws", std::move(draws)},       {"checks", std::move(checks)}};
}

}  // namespace laywright
