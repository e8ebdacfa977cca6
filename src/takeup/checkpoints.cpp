#include <cmath>

#include "takeup/parts.h"

namespace laywright {
namespace {

// 1, 2, 5, 10, 20, 50, ...
std::size_t next_round(std::size_t count) {
  std::size_t power = 1;
  while (10 * power <= count) power *= 10;
  if (count < 2 * power) return 2 * power;
  return count < 5 * power ? 5 * power : 10 * power;
}

}  // namespace

std::vector<Checkpoint> make_checkpoints(const Wound& wound) {
  std::vector<Checkpoint> checkpoints;
  const std::optional<double> speed = wound.plan.wind().line_speed_mm_per_s;
  const auto add = [&](std::size_t layer) {
    Checkpoint checkpoint;
    checkpoint.layer = static_cast<int>(layer);
    checkpoint.at_end = layer == wound.line.layers();
    checkpoint.length_mm = wound.line.end_of_layer_mm(layer - 1);
    checkpoint.turns = checkpoint.at_end ? wound.build.turns : wound.line.layer_start_turn(layer);
    if (speed) checkpoint.time_s = checkpoint.length_mm / *speed;
    checkpoint.outer_diameter_mm = wound.measurements.layers[layer - 1].outer_diameter_mm;
    checkpoints.push_back(checkpoint);
  };
  for (std::size_t layer = 1; layer < wound.line.layers(); layer = next_round(layer)) add(layer);
  add(wound.line.layers());
  return checkpoints;
}

std::vector<StepPlace> place_steps(const Wound& wound) {
  std::vector<StepPlace> places;
  for (const WindStep& step : wound.plan.wind().steps) {
    StepPlace place;
    const LayerSetting setting = setting_in_layer(wound.plan, step.from_layer);
    place.from_layer = step.from_layer;
    place.pitch_mm = setting.pitch_mm;
    place.left_stop_mm = setting.left_stop_mm;
    place.right_stop_mm = setting.right_stop_mm;
    const auto layer = static_cast<std::size_t>(step.from_layer) - 1;
    if (layer < wound.line.layers()) {
      place.length_mm = layer == 0 ? 0.0 : wound.line.end_of_layer_mm(layer - 1);
      place.turns = wound.line.layer_start_turn(layer);
    }
    places.push_back(place);
  }
  return places;
}

CounterSetting set_counter(const Wound& wound) {
  CounterSetting counter;
  counter.end_mm = wound.build.length_mm;
  if (!wound.plan.takeup()) return counter;
  counter.mode = wound.plan.takeup()->length_stop;
  counter.reaction_time_s = wound.plan.takeup()->reaction_time_s;
  if (!wound.plan.wind().line_speed_mm_per_s) return counter;
  // Common practice, no source: what runs on for a reaction time runs on at line speed; an even run-down covers
  // half of line speed times its duration.
  const double speed = *wound.plan.wind().line_speed_mm_per_s;
  counter.lead_mm = speed * counter.reaction_time_s;
  counter.set_to_mm = std::fmax(0.0, counter.end_mm - *counter.lead_mm);
  counter.per_ramp_second_mm = 0.5 * speed;
  return counter;
}

}  // namespace laywright
