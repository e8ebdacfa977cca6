#include <algorithm>
#include <numbers>

#include <fmt/format.h>

#include "plan/checker.h"
#include "plan/size_estimate.h"

namespace laywright {
namespace {

void check_end(Checker& c) {
  const Wind& wind = c.draft().wind;
  // An end that could not be read has been told, and counts as given.
  const auto given = [&](const char* path, bool has_value) { return has_value || !c.sound({path}) ? 1 : 0; };
  const int count = given("wind.length", wind.length_mm.has_value()) + given("wind.turns", wind.turns.has_value()) +
                    given("wind.diameter", wind.diameter_mm.has_value());
  if (count == 0) c.error("wind", "says not where the wind ends; give one of length, turns or diameter");
  if (count < 2) return;
  std::string ends;
  for (const char* key : {"length", "turns", "diameter"}) {
    const std::string value = c.shown(fmt::format("wind.{}", key));
    if (!value.empty()) ends += fmt::format("{}{} {}", ends.empty() ? "" : " and ", key, value);
  }
  c.error("wind", fmt::format("ends in more than one way: {}; keep one of them", ends));
}

void check_diameter(Checker& c) {
  const std::optional<double> diameter = c.draft().wind.diameter_mm;
  if (!diameter ||
      !c.sound({"wind.diameter", "spool.barrel_diameter", "spool.barrel_taper", "spool.flange_diameter"}))
    return;
  const Spool& spool = c.draft().spool;
  const double barrel = std::max(spool.barrel_diameter_mm, spool.barrel_diameter_mm + spool.barrel_taper_mm);
  if (*diameter <= barrel || *diameter > spool.flange_diameter_mm) {
    c.error("wind.diameter", "the wind must end between barrel and rim",
            fmt::format("above {}, up to {}", c.in_unit_of("wind.diameter", barrel),
                        c.in_unit_of("wind.diameter", spool.flange_diameter_mm)));
  }
}

void check_tension(Checker& c) {
  const std::optional<double> tension = c.draft().wind.tension_N;
  const std::optional<double> most = c.draft().fiber.max_tension_N;
  if (tension && most && c.sound({"wind.tension", "fiber.max_tension"}) && *tension > *most) {
    c.error("wind.tension",
            fmt::format("is more than the fiber bears (max_tension, {})", c.shown("fiber.max_tension")),
            "up to " + c.in_unit_of("wind.tension", *most));
  }
}

void check_steps(Checker& c) {
  const std::vector<WindStep>& steps = c.draft().wind.steps;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const std::string from = step_path(i) + ".from_layer";
    if (i > 0 && c.sound(from) && c.sound(step_path(i - 1) + ".from_layer") &&
        steps[i].from_layer <= steps[i - 1].from_layer) {
      c.error(
          from,
          fmt::format("the step before begins at layer {}; put the steps in rising order", steps[i - 1].from_layer),
          fmt::format("{} or more", steps[i - 1].from_layer + 1));
    }
    const bool reads_something = !c.sound(step_path(i) + ".pitch") || !c.sound(step_path(i) + ".left_stop") ||
                                 !c.sound(step_path(i) + ".right_stop");
    if (!reads_something && !steps[i].pitch_mm && !steps[i].left_stop_mm && !steps[i].right_stop_mm) {
      c.warn(step_path(i), "changes nothing; give it pitch, left_stop or right_stop");
    }
  }
}

void check_rim_clearance(Checker& c) {
  if (!c.sound({"limits.rim_clearance", "spool.barrel_diameter", "spool.flange_diameter"})) return;
  const Spool& spool = c.draft().spool;
  const double depth = (spool.flange_diameter_mm - spool.barrel_diameter_mm) / 2.0;
  if (c.draft().limits.rim_clearance_mm >= depth) {
    c.error("limits.rim_clearance", "leaves no room between barrel and rim",
            "less than " + c.in_unit_of("limits.rim_clearance", depth));
  }
}

}  // namespace

void check_wind(Checker& checker) {
  check_end(checker);
  check_diameter(checker);
  check_tension(checker);
  check_steps(checker);
  check_rim_clearance(checker);
}

void check_takeup(Checker& c) {
  const std::optional<Takeup>& takeup = c.draft().takeup;
  if (!takeup) return;
  if (c.sound({"takeup.control", "takeup.taper"})) {
    const bool tapers = takeup->control == TensionControl::taper;
    if (takeup->taper > 0.0 && !tapers) c.warn("takeup.taper", "is used only with control = \"taper\"");
    if (takeup->taper == 0.0 && tapers)
      c.warn("takeup.control", "a taper of 0 is the same as constant tension; set takeup.taper");
  }
  if (takeup->torque_at_full_current_Nmm && !takeup->full_current_A && c.sound({"takeup.full_current"})) {
    c.warn("takeup.torque_at_full_current", "is not enough to set a current; give full_current too");
  }
  if (takeup->full_current_A && !takeup->torque_at_full_current_Nmm && c.sound({"takeup.torque_at_full_current"})) {
    c.warn("takeup.full_current", "is not enough to set a current; give torque_at_full_current too");
  }
  const std::optional<double> speed = c.draft().wind.line_speed_mm_per_s;
  if (!speed || !takeup->speed_ceiling_rpm ||
      !c.sound({"wind.line_speed", "takeup.speed_ceiling", "spool.barrel_diameter"}))
    return;
  const double needed = *speed / (std::numbers::pi * c.draft().spool.barrel_diameter_mm) * 60.0;
  if (*takeup->speed_ceiling_rpm < needed) {
    c.warn("takeup.speed_ceiling",
           fmt::format("is too slow for the empty barrel, which turns at {:.4g} rpm at line speed {}", needed,
                       c.shown("wind.line_speed")));
  }
}

void check_size(Checker& c) {
  const double stations = stations_estimate(c.draft());
  if (stations > most_stations) {
    const bool stepped = c.draft().traverse.motion == Motion::stepped;
    return c.error(
        "traverse.pitch",
        fmt::format("is too coarse for the fiber, {}{}: the build would need about {:.3g} stations per turn, more "
                    "than {:.3g}; check the units",
                    c.shown("fiber.diameter"),
                    stepped ? " and the step angle, " + c.shown("traverse.step_angle") : std::string(), stations,
                    most_stations));
  }
  const double bytes = bytes_estimate(c.draft());
  if (bytes <= most_build_bytes) return;
  constexpr double gib = 1024.0 * 1024.0 * 1024.0;
  const Wind& wind = c.draft().wind;
  const std::string end = wind.length_mm ? "wind.length" : wind.turns ? "wind.turns" : "wind.diameter";
  c.error(
      end,
      fmt::format(
          "the build would need about {:.3g} GiB of memory, more than {:.3g} GiB: about {:.3g} turns with {:.3g} "
          "stations each, from {} {}, barrel {}, fiber {} and pitch {}; check the units, or shorten the wind",
          bytes / gib, most_build_bytes / gib, turns_estimate(c.draft()), stations_estimate(c.draft()),
          end.substr(5), c.shown(end), c.shown("spool.barrel_diameter"), c.shown("fiber.diameter"),
          c.shown("traverse.pitch")));
}

}  // namespace laywright
