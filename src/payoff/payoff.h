// Unwinding a build, from the last turn to the first: where it catches, what holds it there, and how hard it has to be drawn.
//
// The fiber is drawn off the side (the spool rolls, the fiber runs to an eye over the middle of its width) or over an end (the
// spool stands, the fiber is drawn slowly over the rim of a flange). When a node leaves, only what was laid before it is there.
// Forces are multiples of the tension with which the fiber was wound: 1 is drawn as it was wound. They are estimates; what is
// counted, what is left out, and what is assumed: MODEL.md in this folder.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/progress.h"
#include "lay/build.h"
#include "measure/grade.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"

namespace laywright {

enum class DrawOff : std::uint8_t { side, over_left, over_right };

// "side", "over_left", "over_right": stable, as in the JSON document.
[[nodiscard]] const char* name_of(DrawOff way);

// What holds a fiber at its place.
enum class HeldBy : std::uint8_t {
  free,         // nothing: it leaves by the pull with which it was wound
  led_aside,    // the eye leads it sideways, off its place
  drawn_over,   // it is drawn over turns that were laid before
  in_slit,      // it is jammed in a slit between neighbours, or between a turn and a flange
  under_turns,  // turns that were laid before lie over it
};

// "free", "led_aside", "drawn_over", "in_slit", "under_turns": stable, as in the JSON document.
[[nodiscard]] const char* name_of(HeldBy by);

struct PayoffSettings {
  DrawOff way = DrawOff::side;
  // From the spool's axis to the eye, side only, mm; absent: twenty times the inside width, which leads the fiber aside by
  // 1.4 degrees at most (common practice, no source: below a degree and a half).
  std::optional<double> eye_mm;
  bool each_node = false;  // fills PayoffRun::multiples
};

// Fiber that needs more than the limit, in one piece.
struct PayoffCatch {
  HeldBy by = HeldBy::free;
  std::size_t first_node = 0, end_node = 0;
  std::size_t node = 0;  // where it is held most
  int layer = 0;         // there, as all that follows
  double turn = 0.0;     // from the start of the wind
  double x_mm = 0.0, angle_deg = 0.0;
  double from_outer_end_mm = 0.0;  // fiber that has been drawn off when it catches
  double length_mm = 0.0;          // of the piece
  double multiple = 1.0;
  FindingSeverity severity = FindingSeverity::small;
};

struct PayoffLayer {
  int layer = 0;
  int catches = 0;
  double caught_mm = 0.0;  // length of fiber that needs more than the limit
  double greatest = 1.0, mean = 1.0;
};

struct PayoffRun {
  static constexpr std::size_t most_catches = 32;

  DrawOff way = DrawOff::side;
  double limit = 0.0;     // multiple beyond which it counts as a catch: limits.payoff_force
  double friction = 0.0;  // that was counted with
  bool friction_assumed = false;
  std::optional<double> eye_mm;

  double greatest = 1.0;   // multiple, anywhere
  double mean = 1.0;       // over the fiber
  double caught_mm = 0.0;  // length of fiber that needs more than the limit
  int catch_count = 0;     // pieces
  std::array<int, 3>
      of_severity{};           // how many of them are so severe, in the order of FindingSeverity; none is small
  std::array<int, 5> nodes{};  // how many are held by what, in the order of HeldBy
  std::optional<PayoffCatch> hardest;  // where it is held most, beyond the limit or not; none where all is free
  std::vector<PayoffCatch> catches;    // the hardest, at most most_catches; hardest first
  std::vector<PayoffLayer> layers;
  std::vector<float> multiples;  // of each node, where it was asked for
};

// "worth a look" near the limit, "grave" far beyond it: as a force stands to its limit.
[[nodiscard]] FindingSeverity severity_of_force(double multiple, double limit);

// How a force stands to its limit, both in times the tension of winding: by how far they are above it.
[[nodiscard]] Grade grade_of_force(double multiple, double limit);

// Precondition: the build was laid from the plan. Cancelled through `progress`: what is returned is not to be used.
[[nodiscard]] PayoffRun pay_off(const Plan& plan, const Build& build, const PayoffSettings& settings,
                                Progress& progress);

}  // namespace laywright
