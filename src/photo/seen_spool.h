// Both flanges, and what lies between them, in a flattened picture. Inside the folder only.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "photo/edges.h"

namespace laywright {

// One end of a row's ground between wind and rim, pixels.
struct RowEnd {
  double x = 0.0, y = 0.0;
};

struct SeenFlange {
  double top = 0.0, bottom = 0.0;  // of its rim, px
  double rim_x = 0.0;              // the column in whose middle that is seen
  int outer = 0, inner = 0;        // columns between which it is seen, the outer and the one toward the wind
  std::vector<RowEnd> face;        // where it ends toward the wind, in rows above and below the wind

  [[nodiscard]] double height() const { return bottom - top; }
};

struct SeenSpool {
  ColumnEdges edges;
  std::array<SeenFlange, 2> flanges;  // left, right
  double wind_height = 0.0;           // px, the median of the middle of what lies between
};

// The angle of the middle line between both edges, over the part of the width that no flange disturbs, rad; positive where it
// rises to the right. Taken before it is known whether there are flanges.
[[nodiscard]] double tilt_of(const ColumnEdges& edges);

// Otherwise `why`: the spool runs over the picture's border, or there are no two flanges.
[[nodiscard]] SeenSpool seen_spool(const FlatPicture& picture, double edge_width, std::string& why);

}  // namespace laywright
