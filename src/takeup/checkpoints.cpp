#include <cmath>

#include "plan/layer_setting.h"
#include "takeup/parts.h"

namespace laywright {
namespace {

std::optional<double> reading_at(const Plan& plan, double length_mm) {
  const std::optional<Counter>& counter = plan.draft().machine.counter;
  return counter ? std::optional(counter_reading(*counter, length_mm).reading) : std::nullopt;
}

CounterSetting without_reading(const MachineWind& wind) {
  CounterSetting counter;
  counter.end_mm = wind.build.length_mm;
  if (!wind.plan.takeup()) return counter;
  counter.mode = wind.plan.takeup()->length_stop;
  counter.reaction_time_s = wind.plan.takeup()->reaction_time_s;
  if (!wind.plan.wind().line_speed_mm_per_s) return counter;
  // Common practice, no source: what runs on for a reaction time runs on at line speed; an even run-down covers
  // half of line speed times its duration.
  const double speed = *wind.plan.wind().line_speed_mm_per_s;
  counter.lead_mm = speed * (counter.reaction_time_s + 0.5 * wind.plan.takeup()->stop_ramp_s.value_or(0.0));
  counter.set_to_mm = std::fmax(0.0, counter.end_mm - *counter.lead_mm);
  counter.per_ramp_second_mm = 0.5 * speed;
  return counter;
}

}  // namespace

std::size_t next_checkpoint_layer(std::size_t count) {
  std::size_t power = 1;
  while (10 * power <= count) power *= 10;
  if (count < 2 * power) return 2 * power;
  return count < 5 * power ? 5 * power : 10 * power;
}

std::vector<Checkpoint> make_checkpoints(const MachineWind& wind) {
  std::vector<Checkpoint> checkpoints;
  const std::optional<double> speed = wind.plan.wind().line_speed_mm_per_s;
  const auto add = [&](std::size_t layer) {
    Checkpoint checkpoint;
    checkpoint.layer = static_cast<int>(layer);
    checkpoint.at_end = layer == wind.line.layers();
    checkpoint.length_mm = wind.line.end_of_layer_mm(layer - 1);
    checkpoint.turns = checkpoint.at_end ? wind.build.turns : wind.line.layer_start_turn(layer);
    if (speed) checkpoint.time_s = checkpoint.length_mm / *speed;
    checkpoint.outer_diameter_mm = wind.measurements.layers[layer - 1].outer_diameter_mm;
    checkpoint.counter_reading = reading_at(wind.plan, checkpoint.length_mm);
    checkpoints.push_back(checkpoint);
  };
  for (std::size_t layer = 1; layer < wind.line.layers(); layer = next_checkpoint_layer(layer)) add(layer);
  add(wind.line.layers());
  return checkpoints;
}

std::vector<StepPlace> place_steps(const MachineWind& wind) {
  std::vector<StepPlace> places;
  for (const WindStep& step : wind.plan.wind().steps) {
    StepPlace place;
    const Traverse setting = traverse_in_layer(wind.plan, step.from_layer);
    place.from_layer = step.from_layer;
    place.pitch_mm = setting.pitch_mm;
    place.left_stop_mm = setting.left_stop_mm;
    place.right_stop_mm = setting.right_stop_mm;
    const auto layer = static_cast<std::size_t>(step.from_layer) - 1;
    if (layer < wind.line.layers()) {
      place.length_mm = layer == 0 ? 0.0 : wind.line.end_of_layer_mm(layer - 1);
      place.turns = wind.line.layer_start_turn(layer);
      place.counter_reading = reading_at(wind.plan, *place.length_mm);
    }
    places.push_back(place);
  }
  return places;
}

CounterSetting set_counter(const MachineWind& wind) {
  CounterSetting counter = without_reading(wind);
  const std::optional<Counter>& driven = wind.plan.draft().machine.counter;
  if (!driven) return counter;
  const CounterReading shown = counter_reading(*driven, counter.set_to_mm.value_or(counter.end_mm));
  counter.reading = {shown.reading, driven->unit, shown.length_mm + counter.lead_mm.value_or(0.0)};
  return counter;
}

}  // namespace laywright
