#include "advise/dial.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "advise/knob.h"
#include "base/round_figure.h"
#include "plan/guide_cycle.h"
#include "plan/plan_values.h"
#include "verdict/usual_settings.h"

namespace laywright {
namespace {

double now_at(const PlanDraft& draft, const std::string& path) { return value_at(draft, path).value_or(0.0); }

// The traverse's key, and that of every step that sets it anew.
std::vector<Dial::Part> everywhere(const PlanDraft& draft, const std::string& key, double sign = 1.0) {
  std::vector<Dial::Part> parts{{fmt::format("traverse.{}", key), sign}};
  for (std::size_t i = 0; i < draft.wind.steps.size(); ++i) {
    const std::string path = fmt::format("{}.{}", step_path(i), key);
    if (value_at(draft, path)) parts.push_back({path, sign});
  }
  return parts;
}

// What shows in a fiber of this diameter, at this pitch.
double pitch_step(const PlanDraft& draft) {
  return round_figure_below(std::max(0.01 * draft.fiber.diameter_mm, 0.002 * draft.traverse.pitch_mm));
}
double stop_step(const PlanDraft& draft) {
  return round_figure_below(std::max(0.1 * draft.fiber.diameter_mm, 0.05 * draft.traverse.pitch_mm));
}
// As far as anybody would move a stop: five turns, or twice the lag of the fiber behind the guide, which is what a stop
// makes up for.
double stop_range(const PlanDraft& draft) {
  const double lag =
      draft.traverse.free_length_mm * draft.traverse.pitch_mm / (std::numbers::pi * draft.spool.barrel_diameter_mm);
  return std::ceil(std::max(5.0 * draft.fiber.diameter_mm, 2.0 * lag) / stop_step(draft)) * stop_step(draft);
}

Dial pitch_dial(const PlanDraft& draft) {
  const double pitch = draft.traverse.pitch_mm;
  const double range = std::max(1.5 * draft.fiber.diameter_mm, 0.5 * pitch);
  // No finer than half a diameter, where no order is left.
  const double down = std::min(range, std::max(0.0, pitch - 0.5 * draft.fiber.diameter_mm));
  return {"the pitch", "too fine", "too coarse", everywhere(draft, "pitch"), {}, pitch_step(draft), -down, range};
}

Dial stop_dial(const PlanDraft& draft, const char* side) {
  const double range = stop_range(draft);
  return {fmt::format("the {} stop", side),
          "too far out",
          "too far in",
          everywhere(draft, fmt::format("{}_stop", side)),
          {},
          stop_step(draft),
          -range,
          range};
}

Dial reversal_dial(const PlanDraft& draft) {
  constexpr double most_turns = 8.0;
  constexpr double quarter_turn = 0.25;
  const Reversal& reversal = draft.traverse.reversal;
  const bool instant = reversal.kind == ReversalKind::instant;
  const bool ramps = reversal.kind == ReversalKind::ramp;
  Dial dial{ramps ? "the ramp at the stops" : "the dwell at the stops",
            "too short",
            "too long",
            {{"traverse.reversal.turns"}},
            {},
            quarter_turn,
            -reversal.turns,
            most_turns};
  if (instant) {
    dial.given = {{"traverse.reversal.kind", static_cast<double>(ReversalKind::dwell)}};
    dial.lowest = 0.0;
  }
  return dial;
}

Dial free_length_dial(const PlanDraft& draft) {
  const double now = draft.traverse.free_length_mm;
  const double step = std::max(0.1 * now, draft.fiber.diameter_mm);
  return {"the free length", "too short", "too long", {{"traverse.free_length"}}, {}, step, -now, 30.0 * step};
}

void add_friction(const PlanDraft& draft, std::vector<Dial>& dials) {
  const double now = draft.fiber.friction;
  constexpr double greatest = 1.5;
  if (now >= greatest) return;
  Dial dial{"the friction", "too low", "too high", {{"fiber.friction"}}, {}, 0.05, -now, greatest - now};
  dial.cure = "It comes with the fiber, or its coating; nobody sets it";
  dials.push_back(std::move(dial));
}

// A flaw goes down to nothing in halves of itself.
void add_flaw(const PlanDraft& draft, const char* path, const char* words, const char* cure,
              std::vector<Dial>& dials) {
  const double now = now_at(draft, path);
  if (now == 0.0) return;
  constexpr double parts = 8.0;
  const double size = std::abs(now) / parts;
  Dial dial{words, "too far negative", "too large", {{path}}, {}, size, std::min(0.0, -now), std::max(0.0, -now)};
  dial.is_flaw = true;
  dial.cure = cure;
  dials.push_back(std::move(dial));
}

Dial start_dial(const PlanDraft& draft) {
  const bool left = draft.traverse.start == Side::left;
  Dial dial{"the side of the start", "the left",      "the right", {{"traverse.start"}}, {}, 1.0,
            left ? 0.0 : -1.0,       left ? 1.0 : 0.0};
  dial.is_switch = true;
  return dial;
}

// Of turns side by side; of a crossed wind it is not known what is usual.
bool is_usual(const PlanDraft& draft, const Dial& dial) {
  const double d = draft.fiber.diameter_mm, pitch_d = draft.traverse.pitch_mm / d;
  const Reversal& reversal = draft.traverse.reversal;
  const std::string& path = dial.parts.front().path;
  constexpr double near_d = 1.0, round_off = 1e-9;
  if (path == "traverse.pitch") return pitch_d >= finest_pitch_d - round_off && pitch_d <= coarsest_pitch_d;
  if (path == "traverse.left_stop" || path == "traverse.right_stop") {
    return std::abs(now_at(draft, path) - ideal_stop_mm(draft, draft.traverse.pitch_mm)) <= near_d * d;
  }
  if (path == "traverse.reversal.turns") {
    return reversal.kind == ReversalKind::instant || reversal.turns == 0.0 ||
           (reversal.kind == ReversalKind::ramp && reversal.turns <= short_ramp_turns);
  }
  if (path == "traverse.free_length") return draft.traverse.free_length_mm <= long_free_length_d * d;
  return !dial.is_flaw;
}

}  // namespace

std::vector<Dial> dials_of(const PlanDraft& draft) {
  std::vector<Dial> dials;
  add_flaw(draft, "spool.flange_runout", "the run-out of the flanges", "Take a spool whose flanges run true", dials);
  add_flaw(draft, "spool.barrel_taper", "the taper of the barrel", "Take a spool with a straight barrel", dials);
  add_friction(draft, dials);
  dials.push_back(pitch_dial(draft));
  dials.push_back(stop_dial(draft, "left"));
  dials.push_back(stop_dial(draft, "right"));
  dials.push_back(start_dial(draft));
  dials.push_back(free_length_dial(draft));
  add_flaw(draft, "traverse.guide_play", "the play of the guide", "Use a guide with less play", dials);
  add_flaw(draft, "traverse.pitch_scatter", "the scatter of the pitch",
           "See that the traverse runs evenly: belt, screw, motor", dials);
  dials.push_back(reversal_dial(draft));
  add_flaw(draft, "traverse.reversal.lost_motion", "the lost motion", "Take the play out of the traverse's drive",
           dials);
  add_flaw(draft, "traverse.reversal.stop_scatter", "the scatter of the stops", "See that the guide's stops repeat",
           dials);
  if (draft.traverse.pitch_mm < close_wind_d * draft.fiber.diameter_mm) {
    for (Dial& dial : dials) dial.is_usual = is_usual(draft, dial);
  }
  return dials;
}

std::vector<Dial> stop_pairs_of(const PlanDraft& draft) {
  const double range = stop_range(draft);
  // Where one of them stands as it should, they are not both wrong.
  const bool close = draft.traverse.pitch_mm < close_wind_d * draft.fiber.diameter_mm;
  const bool either_usual =
      close && (is_usual(draft, stop_dial(draft, "left")) || is_usual(draft, stop_dial(draft, "right")));
  const auto pair = [&](const char* words, const char* low, const char* high, double right_sign) {
    Dial dial{words, low, high, everywhere(draft, "left_stop"), {}, stop_step(draft), -range, range};
    for (const Dial::Part& part : everywhere(draft, "right_stop", right_sign)) dial.parts.push_back(part);
    dial.is_usual = either_usual;
    return dial;
  };
  return {pair("the stops", "too far out", "too far in", 1.0),
          pair("the traverse", "too far to the left", "too far to the right", -1.0)};
}

std::vector<Dial> flaws_of(const PlanDraft& draft) {
  std::vector<Dial> flaws = dials_of(draft);
  std::erase_if(flaws, [](const Dial& dial) { return !dial.is_flaw; });
  return flaws;
}

bool can_be_set(const Dial& dial) { return dial.cure.empty(); }

double effort_of(const Dial& dial, double move) {
  const bool dwell = dial.parts.front().path == "traverse.reversal.turns";
  const double range = std::abs(move < 0.0 ? dial.lowest : dial.highest);
  if (dial.is_flaw || dial.is_switch || range == 0.0 || (dwell && move < 0.0)) return 0.0;
  return std::min(1.0, std::abs(move) / range);
}

std::vector<Change> changes_at(const Dial& dial, const PlanDraft& draft, double move) {
  std::vector<Change> changes = dial.given;
  for (const Dial::Part& part : dial.parts) {
    changes.push_back({part.path, now_at(draft, part.path) + part.sign * move});
  }
  return changes;
}

std::string shown_value(const PlanDraft& draft, const std::string& path, double value) {
  constexpr std::size_t digits = 4;
  const FieldInfo& field = *field_at(draft, path);
  if (field.kind == FieldKind::choice) return write_value(field, value);
  if (field.kind != FieldKind::quantity) {
    return fmt::format("{:.4g}{}", value, path == "traverse.reversal.turns" ? " turns" : "");
  }
  const auto origin = draft.origins.find(path);
  const bool written = origin != draft.origins.end();
  // What rounding has left of nothing.
  const double shown = std::abs(value) < 1e-9 ? 0.0 : value;
  return format_quantity(shown, *unit_written(field, written ? std::string_view(origin->second.written) : ""),
                         digits);
}

std::string shown_at(const Dial& dial, const PlanDraft& draft, double value) {
  return shown_value(draft, dial.parts.front().path, value);
}

}  // namespace laywright
