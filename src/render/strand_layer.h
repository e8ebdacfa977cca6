// Draws strands as round fibers.
#pragma once

#include "render/frame.h"
#include "render/geometry.h"
#include "render/strand_pieces.h"

namespace laywright {

class StrandLayer {
 public:
  void load(const Strands& strands, const std::vector<Sector>& shown);
  void clear() { pieces_.load(nullptr, 0, 0); }
  [[nodiscard]] bool empty() const { return pieces_.empty(); }
  [[nodiscard]] int count() const { return pieces_.count(); }

  // `opacity` below 1: while they fade in over the shell.
  void draw(const Frame& frame, double opacity) const;

 private:
  Program program_{"strand"};
  QuadInstances pieces_{0.0F};
  int stations_ = 1;
};

}  // namespace laywright
