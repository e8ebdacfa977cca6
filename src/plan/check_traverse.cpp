#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/units.h"
#include "plan/checker.h"

namespace laywright {
namespace {

// A share of the stroke beyond which scattering stops would cross each other.
constexpr double most_scatter = 0.1;
// A share of the width below which a stroke is none, but what is left of rounding.
constexpr double rounding = 1e-9;
// Strokes within one turn: more than any winder makes, and than the stations of a turn resolve.
constexpr double most_strokes_per_turn = 4.0;
// Helix angle up to which the lay model is good to two percent; from 45 degrees on its lengths mean nothing.
constexpr double steep_rad = std::numbers::pi / 12.0;

void check_motion(Checker& c) {
  const Traverse& traverse = c.draft().traverse;
  if (!c.sound({"traverse.motion", "traverse.step_angle"})) return;
  if (traverse.motion == Motion::stepped && traverse.step_angle_rad == 0.0) {
    c.error(
        "traverse.step_angle",
        "must be given for a stepped traverse: the spool angle in which the guide moves one pitch, like \"45 deg\"",
        "above 0 deg, up to 360 deg");
  }
  if (traverse.motion == Motion::continuous && traverse.step_angle_rad != 0.0) {
    c.warn("traverse.step_angle", "is not used by a continuous traverse");
  }
}

void check_reversal(Checker& c) {
  const Reversal& reversal = c.draft().traverse.reversal;
  if (!c.sound({"traverse.motion", "traverse.reversal.kind", "traverse.reversal.turns"})) return;
  const std::string kind = c.shown("traverse.reversal.kind");
  if (reversal.kind == ReversalKind::instant && reversal.turns > 0.0) {
    c.warn("traverse.reversal.turns",
           "is not used by an instant reversal; did you mean kind = \"dwell\" or \"ramp\"?");
  }
  if (reversal.kind != ReversalKind::instant && reversal.turns == 0.0) {
    c.warn("traverse.reversal.kind", fmt::format("a {} over 0 turns is the same as an instant reversal", kind));
  }
  if (reversal.kind == ReversalKind::ramp && c.draft().traverse.motion == Motion::stepped) {
    c.error("traverse.reversal.kind", "a stepped traverse cannot ramp; its guide stands still between steps",
            "instant or dwell");
  }
}

// What must be small against the stroke.
void check_against_stroke(Checker& c) {
  if (!c.sound({"spool.inside_width", "traverse.left_stop", "traverse.right_stop"})) return;
  const Traverse& traverse = c.draft().traverse;
  const double stroke = c.draft().spool.inside_width_mm - traverse.left_stop_mm - traverse.right_stop_mm;
  const auto at_most = [&](const std::string& path, double value, double limit, std::string_view what) {
    if (!c.sound(path) || value < limit) return;
    c.error(path, std::string(what), "less than " + c.in_unit_of(path, limit));
  };
  at_most("traverse.guide_play", traverse.guide_play_mm, stroke, "the guide's play is larger than its stroke");
  at_most("traverse.reversal.lost_motion", traverse.reversal.lost_motion_mm, stroke,
          "with so much lost motion the guide never moves");
  at_most("traverse.reversal.stop_scatter", traverse.reversal.stop_scatter_mm, most_scatter * stroke,
          "stops that scatter so much would cross each other");
}

// The stroke as it stands from a layer on, and where its numbers were given.
struct Stroke {
  double pitch_mm;
  double left_mm;
  double right_mm;
  std::string pitch_path;
  std::string stop_path;
};

void check_steepness(Checker& c, const Stroke& stroke) {
  if (!c.sound({"spool.barrel_diameter", "spool.barrel_taper"})) return;
  const double around = std::numbers::pi * c.draft().spool.least_barrel_diameter_mm();
  if (stroke.pitch_mm > around) {
    c.error(stroke.pitch_path, "lays the fiber steeper than 45 degrees, which the lay model does not cover",
            "up to " + c.in_unit_of(stroke.pitch_path, around));
  } else if (stroke.pitch_mm > around * std::tan(steep_rad)) {
    c.warn(stroke.pitch_path,
           fmt::format("lays the fiber at {} degrees on the barrel; beyond {} degrees all figures are rough "
                       "estimates",
                       figure(std::atan(stroke.pitch_mm / around) * deg_per_rad, 0),
                       figure(steep_rad * deg_per_rad, 0)));
  }
}

void check_strokes_per_turn(Checker& c, const Stroke& stroke, double length_mm) {
  const std::string shown_length = c.in_unit_of(stroke.pitch_path, length_mm);
  if (stroke.pitch_mm > most_strokes_per_turn * length_mm) {
    c.error(
        stroke.pitch_path,
        fmt::format("is so coarse for the stroke, {}, that the guide would turn back more than {} times in a turn",
                    shown_length, most_strokes_per_turn),
        "up to " + c.in_unit_of(stroke.pitch_path, most_strokes_per_turn * length_mm));
  } else if (stroke.pitch_mm > length_mm) {
    c.warn(stroke.pitch_path,
           fmt::format("is coarser than the stroke, {}: the guide turns back within a single turn", shown_length));
  }
}

void check_stroke(Checker& c, const Stroke& stroke, bool stops_changed, bool pitch_changed) {
  const double width = c.draft().spool.inside_width_mm;
  const double length = width - stroke.left_mm - stroke.right_mm;
  if (length <= rounding * width) {
    if (!stops_changed) return;
    return c.error(
        stroke.stop_path,
        fmt::format("the stops cross: inward from the flanges they take up {}, but the spool is {} wide inside",
                    c.in_unit_of("spool.inside_width", stroke.left_mm + stroke.right_mm),
                    c.shown("spool.inside_width")));
  }
  if (!c.sound(stroke.pitch_path) || (!stops_changed && !pitch_changed)) return;
  const Reversal& reversal = c.draft().traverse.reversal;
  if (pitch_changed) check_steepness(c, stroke);
  check_strokes_per_turn(c, stroke, length);
  const bool ramps =
      reversal.kind == ReversalKind::ramp && c.sound({"traverse.reversal.kind", "traverse.reversal.turns"});
  // Half of the turns slow down before a stop and half speed up after it, at half the pitch on average: two such
  // halves share a stroke.
  if (ramps && stroke.pitch_mm * reversal.turns / 2.0 > length) {
    c.error("traverse.reversal.turns",
            fmt::format("the ramps at both stops are longer than the stroke, {}, at pitch {}",
                        c.in_unit_of(stroke.pitch_path, length), c.shown(stroke.pitch_path)),
            fmt::format("0 to {}", setting(2.0 * length / stroke.pitch_mm)));
  }
}

// The traverse's own stroke, then what each step of the wind makes of it.
void check_strokes(Checker& c) {
  if (!c.sound({"spool.inside_width", "traverse.left_stop", "traverse.right_stop"})) return;
  const Traverse& traverse = c.draft().traverse;
  Stroke stroke{traverse.pitch_mm, traverse.left_stop_mm, traverse.right_stop_mm, "traverse.pitch",
                "traverse.right_stop"};
  check_stroke(c, stroke, true, true);
  for (std::size_t i = 0; i < c.draft().wind.steps.size(); ++i) {
    const WindStep& step = c.draft().wind.steps[i];
    const std::string path = step_path(i);
    if (!c.sound(path + ".left_stop") || !c.sound(path + ".right_stop") || !c.sound(path + ".pitch")) return;
    stroke.pitch_mm = step.pitch_mm.value_or(stroke.pitch_mm);
    stroke.left_mm = step.left_stop_mm.value_or(stroke.left_mm);
    stroke.right_mm = step.right_stop_mm.value_or(stroke.right_mm);
    if (step.pitch_mm) stroke.pitch_path = path + ".pitch";
    if (step.left_stop_mm) stroke.stop_path = path + ".left_stop";
    if (step.right_stop_mm) stroke.stop_path = path + ".right_stop";
    check_stroke(c, stroke, step.left_stop_mm || step.right_stop_mm, step.pitch_mm.has_value());
  }
}

}  // namespace

void check_traverse(Checker& checker) {
  check_motion(checker);
  check_reversal(checker);
  check_strokes(checker);
  check_against_stroke(checker);
}

}  // namespace laywright
