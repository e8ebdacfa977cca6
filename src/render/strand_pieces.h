// Strands as the pieces that are drawn: one straight cylinder from node to node, cut off where the view is cut.
#pragma once

#include <cstdint>
#include <vector>

#include "scene/scene.h"
#include "scene/strands.h"

namespace laywright {

struct StrandPiece {
  float before_x, before_r, from_x, from_r;
  float to_x, to_r, after_x, after_r;
  float shown_from, shown_to;  // share of the piece
  std::uint32_t node;          // at its beginning
  Rgba from_colour, to_colour;
};

// `shown`: the sectors that the cuts leave (left_by).
[[nodiscard]] std::vector<StrandPiece> pieces_of(const Strands& strands, const std::vector<Sector>& shown);

}  // namespace laywright
