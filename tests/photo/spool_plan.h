// Plans of the spools that are rendered.
#pragma once

#include <string>

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "photo/rendered_spool.h"
#include "plan/plan_file.h"

namespace laywright::testing {

inline Plan plan_of(const RenderedSpool& spool, double fiber_mm) {
  const std::string text = fmt::format(
      "format = \"lay-plan 1\"\n[spool]\nbarrel_diameter = \"{} mm\"\nflange_diameter = \"{} mm\"\n"
      "inside_width = \"{} mm\"\nflange_taper = \"{} rad\"\n[fiber]\ndiameter = \"{} mm\"\nfriction = "
      "0.5\n[traverse]\n"
      "motion = \"continuous\"\npitch = \"{} mm\"\nleft_stop = \"{} mm\"\nright_stop = \"{} mm\"\nstart = \"left\"\n"
      "free_length = \"200 mm\"\n[traverse.reversal]\nkind = \"instant\"\n[wind]\nturns = 100\n",
      spool.barrel_diameter_mm, spool.flange_diameter_mm, spool.inside_width_mm, spool.flange_taper_rad, fiber_mm,
      1.05 * fiber_mm, 0.5 * fiber_mm, 0.5 * fiber_mm);
  Result<Plan> plan = plan_from_text(text, "rendered");
  for (const Issue& issue : plan.issues()) UNSCOPED_INFO(to_text(issue));
  REQUIRE(plan.ok());
  return std::move(plan).value();
}

}  // namespace laywright::testing
