// A fiber with fewer nodes: those are left out that lie near the straight line between the ones that are kept.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "lay/build.h"
#include "scene/coordinates.h"

namespace laywright {

// Places of the nodes of a build in space (coordinates.h), with the sines of its stations looked up.
class NodePlaces {
 public:
  explicit NodePlaces(const Build& build);

  [[nodiscard]] Vec3 at(std::size_t node) const {
    const Direction& direction = direction_[node % direction_.size()];
    const double r = build_->nodes.r(node);
    return {build_->nodes.x(node), r * direction.cosine, r * direction.sine};
  }
  // Outward from the axis at a node, length 1.
  [[nodiscard]] Vec3 outward(std::size_t node) const {
    const Direction& direction = direction_[node % direction_.size()];
    return {0.0, direction.cosine, direction.sine};
  }

 private:
  struct Direction {
    double cosine = 1.0, sine = 0.0;
  };
  const Build* build_;
  std::vector<Direction> direction_;
};

// The layers of a build that are wanted, 1 = on the barrel.
struct LayerRange {
  int first = 1;
  std::optional<int> last;  // the newest by default
};

// One layer of it. Consecutive layers share a node, so that the fiber goes on without a break.
struct ThinnedLayer {
  std::size_t layer = 1;
  std::vector<std::uint32_t> nodes;  // rising, two at least
};

struct ThinnedLine {
  std::vector<ThinnedLayer> layers;
  // Greatest distance of the fiber from the straight lines, mm: what was left out, and the height of the arc from one
  // station to the next, since a build is known at its stations only.
  double deviation_mm = 0.0;

  [[nodiscard]] std::size_t nodes() const;
};

// Keeps as few nodes as one pass can so that `deviation_mm` stays within the tolerance (mm); all of them, when the
// tolerance is smaller than the arc between two stations. Precondition: the range has layers of this build with two
// nodes or more.
[[nodiscard]] ThinnedLine thin_line(const Build& build, const NodePlaces& places, const LayerRange& range,
                                    double tolerance_mm);

}  // namespace laywright
