// Mean radius of a layer as it changes over the width, to tell a turn that left its layer from a layer that is
// not level.
//
// The width is cut into zones of 5 % but at least 20 d; a zone's mean is taken over angle and turns, then again
// without what lies more than d/2 off it, so that the turns that are looked for do not hide themselves. Between
// the middles of zones, and on to the flanges, it goes in straight lines. The taper of the barrel is taken off
// before and put back after, so that a narrow spool may be conical too.
#pragma once

#include <vector>

#include "measure/stroke_view.h"

namespace laywright {

class LocalMean {
 public:
  explicit LocalMean(const StrokeView& view);

  // False when every turn lies within d/2 of its zone's mean: nothing has left the layer.
  [[nodiscard]] bool any_turn_is_off() const { return any_off_; }

  [[nodiscard]] double at(double x_mm) const {
    const double place = x_mm * per_mm_ - 0.5;
    const double last = static_cast<double>(means_.size()) - 2.0;
    const double zone = place < 0.0 ? 0.0 : (place > last ? last : static_cast<double>(static_cast<int>(place)));
    const auto i = static_cast<std::size_t>(zone);
    return means_[i] + (place - zone) * (means_[i + 1] - means_[i]) + lean_ * x_mm;
  }

 private:
  double per_mm_ = 1.0;  // zones per mm
  double lean_ = 0.0;    // of the barrel: radius over width
  bool any_off_ = false;
  std::vector<double> means_;  // by zone, at least two
};

}  // namespace laywright
