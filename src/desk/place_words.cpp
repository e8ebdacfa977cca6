#include "desk/place_words.h"

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "figures/figures.h"

namespace laywright {
namespace {

const char* carried_by(Support support) {
  switch (support) {
    case Support::none: return "nothing: it bridges";
    case Support::barrel: return "the barrel";
    case Support::turn: return "one turn";
    case Support::valley: return "a valley between two";
    case Support::flange: return "the flange";
  }
  return "";
}

}  // namespace

MomentWords moment_words(const Moment& moment, const Wound& wound, Units units) {
  const bool inch = units == Units::inch;
  const Build& build = wound.build();
  MomentWords words;
  words.length = fiber_length_text(moment.length_mm, inch);
  words.of_length = fmt::format("{} of {}", words.length, fiber_text(build.length_mm, 5, inch));
  words.layer = fmt::format("layer {}", moment.layer);
  words.of_layers = fmt::format("{} of {}", words.layer, build.strokes.size());
  words.turn = fmt::format("turn {}", figure(moment.turn, 1));
  words.of_turns = fmt::format("{} of {}", words.turn, figure(build.turns, 1));
  words.time = duration_text(moment.time_s);
  if (line_speed_of(wound.plan()).assumed) words.time += " at 60 m/min (assumed)";
  return words;
}

std::string rate_words(double rate) { return short_figure(rate, 3) + "x"; }

std::vector<Fact> turn_facts(const NodeFacts& f, double d_mm, Units units) {
  const bool inch = units == Units::inch;
  const auto in_d = [&](double value) {
    return fmt::format("{} d ({})", figure(value, 3), size_text(value * d_mm, inch));
  };
  std::vector<Fact> facts{
      {"Turn", figure(f.turn, 3)},
      {"Layer", fmt::format("{}, stroke to the {}", f.layer, direction_name(f.direction))},
      {"In the layer", fmt::format("turn {}", figure(f.turn_in_layer, 3))},
      {"From the start", fiber_length_text(f.length_mm, inch)},
      {"From the left flange", size_text(f.x_mm, inch)},
      {"Radius", size_text(f.r_mm, inch)},
      {"Angle", degrees_text(f.angle_deg, 1)},
      {"Rise", f.rise_d ? in_d(*f.rise_d) + " over the layer below" : "nothing below to rise over"},
      {"Gap", f.gap_d ? in_d(*f.gap_d) + " on the wider side" : "no neighbour in the layer"},
      {"Carried by", carried_by(f.support)}};
  if (f.rides_up) facts.push_back({"Note", "it rides up on a turn of its own layer"});
  return facts;
}

}  // namespace laywright
