// Where the scrubber stands, and what is known of a turn, in words: the same in the window and on the share page.
#pragma once

#include <string>
#include <vector>

#include "desk/playback.h"
#include "scene/pick.h"
#include "scene/view.h"

namespace laywright {

struct MomentWords {
  std::string length, of_length;  // "12.3 m", "12.3 m of 830.1 m"
  std::string layer, of_layers;   // "layer 3", "layer 3 of 12"
  std::string turn, of_turns;     // "turn 41.2", "turn 41.2 of 830.0"
  std::string time;               // "41 s at 60 m/min (assumed)"
};
[[nodiscard]] MomentWords moment_words(const Moment& moment, const Wound& wound, Units units);

// Times the line speed: "2x", "0.5x", "1,250x".
[[nodiscard]] std::string rate_words(double rate);

struct Fact {
  std::string name, value;
};
// `d_mm`: the fiber's diameter.
[[nodiscard]] std::vector<Fact> turn_facts(const NodeFacts& facts, double d_mm, Units units);

}  // namespace laywright
