// A build: every turn of a wind, station by station, as the lay model computed it.
//
// Node k lies at spool angle 2 pi k / stations_per_turn from the start, at station k % stations_per_turn;
// its centre is (x, r) in that station's axial section: x from the inner face of the left flange at the
// barrel, r from the spool's axis, both mm.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "lay/fiber_diameter.h"
#include "lay/node_store.h"

namespace laywright {

// What carries a node.
enum class Support : std::uint8_t {
  none,  // it bridges: the fiber hangs clear of everything below
  barrel,
  turn,    // one turn below or beside
  valley,  // two of: turn, barrel, flange
  flange,
};

// A turn rides up on its own layer when it stands more than this, in d, above the turn that carries it.
inline constexpr double ride_up_d = 0.5;

enum class StopReason { length, turns, diameter, rim };

// One traverse from stop to stop. The fiber that it lays is one layer; strokes stand in their order, so that
// layer n is strokes[n - 1].
struct Stroke {
  std::size_t first_node = 0;
  int direction = 1;  // +1 to the right, -1 to the left
};

struct Build {
  int stations_per_turn = 0;
  NodeStore nodes;
  std::vector<Stroke> strokes;
  double turns = 0.0;              // of the spool; the last node lies at or after this angle
  double length_mm = 0.0;          // laid, up to `turns`
  double fiber_diameter_mm = 0.0;  // without its scatter
  FiberDiameter diameters;         // with it
  StopReason stopped_by = StopReason::length;
  std::uint64_t seed = 0;

  // Index into strokes of the stroke that laid node k.
  [[nodiscard]] std::size_t stroke_of(std::size_t node) const;

  // Half of the fiber's diameter at node k, mm.
  [[nodiscard]] double half_mm(std::size_t k) const {
    return diameters.even() ? 0.5 * fiber_diameter_mm : static_cast<double>(diameters.half_mm(k));
  }

  // One past the last node of a stroke.
  [[nodiscard]] std::size_t end_of(std::size_t stroke) const;

  // Hash of all that was laid: equal builds, equal hash, on any machine, for any number of threads.
  [[nodiscard]] std::uint64_t hash() const;
};

}  // namespace laywright
