#include "lay/build.h"

#include <algorithm>

#include "base/hash.h"

namespace laywright {

void NodeStore::reserve(std::size_t nodes) {
  columns_.x.reserve(nodes);
  columns_.r.reserve(nodes);
  columns_.flags.reserve(nodes);
}

void NodeStore::truncate(std::size_t nodes) {
  columns_.x.resize(std::min(nodes, columns_.x.size()));
  columns_.r.resize(std::min(nodes, columns_.r.size()));
  columns_.flags.resize(std::min(nodes, columns_.flags.size()));
}

std::size_t NodeStore::bytes() const {
  return columns_.x.size() * sizeof(columns_.x[0]) + columns_.r.size() * sizeof(columns_.r[0]) +
         columns_.flags.size() * sizeof(columns_.flags[0]);
}

std::uint64_t NodeStore::hash() const {
  Hash hash;
  for (std::size_t k = 0; k < columns_.x.size(); ++k) {
    hash.add(static_cast<std::uint64_t>(columns_.x[k]) << 32U | columns_.r[k]);
    hash.add(&columns_.flags[k], 1);
  }
  return hash.value();
}

std::size_t Build::stroke_of(std::size_t node) const {
  const auto after = std::upper_bound(strokes.begin(), strokes.end(), node,
                                      [](std::size_t k, const Stroke& s) { return k < s.first_node; });
  return static_cast<std::size_t>(after - strokes.begin()) - 1;
}

std::size_t Build::end_of(std::size_t stroke) const {
  return stroke + 1 < strokes.size() ? strokes[stroke + 1].first_node : nodes.size();
}

std::uint64_t Build::hash() const {
  Hash hash;
  hash.add(nodes.hash());
  hash.add(static_cast<std::uint64_t>(stations_per_turn));
  for (const Stroke& stroke : strokes) {
    hash.add(static_cast<std::uint64_t>(stroke.first_node));
    hash.add(static_cast<std::uint64_t>(stroke.direction + 1));
  }
  hash.add(turns);
  hash.add(length_mm);
  for (const float half : diameters.knots()) hash.add(static_cast<double>(half));
  return hash.value();
}

}  // namespace laywright
