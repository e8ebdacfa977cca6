#include "scene/pick.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <queue>
#include <vector>

#include <glm/geometric.hpp>

#include "scene/ray_spans.h"

namespace laywright {

namespace {

// Opens groups of turns from the nearest on, until the nearest hit lies before what is left.
class Picker {
 public:
  Picker(const SceneSource& source, const View& view, const Ray& ray)
      : source_(source),
        ray_(ray),
        fiber_(visible_fiber(source, view)),
        seen_(seen_spans(view, ray)),
        radius_(0.5 * source.d()),
        station_angle_(2.0 * std::numbers::pi / static_cast<double>(source.stations())),
        chord_share_(std::cos(0.5 * station_angle_)) {}

  std::optional<FiberHit> pick() {
    const auto& levels = source_.turns().levels();
    if (seen_.empty() || levels.empty() || fiber_.end < fiber_.first + 2) return std::nullopt;
    offer(levels.size() - 1, 0);
    while (!queue_.empty() && queue_.top().distance <= best_.distance) {
      const Group group = queue_.top();
      queue_.pop();
      if (group.level == 0) {
        try_turn(group.at);
        continue;
      }
      const std::size_t first = group.at * TurnIndex::group;
      const std::size_t end = std::min(first + TurnIndex::group, levels[group.level - 1].size());
      for (std::size_t i = first; i < end; ++i) offer(group.level - 1, i);
    }
    if (std::isinf(best_.distance)) return std::nullopt;
    finish();
    return best_;
  }

 private:
  struct Group {
    double distance = 0.0;  // no hit in it can be nearer
    std::size_t level = 0, at = 0;

    [[nodiscard]] bool operator<(const Group& other) const { return distance > other.distance; }
  };

  // All that the fiber of an extent fills. A chord between stations runs inside of them.
  [[nodiscard]] TurnExtent filled(const TurnExtent& extent) const {
    const double more = radius_ * (1.0 + 1e-6);
    return {extent.x_min - more, extent.x_max + more, extent.r_min * chord_share_ - more, extent.r_max + more};
  }

  void offer(std::size_t level, std::size_t at) {
    std::size_t turns_each = 1;
    for (std::size_t i = 0; i < level; ++i) turns_each *= TurnIndex::group;
    const std::size_t nodes_each = turns_each * source_.stations();
    if (at * nodes_each >= fiber_.end || (at + 1) * nodes_each <= fiber_.first) return;
    const auto spans = spans_in_ring(ray_, filled(source_.turns().levels()[level][at]));
    const double distance = first_common(spans, seen_);
    if (std::isfinite(distance) && distance <= best_.distance) queue_.push({distance, level, at});
  }

  void try_turn(std::size_t turn) {
    const TurnExtent ring = filled(source_.turns().levels()[0][turn]);
    for (const RaySpan& span : spans_in_ring(ray_, ring)) try_arc(turn, span, ring.r_min);
  }

  // The pieces of a turn at the angles that the ray passes on the span.
  void try_arc(std::size_t turn, const RaySpan& span, double least_r) {
    const auto stations = static_cast<std::ptrdiff_t>(source_.stations());
    const double from = angle_of(ray_.origin + span.from * ray_.direction);
    const double to = angle_of(ray_.origin + span.to * ray_.direction);
    const double turned = std::remainder(to - from, 2.0 * std::numbers::pi);
    // A piece reaches beyond its ends by the angle under which its radius is seen from the axis.
    const double reach = least_r > 4.0 * radius_ ? std::asin(radius_ / least_r) : 2.0 * std::numbers::pi;
    const double low = from + std::min(0.0, turned) - reach, high = from + std::max(0.0, turned) + reach;
    auto first = static_cast<std::ptrdiff_t>(std::floor(low / station_angle_)) - 1;
    auto last = static_cast<std::ptrdiff_t>(std::floor(high / station_angle_)) + 1;
    if (last - first >= stations) {
      first = 0;
      last = stations - 1;
    }
    for (std::ptrdiff_t s = first; s <= last; ++s) {
      const auto station = static_cast<std::size_t>((s % stations + stations) % stations);
      try_piece(turn * source_.stations() + station);
    }
  }

  void try_piece(std::size_t node) {
    if (!fiber_.shows_piece(node)) return;
    double leave = 0.0;
    const auto enter = ray_capsule(ray_, place(node), place(node + 1), radius_, &leave);
    if (!enter) return;
    const double distance = first_common({{*enter, leave}}, seen_);
    // Of two pieces that meet in the hit, the older.
    if (distance < best_.distance || (distance == best_.distance && node < best_.piece)) {
      best_.distance = distance;
      best_.piece = node;
    }
  }

  void finish() {
    best_.place = ray_.origin + best_.distance * ray_.direction;
    const Vec3 a = place(best_.piece), b = place(best_.piece + 1);
    const bool second = glm::dot(best_.place - 0.5 * (a + b), b - a) > 0.0;
    best_.node = best_.piece + (second ? 1 : 0);
  }

  [[nodiscard]] Vec3 place(std::size_t node) const {
    const NodeStore& nodes = source_.build().nodes;
    return in_space(nodes.x(node), nodes.r(node), station_angle_ * static_cast<double>(node % source_.stations()));
  }

  const SceneSource& source_;
  const Ray& ray_;
  VisibleFiber fiber_;
  std::vector<RaySpan> seen_;
  double radius_, station_angle_;
  double chord_share_;  // radius of a chord between two stations, at its middle, over that of its ends
  std::priority_queue<Group> queue_;
  FiberHit best_{0, 0, HUGE_VAL, {}};
};

}  // namespace

std::optional<FiberHit> pick_fiber(const SceneSource& source, const View& view, const Ray& ray) {
  return Picker(source, view, ray).pick();
}

}  // namespace laywright
