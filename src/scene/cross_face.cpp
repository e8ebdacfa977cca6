#include <algorithm>
#include <cmath>

#include "scene/face.h"
#include "scene/face_fiber.h"

namespace laywright {

namespace {

constexpr double px_per_d = 4.0;
constexpr std::size_t most_columns = 2048;

CrossFace empty_face(const SceneSource& source, double x_mm, bool faces_right) {
  const FaceWindow whole = whole_face(source);
  const double height = whole.r_to - whole.r_from;
  CrossFace face;
  face.x_mm = x_mm;
  face.faces_right = faces_right;
  face.r_from = whole.r_from;
  face.px_mm = std::max(source.d() / px_per_d, height / static_cast<double>(most_columns));
  face.rows = source.shells().grid().rows;
  face.columns = static_cast<std::size_t>(std::ceil(height / face.px_mm));
  face.colour.assign(face.rows * face.columns, {0, 0, 0, 0});
  face.node.assign(face.rows * face.columns, no_node);
  return face;
}

// A chord of fiber from one radius to another, in columns from the first. A pixel that two share names the one that
// covers more of it.
void paint_chord(CrossFace& face, std::size_t row, double from, double to, std::size_t node, Rgba colour) {
  const double last = static_cast<double>(face.columns);
  const auto first = static_cast<std::size_t>(std::clamp(std::floor(from), 0.0, last));
  for (std::size_t c = first; c < face.columns && static_cast<double>(c) < to; ++c) {
    const double low = std::max(from, static_cast<double>(c)), high = std::min(to, static_cast<double>(c) + 1.0);
    const auto covers = static_cast<std::uint8_t>(std::lround(255.0 * (high - low)));
    const std::size_t at = row * face.columns + c;
    if (covers == 0 || covers <= face.colour[at].a) continue;
    face.colour[at] = {colour.r, colour.g, colour.b, covers};
    face.node[at] = static_cast<std::uint32_t>(node);
  }
}

}  // namespace

CrossFace cross_face(const SceneSource& source, const View& view, double x_mm, bool faces_right) {
  CrossFace face = empty_face(source, x_mm, faces_right);
  const ShellGrid& grid = source.shells().grid();
  std::vector<std::size_t> row_of(grid.stations, grid.rows);
  for (std::size_t row = 0; row < grid.rows; ++row) row_of[grid.station(row)] = row;

  const NodeStore& nodes = source.build().nodes;
  const double radius = 0.5 * source.d();
  const FaceFiber fiber(source, view);
  const TurnExtent window{x_mm - radius, x_mm + radius, 0.0, HUGE_VAL};
  source.turns().for_each(window, fiber.begin_turn(), fiber.end_turn(), true, [&](std::size_t turn) {
    for (std::size_t s = 0; s < grid.stations; ++s) {
      const std::size_t node = turn * grid.stations + s;
      if (row_of[s] == grid.rows || !fiber.has(node, false)) continue;
      const double dx = nodes.x(node) - x_mm;
      if (std::abs(dx) >= radius) continue;
      const double half = std::sqrt(radius * radius - dx * dx), r = nodes.r(node) - face.r_from;
      paint_chord(face, row_of[s], (r - half) / face.px_mm, (r + half) / face.px_mm, node, fiber.colour(node));
    }
    return true;
  });
  return face;
}

}  // namespace laywright
