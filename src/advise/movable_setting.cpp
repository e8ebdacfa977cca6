#include "advise/movable_setting.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "advise/searchable_setting.h"
#include "advise/settable_step.h"
#include "base/quantity_text.h"
#include "base/round_figure.h"
#include "plan/guide_cycle.h"
#include "plan/plan_values.h"
#include "verdict/usual_settings.h"

namespace laywright {
namespace {

double now_at(const PlanDraft& draft, const std::string& path) { return value_at(draft, path).value_or(0.0); }

// The traverse's key, and that of every step that sets it anew.
std::vector<MovableSetting::Part> everywhere(const PlanDraft& draft, const std::string& key, double sign = 1.0) {
  std::vector<MovableSetting::Part> parts{{fmt::format("traverse.{}", key), sign}};
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

MovableSetting pitch_movable(const PlanDraft& draft) {
  const double pitch = draft.traverse.pitch_mm;
  const double range = std::max(1.5 * draft.fiber.diameter_mm, 0.5 * pitch);
  // No finer than half a diameter, where no order is left.
  const double down = std::min(range, std::max(0.0, pitch - 0.5 * draft.fiber.diameter_mm));
  return {"the pitch",  "too fine",
          "too coarse", everywhere(draft, "pitch"),
          {},           settable_step(draft, "traverse.pitch", pitch_step(draft)),
          -down,        range};
}

MovableSetting stop_movable(const PlanDraft& draft, const char* side) {
  const double range = stop_range(draft);
  return {fmt::format("the {} stop", side),
          "too far out",
          "too far in",
          everywhere(draft, fmt::format("{}_stop", side)),
          {},
          settable_step(draft, fmt::format("traverse.{}_stop", side), stop_step(draft)),
          -range,
          range};
}

MovableSetting reversal_movable(const PlanDraft& draft) {
  constexpr double most_turns = 8.0;
  constexpr double quarter_turn = 0.25;
  const Reversal& reversal = draft.traverse.reversal;
  const bool instant = reversal.kind == ReversalKind::instant;
  const bool ramps = reversal.kind == ReversalKind::ramp;
  MovableSetting movable{ramps ? "the ramp at the stops" : "the dwell at the stops",
                         "too short",
                         "too long",
                         {{"traverse.reversal.turns"}},
                         {},
                         settable_step(draft, "traverse.reversal.turns", quarter_turn),
                         -reversal.turns,
                         most_turns};
  if (instant) {
    movable.given = {{"traverse.reversal.kind", static_cast<double>(ReversalKind::dwell)}};
    movable.lowest = 0.0;
  }
  return movable;
}

MovableSetting free_length_movable(const PlanDraft& draft) {
  const double now = draft.traverse.free_length_mm;
  const double step = std::max(0.1 * now, draft.fiber.diameter_mm);
  return {"the free length", "too short", "too long", {{"traverse.free_length"}}, {}, step, -now, 30.0 * step};
}

void add_friction(const PlanDraft& draft, std::vector<MovableSetting>& movables) {
  const double now = draft.fiber.friction;
  constexpr double greatest = 1.5;
  if (now >= greatest) return;
  MovableSetting movable{"the friction", "too low", "too high",    {{"fiber.friction"}}, {},
                         0.05,           -now,      greatest - now};
  movable.cure = "It comes with the fiber, or its coating; nobody sets it";
  movables.push_back(std::move(movable));
}

// A flaw goes down to nothing in halves of itself.
void add_flaw(const PlanDraft& draft, const char* path, const char* words, const char* cure,
              std::vector<MovableSetting>& movables) {
  const double now = now_at(draft, path);
  if (now == 0.0) return;
  constexpr double parts = 8.0;
  const double size = std::abs(now) / parts;
  MovableSetting movable{words, "too far negative",  "too large",        {{path}}, {},
                         size,  std::min(0.0, -now), std::max(0.0, -now)};
  movable.is_flaw = true;
  movable.cure = cure;
  movables.push_back(std::move(movable));
}

MovableSetting start_movable(const PlanDraft& draft) {
  const bool left = draft.traverse.start == Side::left;
  MovableSetting movable{"the side of the start", "the left",      "the right", {{"traverse.start"}}, {}, 1.0,
                         left ? 0.0 : -1.0,       left ? 1.0 : 0.0};
  movable.is_switch = true;
  movable.wants_evidence = true;
  return movable;
}

void add_tension(const PlanDraft& draft, const std::optional<TensionRoom>& room,
                 std::vector<MovableSetting>& movables) {
  if (!room || !room->has(*draft.wind.tension_N) || !tension_turns_lay(draft)) return;
  constexpr double twentieth = 0.05, quarter = 0.25;
  const double now = *draft.wind.tension_N;
  MovableSetting movable{
      "the tension",     "too low",         "too high", {{tension_path}}, {}, round_figure_below(twentieth * now),
      room->low_N - now, room->high_N - now};
  movable.wants_evidence = true;
  movable.first = quarter * now;
  movables.push_back(std::move(movable));
}

// Of turns side by side; of a crossed wind it is not known what is usual.
bool is_usual(const PlanDraft& draft, const MovableSetting& movable) {
  const double d = draft.fiber.diameter_mm, pitch_d = draft.traverse.pitch_mm / d;
  const Reversal& reversal = draft.traverse.reversal;
  const std::string& path = movable.parts.front().path;
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
  return !movable.is_flaw;
}

}  // namespace

std::vector<MovableSetting> movables_of(const PlanDraft& draft, const std::optional<TensionRoom>& room) {
  std::vector<MovableSetting> movables;
  add_flaw(draft, "spool.flange_runout", "the run-out of the flanges", "Take a spool whose flanges run true",
           movables);
  add_flaw(draft, "spool.barrel_taper", "the taper of the barrel", "Take a spool with a straight barrel", movables);
  add_friction(draft, movables);
  movables.push_back(pitch_movable(draft));
  movables.push_back(stop_movable(draft, "left"));
  movables.push_back(stop_movable(draft, "right"));
  if (start_turns_lay(draft)) movables.push_back(start_movable(draft));
  movables.push_back(free_length_movable(draft));
  add_flaw(draft, "traverse.guide_play", "the play of the guide", "Use a guide with less play", movables);
  add_flaw(draft, "traverse.pitch_scatter", "the scatter of the pitch",
           "See that the traverse runs evenly: belt, screw, motor", movables);
  movables.push_back(reversal_movable(draft));
  add_flaw(draft, "traverse.reversal.lost_motion", "the lost motion", "Take the play out of the traverse's drive",
           movables);
  add_flaw(draft, "traverse.reversal.stop_scatter", "the scatter of the stops", "See that the guide's stops repeat",
           movables);
  add_tension(draft, room, movables);
  if (draft.traverse.pitch_mm < close_wind_d * draft.fiber.diameter_mm) {
    for (MovableSetting& movable : movables) movable.is_usual = is_usual(draft, movable);
  }
  return movables;
}

std::vector<MovableSetting> stop_pairs_of(const PlanDraft& draft) {
  const double range = stop_range(draft);
  // Where one of them stands as it should, they are not both wrong.
  const bool close = draft.traverse.pitch_mm < close_wind_d * draft.fiber.diameter_mm;
  const bool either_usual =
      close && (is_usual(draft, stop_movable(draft, "left")) || is_usual(draft, stop_movable(draft, "right")));
  const auto pair = [&](const char* words, const char* low, const char* high, double right_sign) {
    MovableSetting movable{words,  low,
                           high,   everywhere(draft, "left_stop"),
                           {},     settable_step(draft, "traverse.left_stop", stop_step(draft)),
                           -range, range};
    for (const MovableSetting::Part& part : everywhere(draft, "right_stop", right_sign))
      movable.parts.push_back(part);
    movable.is_usual = either_usual;
    return movable;
  };
  return {pair("the stops", "too far out", "too far in", 1.0),
          pair("the traverse", "too far to the left", "too far to the right", -1.0)};
}

std::vector<MovableSetting> flaws_of(const PlanDraft& draft) {
  std::vector<MovableSetting> flaws = movables_of(draft);
  std::erase_if(flaws, [](const MovableSetting& movable) { return !movable.is_flaw; });
  return flaws;
}

bool can_be_set(const MovableSetting& movable) { return movable.cure.empty(); }

double effort_of(const MovableSetting& movable, double move) {
  const bool dwell = movable.parts.front().path == "traverse.reversal.turns";
  const double range = std::abs(move < 0.0 ? movable.lowest : movable.highest);
  if (movable.is_flaw || movable.is_switch || range == 0.0 || (dwell && move < 0.0)) return 0.0;
  return std::min(1.0, std::abs(move) / range);
}

std::vector<Change> changes_at(const MovableSetting& movable, const PlanDraft& draft, double move) {
  std::vector<Change> changes = movable.given;
  for (const MovableSetting::Part& part : movable.parts) {
    changes.push_back({part.path, now_at(draft, part.path) + part.sign * move});
  }
  return changes;
}

std::string shown_value(const PlanDraft& draft, const std::string& path, double value) {
  constexpr std::size_t digits = 4;
  const FieldInfo& field = *field_at(draft, path);
  if (field.kind == FieldKind::choice) return write_value(field, value);
  if (field.kind != FieldKind::quantity) {
    return fmt::format("{}{}", short_figure(value, 4), path == "traverse.reversal.turns" ? " turns" : "");
  }
  const auto origin = draft.origins.find(path);
  const bool written = origin != draft.origins.end();
  // What rounding has left of nothing.
  const double shown = std::abs(value) < 1e-9 ? 0.0 : value;
  return format_quantity(shown, *unit_written(field, written ? std::string_view(origin->second.written) : ""),
                         digits);
}

std::string shown_at(const MovableSetting& movable, const PlanDraft& draft, double value) {
  return shown_value(draft, movable.parts.front().path, value);
}

}  // namespace laywright
