// How far, and in what steps, a setting is moved by who tries it in a lesson.
#pragma once

namespace laywright {

struct Slide {
  double low = 0.0, high = 1.0, step = 0.1;
};

// From a little short of the value that the lesson begins with to so far beyond one that reaches the goal that it is wrong on the
// other side, within the range of the key, in steps of which the first is seen. `given` may be infinite: held.
[[nodiscard]] Slide slide_between(double given, double good, double range_low, double range_high);

// The place after one step from the value, up (1) or down (-1); the highest place from an infinite one.
[[nodiscard]] double stepped(const Slide& slide, double value, double way);

// A multiple of the step, as short as it can be written.
[[nodiscard]] double on_step(const Slide& slide, double value);

}  // namespace laywright
