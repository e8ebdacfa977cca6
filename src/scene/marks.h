// Findings in the picture: each kind has a shape and a colour of its own.
#pragma once

#include <vector>

#include "scene/finding_spot.h"

namespace laywright {

enum class MarkShape {
  band,   // the patch of surface is lit: gap
  hatch,  // the same, hatched: flange_gap
  zone,   // its outline: pile_up (solid line), edge_valley (dashed)
  glyph,  // a sign at its place: ride_up, dropped_turn, bridge, ribbon, rim_overrun
};

// Signs, drawn facing the viewer at a fixed size in pixels.
enum class Glyph {
  none,
  triangle_up,    // ride_up
  triangle_down,  // dropped_turn
  arch,           // bridge
  bars,           // ribbon: stacked bars
  diamond,        // rim_overrun
};

struct MarkSpot : FindingSpot {
  Vec3 place{0.0, 0.0, 0.0};   // its heart where a cut goes through it, else its outer side
  bool shown = false;          // laid, of the chosen layers, within the x range and not cut away
  bool covered = false;        // later fiber of this view lies over it; never on the face of a cut
  Vec3 facing{0.0, 1.0, 0.0};  // from where it can be seen: outward, or out of the face of the cut; length 1
  // Of what is drawn as a glyph: the fiber that it concerns, on its outer side, as far as the view shows it; of a long
  // one the part around the place, of a ribbon that of the worst spot alone. Lines of two places or more.
  std::vector<std::vector<Vec3>> paths;
};

struct Mark {
  std::size_t finding = 0;  // index into Measurements::findings
  FindingKind kind = FindingKind::gap;
  MarkShape shape = MarkShape::glyph;
  Glyph glyph = Glyph::none;
  bool dashed = false;
  Rgba colour;
  double x_from_mm = 0.0, x_to_mm = 0.0;
  Sector sector;                // its extent around the spool; to = from + 2 pi all round
  double radius_mm = 0.0;       // outer radius of the fiber there, after the last layer it concerns
  std::vector<MarkSpot> spots;  // exact, the worst first; empty where the finding has no places
  Vec3 place{0.0, 0.0, 0.0};    // of the worst spot; without spots the middle of the extent, on that radius
  Vec3 facing{0.0, 1.0, 0.0};   // from where its place can be seen
  bool covered = false;         // later layers of this view lie over it; drawn fainter
  bool chosen = false;
};

// The mark of one finding, whether the view shows it or not. Precondition: index into the findings.
[[nodiscard]] Mark mark_of(const SceneSource& source, const View& view, std::size_t finding);

// None when the view does not show findings. Those that begin after the end of the view's wind are left out, as are
// those outside its layers and x range.
[[nodiscard]] std::vector<Mark> make_marks(const SceneSource& source, const View& view);

// Outline of a zone, band or hatch on its cylinder, closed (the last place equals the first), points at most 3 degrees
// apart. All round: two rings one after the other, each closed, the second beginning at index `size() / 2`.
[[nodiscard]] std::vector<Vec3> outline_of(const Mark& mark);

}  // namespace laywright
