#include "photo/profile_report.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "base/quantity_text.h"
#include "figures/csv_field.h"
#include "figures/document_text.h"
#include "figures/figures.h"
#include "figures/shape_words.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::array<const char*, 3> zone_names{"left", "middle", "right"};

// The plan's outline at x.
std::optional<double> planned_at(const PlannedThen& planned, double x) {
  const std::vector<double>& at = planned.x_mm;
  const std::vector<double>& outline = planned.outline_mm;
  if (at.empty()) return std::nullopt;
  const auto above = static_cast<std::size_t>(std::upper_bound(at.begin(), at.end(), x) - at.begin());
  if (above == 0) return outline.front();
  if (above == at.size()) return outline.back();
  return std::lerp(outline[above - 1], outline[above], (x - at[above - 1]) / (at[above] - at[above - 1]));
}

std::string camera_text(const PhotoFound& found) {
  std::string text =
      fmt::format("  scale                   {} px per mm, by the flanges' {} and {} px\n",
                  figure(found.px_per_mm, 3), figure(found.flange_px[0], 1), figure(found.flange_px[1], 1));
  text += fmt::format("  tilt                    {} deg in the picture, {} deg away from the camera; taken out\n",
                      figure(found.tilt_deg, 2), figure(found.yaw_deg, 2));
  text +=
      found.distance_given
          ? fmt::format("  distance                {} mm, as given\n", figure(found.distance_mm, 0))
          : fmt::format(
                "  distance                {} mm, {} to {}, by the inside width; --distance tells it better\n",
                figure(found.distance_mm, 0), figure(found.distance_least_mm, 0), figure(found.distance_most_mm, 0));
  text += fmt::format("  inside width            {} mm\n", figure(found.inside_width_mm, 2));
  text +=
      fmt::format("  edges                   ground turns into spool in {} px\n", figure(found.edge_width_px, 1));
  text += fmt::format("  lens                    {}\n", lens_words(found));
  text += fmt::format("  hidden by the rims      {} mm at the left, {} mm at the right\n",
                      figure(found.hidden_left_mm, 1), figure(found.hidden_right_mm, 1));
  return text;
}

std::string zone_line(const char* name, const std::optional<ZoneDiameter>& seen,
                      const std::optional<double>& planned) {
  std::string line = fmt::format("  {:<10}", name);
  line += seen ? fmt::format("{:>10}  +-{:>5}", figure(seen->diameter_mm, 2), figure(seen->sigma_mm, 2))
               : fmt::format("{:>19}", "hidden");
  line += fmt::format("{:>12}", planned ? figure(*planned, 2) : "-");
  line += fmt::format("{:>12}", seen && planned ? signed_figure(seen->diameter_mm - *planned, 2) : "-");
  if (seen && seen->seen_share < 0.995)
    line += fmt::format("   {} of its width is seen", percent_text(seen->seen_share, 0));
  return line + "\n";
}

Json or_null(const std::optional<double>& value) { return value ? Json(*value) : Json(nullptr); }

std::optional<double> planned_in(const PlannedThen& planned, std::size_t zone) {
  return planned.diameter_mm ? std::optional((*planned.diameter_mm)[zone]) : std::nullopt;
}

}  // namespace

std::string estimate_words() {
  return "An estimate by the plan's flange diameter and inside width. Measure those of the real spool: a percent "
         "that the "
         "flange is off is a percent in all diameters. Left, middle and right share most of their uncertainty; what "
         "they "
         "differ by is known better.";
}

std::string last_layer_words(const PlannedThen& planned) {
  if (!planned.unfinished) return "";
  return fmt::format("The build's last layer is not whole: {}.", unfinished_words(*planned.unfinished));
}

std::string blurred_words(const Plan& plan, const EdgeProfile& profile) {
  if (shows_turns(profile, plan)) return "";
  return fmt::format(
      "Turns are blurred into one line here, which stands lower than their crests, of which the plan speaks: by up "
      "to "
      "{} mm in diameter where turns touch.",
      figure((1.0 - 0.25 * std::numbers::pi) * plan.fiber().diameter_mm, 2));
}

std::string lens_words(const PhotoFound& found) {
  if (!found.lens_bend_px) return "not corrected; the flanges' outer edges do not tell how much it bends";
  std::string words = fmt::format("not corrected; bends the flanges' outer edges by {} +-{} px",
                                  figure(std::abs(*found.lens_bend_px), 1), figure(found.lens_sigma_px, 1));
  if (found.lens_off != 0.0)
    words += fmt::format(", diameters by up to {} %, in their sigma", figure(100.0 * std::abs(found.lens_off), 2));
  return words;
}

std::string profile_text(const Plan& plan, const EdgeProfile& profile, const PlannedThen& planned) {
  std::string text = fmt::format("{}, from a photograph {}\n\nCamera\n", title_of(plan), planned.when);
  text += camera_text(profile.found);
  text += fmt::format("\nOuter diameter, mm\n  {:<10}{:>10}  {:>7}{:>12}{:>12}\n", "", "seen", "1 sigma", "planned",
                      "difference");
  const auto zones = zone_diameters(profile, plan);
  for (std::size_t zone = 0; zone < zone_count; ++zone) {
    text += zone_line(zone_names[zone], zones[zone], planned_in(planned, zone));
  }
  text += '\n';
  if (const std::string last = last_layer_words(planned); !last.empty()) text += paragraph(last, 0);
  if (const std::string blurred = blurred_words(plan, profile); !blurred.empty()) text += paragraph(blurred, 0);
  text += paragraph(estimate_words(), 0);
  return text;
}

std::string profile_json(const Plan& plan, const EdgeProfile& profile, const PlannedThen& planned) {
  const PhotoFound& found = profile.found;
  Json zones;
  const auto seen = zone_diameters(profile, plan);
  for (std::size_t zone = 0; zone < zone_count; ++zone) {
    const auto& each = seen[zone];
    zones[zone_names[zone]] = {{"diameter", each ? Json(each->diameter_mm) : Json(nullptr)},
                               {"sigma", each ? Json(each->sigma_mm) : Json(nullptr)},
                               {"seen_share", each ? each->seen_share : 0.0},
                               {"planned", or_null(planned_in(planned, zone))}};
  }
  Json places = Json::array();
  for (std::size_t i = 0; i < profile.x_mm.size(); ++i) {
    places.push_back({{"x", profile.x_mm[i]},
                      {"diameter", profile.diameter_mm[i]},
                      {"sigma", profile.sigma_mm(i)},
                      {"planned", or_null(planned_at(planned, profile.x_mm[i]))}});
  }
  const Json document = {{"format", "lay-profile 1"},
                         {"plan", {{"title", plan.draft().title}, {"file", plan.draft().file}}},
                         {"when", planned.when},
                         {"camera",
                          {{"px_per_mm", found.px_per_mm},
                           {"tilt_deg", found.tilt_deg},
                           {"yaw_deg", found.yaw_deg},
                           {"flanges_px", {found.flange_px[0], found.flange_px[1]}},
                           {"edge_width_px", found.edge_width_px},
                           {"distance", found.distance_mm},
                           {"distance_given", found.distance_given},
                           {"distance_range", {found.distance_least_mm, found.distance_most_mm}},
                           {"inside_width", found.inside_width_mm},
                           {"lens_bend_px", or_null(found.lens_bend_px)},
                           {"lens_sigma_px", found.lens_bend_px ? Json(found.lens_sigma_px) : Json(nullptr)},
                           {"lens_off", found.lens_bend_px ? Json(found.lens_off) : Json(nullptr)},
                           {"hidden", {found.hidden_left_mm, found.hidden_right_mm}}}},
                         {"shows_turns", shows_turns(profile, plan)},
                         {"outer_diameter", zones},
                         {"profile", places}};
  return document_text(document);
}

std::string profile_csv(const EdgeProfile& profile, const PlannedThen& planned) {
  std::string text = "x_mm,diameter_mm,sigma_mm,planned_mm\n";
  for (std::size_t i = 0; i < profile.x_mm.size(); ++i) {
    text += fmt::format("{},{},{},{}\n", field(profile.x_mm[i]), field(profile.diameter_mm[i]),
                        field(profile.sigma_mm(i)), field(planned_at(planned, profile.x_mm[i])));
  }
  return text;
}

}  // namespace laywright
