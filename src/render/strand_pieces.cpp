#include "render/strand_pieces.h"

#include <algorithm>
#include <cmath>

#include "base/units.h"

namespace laywright {
namespace {

// Shares of the piece from angle a (over `step`) that lie in the sector: none, one or two (when a sector's two ends
// lie within one piece).
void add_shown(StrandPiece piece, double a, double step, const Sector& sector, std::vector<StrandPiece>& pieces) {
  for (const double turn : {-full_turn, 0.0, full_turn}) {
    const double from = std::max((sector.from + turn - a) / step, 0.0);
    const double to = std::min((sector.to + turn - a) / step, 1.0);
    if (from >= to) continue;
    piece.shown_from = static_cast<float>(from);
    piece.shown_to = static_cast<float>(to);
    pieces.push_back(piece);
  }
}

}  // namespace

std::vector<StrandPiece> pieces_of(const Strands& strands, const std::vector<Sector>& shown) {
  std::vector<StrandPiece> pieces;
  pieces.reserve(strands.points.size());
  const double step = full_turn / static_cast<double>(std::max<std::size_t>(strands.stations, 1));
  const bool whole = shown.size() == 1 && shown.front().to - shown.front().from > full_turn - 1e-9;
  for (const StrandRun& run : strands.runs) {
    const StrandPoint* points = &strands.points[run.first];
    for (std::uint32_t i = 0; i + 1 < run.count; ++i) {
      const StrandPoint &from = points[i], &to = points[i + 1];
      // Beyond the ends of a run the fiber is taken to go on straight, so that its tangent there is its own.
      const StrandPoint& before = points[i > 0 ? i - 1 : 0];
      const StrandPoint& after = points[i + 2 < run.count ? i + 2 : i + 1];
      const StrandPiece piece{before.x_mm, before.r_mm, from.x_mm, from.r_mm, to.x_mm,     to.r_mm,  after.x_mm,
                              after.r_mm,  0.0F,        1.0F,      from.node, from.colour, to.colour};
      if (whole) {
        pieces.push_back(piece);
        continue;
      }
      const double a = step * static_cast<double>(from.node % strands.stations);
      for (const Sector& sector : shown) add_shown(piece, a, step, sector, pieces);
    }
  }
  return pieces;
}

}  // namespace laywright
