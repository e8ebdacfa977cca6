// A build turn by turn: length at its start and mean radius; and where layers begin.
#pragma once

#include <cstddef>
#include <vector>

#include "lay/build.h"
#include "plan/lay_plan.h"

namespace laywright {

class TurnLine {
 public:
  explicit TurnLine(const Build& build);

  [[nodiscard]] std::size_t turns() const { return radius_mm_.size(); }  // the last may be a part of one
  [[nodiscard]] double total_mm() const { return start_mm_.back(); }
  [[nodiscard]] double start_mm(std::size_t turn) const { return start_mm_[turn]; }
  [[nodiscard]] double radius_mm(std::size_t turn) const { return radius_mm_[turn]; }  // of the centre line, mean
  [[nodiscard]] double length_per_turn_mm(std::size_t turn) const {
    return (start_mm_[turn + 1] - start_mm_[turn]) / share(turn);
  }

  // The turn that is laid at a length, and the spool's angle there in turns.
  [[nodiscard]] std::size_t turn_at(double length_mm) const;
  [[nodiscard]] double angle_at(double length_mm) const;

  // Length at the end of a layer (0 = the first), and the layer that is laid at a length.
  [[nodiscard]] double end_of_layer_mm(std::size_t layer) const { return layer_end_mm_[layer]; }
  [[nodiscard]] std::size_t layers() const { return layer_end_mm_.size(); }
  [[nodiscard]] std::size_t layer_at(double length_mm) const;

  // Spool angle at which a layer begins, in turns.
  [[nodiscard]] double layer_start_turn(std::size_t layer) const { return layer_start_turn_[layer]; }

 private:
  [[nodiscard]] double share(std::size_t turn) const { return turn + 1 == turns() ? last_share_ : 1.0; }

  std::vector<double> start_mm_;   // one more than turns: the end of the wind
  std::vector<double> radius_mm_;  // by turn
  std::vector<double> layer_end_mm_, layer_start_turn_;
  double last_share_ = 1.0;  // of the last turn that was laid
};

}  // namespace laywright
