#include "figures/shape_words.h"

#include <array>

#include <fmt/format.h>

#include "figures/figures.h"

namespace laywright {

namespace {

std::string sides(const std::array<double, 3>& outer_mm) {
  return fmt::format("{} mm left, {} mm middle, {} mm right", figure(outer_mm[0], 2), figure(outer_mm[1], 2),
                     figure(outer_mm[2], 2));
}

}  // namespace

std::string outer_diameter_words(const OuterDiameter& outer) {
  return fmt::format("{}, {} mm greatest", sides({outer.left_mm, outer.middle_mm, outer.right_mm}),
                     figure(outer.greatest_mm, 2));
}

std::string unfinished_words(const UnfinishedLayer& last) {
  const std::string turns = figure(last.turns, 1);
  if (turns == "0.0")
    return fmt::format("layer {} has just begun, {} mm from the left flange", last.layer, figure(last.end_x_mm, 2));
  return fmt::format("layer {} ends after {} turns, {} mm from the left flange", last.layer, turns,
                     figure(last.end_x_mm, 2));
}

std::string with_it_words(const UnfinishedLayer& last) {
  // Without a whole layer there is nothing else to measure.
  return fmt::format("{}; {}", sides(last.outer_diameter_mm),
                     last.layer == 1 ? "all count it" : "greatest counts it");
}

std::string edges_words(const Measurements& measurements) {
  if (!measurements.edges) return "not told: no layer is whole";
  const auto& [left, right] = *measurements.edges;
  return fmt::format("ridge {} mm left, {} mm right; valley {} mm left, {} mm right", figure(left.ridge_mm, 2),
                     figure(right.ridge_mm, 2), figure(left.valley_mm, 2), figure(right.valley_mm, 2));
}

}  // namespace laywright
