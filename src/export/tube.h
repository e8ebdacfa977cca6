// The fiber as a tube: rings of vertices with places and normals, for glTF.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "export/thinned_line.h"

namespace laywright {

// How far a polygon of so many sides lies inside the circle of this diameter, mm.
[[nodiscard]] double side_deviation(double diameter_mm, int sides);
// The fewest sides, from 3 to 32, that stay within the tolerance.
[[nodiscard]] int sides_for(double diameter_mm, double tolerance_mm);

// Small: places of 16 bits, normals of 8, in glTF an extension (KHR_mesh_quantization). Floats: 32 bits each.
enum class Numbers { small, floats };

// A place is centre + step * most * q in each direction, q from -1 to 1. A small q is a whole multiple of 1 / most.
struct TubeGrid {
  static constexpr int most = 32767;

  Vec3 centre{0.0, 0.0, 0.0};
  double step_mm = 1.0;
};

// A vertex is a place and a normal, three numbers each. Small ones are filled up with nothing to 8 and 4 bytes.
[[nodiscard]] constexpr std::size_t normal_offset(Numbers numbers) { return numbers == Numbers::small ? 8 : 12; }
[[nodiscard]] constexpr std::size_t vertex_bytes(Numbers numbers) { return numbers == Numbers::small ? 12 : 24; }

// Vertices of consecutive rings, numbered ring by ring.
struct TubePiece {
  std::size_t at = 0;  // where its bytes begin
  std::size_t rings = 0;
  std::array<float, 3> low{}, high{};  // of q; of small ones times most
};

struct TubeLayer {
  std::size_t layer = 1;
  TubeGrid grid;
  std::vector<TubePiece> pieces;                // the last ring of each is the first of the next
  std::optional<TubePiece> begin_cap, end_cap;  // of one ring, where the fiber begins or ends
};

// Vertices that 16-bit indices can name; the highest number is not allowed in glTF.
[[nodiscard]] constexpr std::size_t rings_in_piece(int sides) { return 65535 / static_cast<std::size_t>(sides); }

// Pieces of a line as a tube, and bytes of their vertices and those of both caps.
[[nodiscard]] std::size_t tube_pieces(const ThinnedLine& line, int sides);
[[nodiscard]] std::size_t tube_bytes(const ThinnedLine& line, int sides, Numbers numbers);

// Makes tubes, layer by layer, and puts their vertices at the end of `bytes`.
class TubeMaker {
 public:
  TubeMaker(const Build& build, const NodePlaces& places, int sides, Numbers numbers);

  // `caps`: of its beginning, of its end. The layer's own box sets the step.
  [[nodiscard]] TubeLayer add(const ThinnedLayer& layer, bool cap_begin, bool cap_end, std::string& bytes) const;

 private:
  struct Frame {
    Vec3 centre, along, out, side;  // the last three of length 1 and square to each other
  };
  struct Corner {
    double cosine = 1.0, sine = 0.0;
  };
  [[nodiscard]] Frame frame(std::size_t node) const;
  [[nodiscard]] TubeGrid grid_around(const ThinnedLayer& layer) const;
  template <class Vertex>
  [[nodiscard]] TubePiece add_rings(std::span<const std::uint32_t> nodes, const TubeGrid& grid,
                                    std::optional<double> facing, std::string& bytes) const;
  template <class Vertex>
  [[nodiscard]] TubeLayer add_layer(const ThinnedLayer& layer, bool cap_begin, bool cap_end,
                                    std::string& bytes) const;

  const Build& build_;
  const NodePlaces& places_;
  std::vector<Corner> corners_;
  Numbers numbers_;
};

// Triangles between `rings` rings, counterclockwise from outside; a cap's are those of a fan.
[[nodiscard]] std::vector<std::uint16_t> tube_triangles(int sides, std::size_t rings);
[[nodiscard]] std::vector<std::uint16_t> cap_triangles(int sides, bool at_end);

}  // namespace laywright
