#include "answers/capacity_report.h"

#include <cmath>

#include <fmt/format.h>

#include "answers/outcome_json.h"
#include "base/units.h"
#include "figures/figures.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

// A formula against the model's first touch: "+12.3 %".
std::string against(double length_mm, const Capacity& capacity) {
  return signed_figure(100.0 * (length_mm / capacity.first_touch_mm - 1.0), 1) + " %";
}

std::string row(const std::string& name, double length_mm, const std::string& rest) {
  return fmt::format("  {:<30} {:>12} {:>9}\n", name, length_text(length_mm), rest);
}

std::string asked_for(const Plan& plan, const Capacity& capacity) {
  if (!plan.wind().length_mm) return "";
  const double asked = *plan.wind().length_mm, share = asked / capacity.first_touch_mm;
  return asked <= capacity.first_touch_mm
             ? fmt::format("The plan's {} take up {} of that.", length_text(asked), percent_text(share, 0))
             : fmt::format("The plan's {} do not fit: {} too much.", length_text(asked),
                           length_text(asked - capacity.first_touch_mm));
}

}  // namespace

std::string capacity_text(const Plan& plan, const Capacity& capacity) {
  std::string text = title_of(plan) + '\n';
  text += fmt::format("  space           barrel {} mm, depth {} mm up to a rim clearance of {} mm, width {} mm\n",
                      setting(capacity.space.barrel_mm), setting(capacity.space.depth_mm),
                      setting(capacity.rim_clearance_mm), setting(capacity.space.width_mm));
  text += "\nBy the model, with the plan's settings\n";
  text += row("until the first fiber touches", capacity.first_touch_mm, "");
  text += paragraph(fmt::format("{} turns; the first place where a fiber stands as high as the clearance allows",
                                figure(capacity.first_touch_turns, 1)),
                    6);
  text += row(capacity.stopped_by_rim ? "until the fiber leaves the rim" : "until a whole turn does",
              capacity.on_average_mm, against(capacity.on_average_mm, capacity));
  text += paragraph(fmt::format("{} turns in {}, fill factor {}", figure(capacity.on_average_turns, 1),
                                counted(capacity.layers, "layer"), figure(capacity.fill_factor, 4)),
                    6);
  if (const std::string asked = asked_for(plan, capacity); !asked.empty()) text += paragraph(asked, 2);
  text += "\nBy formulas\n";
  for (const CapacityRow& formula : capacity.formulas) {
    text += row(formula.name, formula.length_mm, against(formula.length_mm, capacity));
    text += paragraph("Leaves out: " + formula.leaves_out + ". Source: " + formula.source + ".", 6);
  }
  return text;
}

std::string capacity_json(const Plan& plan, const Capacity& capacity) {
  Json formulas = Json::array();
  for (const CapacityRow& row : capacity.formulas) {
    formulas.push_back({{"name", row.name},
                        {"length_m", row.length_mm / mm_per_m},
                        {"leaves_out", row.leaves_out},
                        {"source", row.source}});
  }
  return document_text({{"format", "lay-capacity 1"},
                        {"plan", {{"title", plan.title()}, {"file", plan.file()}}},
                        {"space",
                         {{"barrel_diameter", capacity.space.barrel_mm},
                          {"depth", capacity.space.depth_mm},
                          {"width", capacity.space.width_mm},
                          {"rim_clearance", capacity.rim_clearance_mm}}},
                        {"model",
                         {{"first_touch_length_m", capacity.first_touch_mm / mm_per_m},
                          {"first_touch_turns", capacity.first_touch_turns},
                          {"whole_turn_length_m", capacity.on_average_mm / mm_per_m},
                          {"whole_turn_turns", capacity.on_average_turns},
                          {"layers", capacity.layers},
                          {"fill_factor", capacity.fill_factor},
                          {"stopped_by_rim", capacity.stopped_by_rim}}},
                        {"formulas", std::move(formulas)}});
}

}  // namespace laywright
