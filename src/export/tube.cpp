#include "export/tube.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstring>
#include <numbers>

#include <glm/geometric.hpp>

namespace laywright {

namespace {

struct SmallVertex {
  std::array<std::int16_t, 4> place;
  std::array<std::int8_t, 4> normal;
};
struct FloatVertex {
  std::array<float, 3> place;
  std::array<float, 3> normal;
};
static_assert(sizeof(SmallVertex) == vertex_bytes(Numbers::small) &&
              sizeof(FloatVertex) == vertex_bytes(Numbers::floats));
static_assert(offsetof(SmallVertex, normal) == normal_offset(Numbers::small));
static_assert(offsetof(FloatVertex, normal) == normal_offset(Numbers::floats));

// `scaled`: from -TubeGrid::most to it.
void pack(const Vec3& scaled, const Vec3& normal, SmallVertex& vertex) {
  const auto place = [](double value) { return static_cast<std::int16_t>(std::lrint(value)); };
  const auto share = [](double value) { return static_cast<std::int8_t>(std::lrint(127.0 * value)); };
  vertex = {{place(scaled.x), place(scaled.y), place(scaled.z), 0},
            {share(normal.x), share(normal.y), share(normal.z), 0}};
}

void pack(const Vec3& scaled, const Vec3& normal, FloatVertex& vertex) {
  const auto place = [](double value) { return static_cast<float>(value / TubeGrid::most); };
  const auto share = [](double value) { return static_cast<float>(value); };
  vertex = {{place(scaled.x), place(scaled.y), place(scaled.z)},
            {share(normal.x), share(normal.y), share(normal.z)}};
}

class Bounds {
 public:
  template <class Vertex>
  void add(const Vertex& vertex) {
    for (std::size_t i = 0; i < 3; ++i) {
      const auto q = static_cast<float>(vertex.place[i]);
      low[i] = std::min(low[i], q);
      high[i] = std::max(high[i], q);
    }
  }
  std::array<float, 3> low{TubeGrid::most, TubeGrid::most, TubeGrid::most};
  std::array<float, 3> high{-TubeGrid::most, -TubeGrid::most, -TubeGrid::most};
};

std::size_t pieces_of(std::size_t rings, std::size_t most) { return (rings + most - 3) / (most - 1); }

}  // namespace

double side_deviation(double diameter_mm, int sides) {
  return 0.5 * diameter_mm * (1.0 - std::cos(std::numbers::pi / sides));
}

int sides_for(double diameter_mm, double tolerance_mm) {
  int sides = 3;
  while (sides < 32 && side_deviation(diameter_mm, sides) > tolerance_mm) ++sides;
  return sides;
}

std::size_t tube_pieces(const ThinnedLine& line, int sides) {
  std::size_t pieces = 0;
  for (const ThinnedLayer& layer : line.layers) pieces += pieces_of(layer.nodes.size(), rings_in_piece(sides));
  return pieces;
}

std::size_t tube_bytes(const ThinnedLine& line, int sides, Numbers numbers) {
  constexpr std::size_t caps = 2;
  const std::size_t shared_rings = tube_pieces(line, sides) - line.layers.size();
  return (line.nodes() + shared_rings + caps) * static_cast<std::size_t>(sides) * vertex_bytes(numbers);
}

TubeMaker::TubeMaker(const Build& build, const NodePlaces& places, int sides, Numbers numbers)
    : build_(build), places_(places), numbers_(numbers) {
  for (int corner = 0; corner < sides; ++corner) {
    const double angle = 2.0 * std::numbers::pi * corner / sides;
    corners_.push_back({std::cos(angle), std::sin(angle)});
  }
}

TubeMaker::Frame TubeMaker::frame(std::size_t node) const {
  const std::size_t before = node == 0 ? 0 : node - 1, after = std::min(node + 1, build_.nodes.size() - 1);
  Frame frame;
  frame.centre = places_.at(node);
  frame.along = glm::normalize(places_.at(after) - places_.at(before));
  const Vec3 outward = places_.outward(node);
  frame.out = glm::normalize(outward - glm::dot(outward, frame.along) * frame.along);
  frame.side = glm::cross(frame.along, frame.out);
  return frame;
}

TubeGrid TubeMaker::grid_around(const ThinnedLayer& layer) const {
  double x_low = build_.nodes.x(layer.nodes.front()), x_high = x_low, r_high = 0.0;
  for (const std::uint32_t node : layer.nodes) {
    x_low = std::min(x_low, build_.nodes.x(node));
    x_high = std::max(x_high, build_.nodes.x(node));
    r_high = std::max(r_high, build_.nodes.r(node));
  }
  const double half = std::max(r_high, 0.5 * (x_high - x_low)) + 0.5 * build_.fiber_diameter_mm;
  return {{0.5 * (x_low + x_high), 0.0, 0.0}, half / TubeGrid::most};
}

// Normals point outward, or along the fiber when `facing` is 1, against it when -1.
template <class Vertex>
TubePiece TubeMaker::add_rings(std::span<const std::uint32_t> nodes, const TubeGrid& grid,
                               std::optional<double> facing, std::string& bytes) const {
  TubePiece piece{bytes.size(), nodes.size(), {}, {}};
  bytes.resize(bytes.size() + nodes.size() * corners_.size() * sizeof(Vertex));
  char* vertex_at = bytes.data() + piece.at;
  const double radius = 0.5 * build_.fiber_diameter_mm, steps_per_mm = 1.0 / grid.step_mm;
  Bounds bounds;
  Vertex vertex;
  for (const std::uint32_t node : nodes) {
    const Frame at = frame(node);
    for (const Corner& corner : corners_) {
      const Vec3 out = corner.cosine * at.out + corner.sine * at.side;
      pack((at.centre + radius * out - grid.centre) * steps_per_mm, facing ? *facing * at.along : out, vertex);
      bounds.add(vertex);
      std::memcpy(vertex_at, &vertex, sizeof vertex);
      vertex_at += sizeof vertex;
    }
  }
  piece.low = bounds.low;
  piece.high = bounds.high;
  return piece;
}

template <class Vertex>
TubeLayer TubeMaker::add_layer(const ThinnedLayer& layer, bool cap_begin, bool cap_end, std::string& bytes) const {
  TubeLayer tube;
  tube.layer = layer.layer;
  tube.grid = grid_around(layer);
  const std::span<const std::uint32_t> nodes(layer.nodes);
  const std::size_t most = rings_in_piece(static_cast<int>(corners_.size()));
  for (std::size_t first = 0; first + 1 < nodes.size(); first += most - 1) {
    const std::size_t rings = std::min(most, nodes.size() - first);
    tube.pieces.push_back(add_rings<Vertex>(nodes.subspan(first, rings), tube.grid, {}, bytes));
  }
  if (cap_begin) tube.begin_cap = add_rings<Vertex>(nodes.first(1), tube.grid, -1.0, bytes);
  if (cap_end) tube.end_cap = add_rings<Vertex>(nodes.last(1), tube.grid, 1.0, bytes);
  return tube;
}

TubeLayer TubeMaker::add(const ThinnedLayer& layer, bool cap_begin, bool cap_end, std::string& bytes) const {
  return numbers_ == Numbers::small ? add_layer<SmallVertex>(layer, cap_begin, cap_end, bytes)
                                    : add_layer<FloatVertex>(layer, cap_begin, cap_end, bytes);
}

std::vector<std::uint16_t> tube_triangles(int sides, std::size_t rings) {
  std::vector<std::uint16_t> triangles;
  const auto count = static_cast<std::size_t>(sides);
  for (std::size_t ring = 0; ring + 1 < rings; ++ring) {
    for (std::size_t corner = 0; corner < count; ++corner) {
      const std::size_t here = ring * count + corner, beside = ring * count + (corner + 1) % count;
      for (const std::size_t index : {here, beside, here + count, here + count, beside, beside + count}) {
        triangles.push_back(static_cast<std::uint16_t>(index));
      }
    }
  }
  return triangles;
}

std::vector<std::uint16_t> cap_triangles(int sides, bool at_end) {
  std::vector<std::uint16_t> triangles;
  for (int corner = 1; corner + 1 < sides; ++corner) {
    const int left = at_end ? corner : corner + 1, right = at_end ? corner + 1 : corner;
    for (const int index : {0, left, right}) triangles.push_back(static_cast<std::uint16_t>(index));
  }
  return triangles;
}

}  // namespace laywright
