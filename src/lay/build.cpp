#include "lay/build.h"

#include <algorithm>
#include <bit>

#include "base/hash.h"

namespace laywright {

void NodeStore::reserve(std::size_t nodes) {
  x_.reserve(nodes);
  r_.reserve(nodes);
  flags_.reserve(nodes);
}

void NodeStore::truncate(std::size_t nodes) {
  x_.resize(std::min(nodes, x_.size()));
  r_.resize(std::min(nodes, r_.size()));
  flags_.resize(std::min(nodes, flags_.size()));
}

std::size_t NodeStore::bytes() const {
  return x_.size() * sizeof(x_[0]) + r_.size() * sizeof(r_[0]) + flags_.size() * sizeof(flags_[0]);
}

std::uint64_t NodeStore::hash() const {
  Hash hash;
  for (std::size_t k = 0; k < x_.size(); ++k) {
    hash.add(static_cast<std::uint64_t>(x_[k]) << 32U | r_[k]);
    hash.add(&flags_[k], 1);
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
    hash.add(stroke.first_node);
    hash.add(static_cast<std::uint64_t>(stroke.direction + 1));
  }
  hash.add(std::bit_cast<std::uint64_t>(turns));
  hash.add(std::bit_cast<std::uint64_t>(length_mm));
  return hash.value();
}

}  // namespace laywright
