#include "figures/rolling_words.h"

#include <vector>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "figures/figures.h"
#include "lay/torsion.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

struct Assumed {
  const char* key;
  const char* words;
};

std::vector<Assumed> assumed_in(const Torsion& torsion) {
  std::vector<Assumed> all;
  if (torsion.modulus_assumed) all.push_back({"fiber.modulus", "glass"});
  if (torsion.core_assumed) {
    all.push_back({"fiber.core_diameter", torsion.modulus_assumed ? "a core of half the diameter" : "no coating"});
  }
  if (torsion.tension_assumed) all.push_back({"wind.tension", "a strain of 0.06 %"});
  return all;
}

std::string digits(double value, int count) { return figure(value, decimals_for(value, count)); }

constexpr const char* soft_words = "; soft: laid turns near a slope give way (an estimate, by discs in contact)";

}  // namespace

std::string rolling_words(const Plan& plan) {
  const Fiber& fiber = plan.fiber();
  const Torsion torsion = torsion_of(plan);
  const std::string soft = is_soft(plan, torsion) ? soft_words : "";
  if (fiber.section == FiberSection::flat) return fmt::format("flat: slides, does not roll{}", soft);
  if (!torsion.rolls)
    return fmt::format("{}{}", fiber.friction == 0.0 ? "without friction it slides" : "held where it lands", soft);
  std::string text = fmt::format("twist adds {} N to a pull of {} N; a stretch over {} mm falls off a turn",
                                 digits(torsion.stiffness_N, 3), digits(torsion.tension_N, 3),
                                 digits(roll_lengths(plan, torsion).critical_mm, 2));
  const std::vector<Assumed> assumed = assumed_in(torsion);
  for (const Assumed& one : assumed)
    text += fmt::format("{}{}", &one == &assumed.front() ? " (assumed: " : ", ", one.words);
  text += assumed.empty() ? "" : ")";
  return text + soft;
}

nlohmann::ordered_json rolling_block(const Plan& plan) {
  const Torsion torsion = torsion_of(plan);
  Json assumed = Json::array();
  for (const Assumed& one : assumed_in(torsion)) assumed.push_back(one.key);
  const auto if_rolls = [&](double value) { return torsion.rolls ? Json(value) : Json(nullptr); };
  const RollLengths lengths = roll_lengths(plan, torsion);
  return {{"rolls", torsion.rolls},
          {"twist_stiffness_N", torsion.stiffness_N},
          {"tension_N", torsion.tension_N},
          {"critical_length", if_rolls(lengths.critical_mm)},
          {"slip_length", if_rolls(lengths.slip_mm)},
          {"slack_depth", slack_depth_mm(plan, torsion)},
          {"soft", is_soft(plan, torsion)},
          {"assumed", std::move(assumed)}};
}

}  // namespace laywright
