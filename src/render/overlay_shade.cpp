#include "render/overlay_shade.h"

#include <algorithm>

#include "render/overlay_room.h"

namespace laywright {
namespace {

// Andrew's monotone chain ("Another efficient algorithm for convex hulls in two dimensions", 1979).
std::vector<glm::dvec2> hull_of(std::vector<glm::dvec2> places) {
  std::sort(places.begin(), places.end(),
            [](glm::dvec2 a, glm::dvec2 b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
  if (places.size() < 3) return {};
  std::vector<glm::dvec2> hull;
  const auto go_round = [&hull](auto begin, auto end) {
    const std::size_t start = hull.size();
    for (auto place = begin; place != end; ++place) {
      while (hull.size() >= start + 2 && turn_of(hull[hull.size() - 2], hull.back(), *place) <= 0.0) hull.pop_back();
      hull.push_back(*place);
    }
    hull.pop_back();
  };
  go_round(places.begin(), places.end());
  go_round(places.rbegin(), places.rend());
  return hull;
}

}  // namespace

SpoolShade::SpoolShade(const Scene& scene, const View& view) {
  const Projector project(view);
  std::vector<glm::dvec2> places;
  for (const Mesh* mesh : {&scene.spool.left_flange, &scene.spool.right_flange, &scene.spool.barrel}) {
    for (const MeshVertex& vertex : mesh->vertices) {
      const auto at = project(Vec3(vertex.x, vertex.y, vertex.z));
      if (!at) continue;
      low_ = glm::min(low_, *at);
      high_ = glm::max(high_, *at);
      places.push_back(*at);
    }
  }
  hull_ = hull_of(std::move(places));
}

bool SpoolShade::covers(glm::dvec2 place) const {
  if (hull_.size() < 3 || place.x < low_.x || place.x > high_.x || place.y < low_.y || place.y > high_.y)
    return false;
  for (std::size_t k = 0; k < hull_.size(); ++k) {
    if (turn_of(hull_[k], hull_[(k + 1) % hull_.size()], place) < 0.0) return false;
  }
  return true;
}

double SpoolShade::under(glm::dvec2 corner, glm::dvec2 size) const {
  constexpr int steps = 12;
  int inside = 0;
  for (int i = 0; i < steps * steps; ++i) {
    const glm::dvec2 place = corner + size * (glm::dvec2(i % steps, i / steps) + 0.5) / static_cast<double>(steps);
    inside += covers(place) ? 1 : 0;
  }
  return static_cast<double>(inside) / (steps * steps);
}

}  // namespace laywright
