#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "render/overlay_parts.h"

namespace laywright {
namespace {

// The flange between the eye and the wind, as a disc.
struct Screen {
  double x = 0.0, radius = 0.0;
};

// The inner face and rim of a flange, from its corners. `left`: the inner face is where x is greatest.
Screen screen_of(const Mesh& flange, bool left) {
  Screen screen{left ? -1e300 : 1e300, 0.0};
  for (const MeshVertex& vertex : flange.vertices) {
    const auto x = static_cast<double>(vertex.x);
    screen.x = left ? std::max(screen.x, x) : std::min(screen.x, x);
    screen.radius =
        std::max(screen.radius, std::hypot(static_cast<double>(vertex.y), static_cast<double>(vertex.z)));
  }
  return screen;
}

class Sight {
 public:
  Sight(const Scene& scene, const View& view)
      : scene_(scene),
        view_(view),
        left_(screen_of(scene.spool.left_flange, true)),
        right_(screen_of(scene.spool.right_flange, false)) {}

  [[nodiscard]] bool sees(const Mark& mark) const {
    const Vec3 toward_eye = view_.camera.projection == Projection::parallel ? -forward_of(view_.camera)
                                                                            : eye_of(view_.camera) - mark.place;
    if (glm::dot(toward_eye, mark.outward) <= 0.0) return false;
    if (is_removed(scene_.removed, angle_of(mark.place))) return false;
    if (mark.place.x < scene_.x_from_mm || mark.place.x > scene_.x_to_mm) return false;
    return scene_.flanges_see_through ||
           !(toward_eye.x < 0.0 ? hides(left_, mark.place, toward_eye) : hides(right_, mark.place, toward_eye));
  }

 private:
  // True if the way from the place to the eye passes through the disc.
  static bool hides(const Screen& screen, const Vec3& place, const Vec3& way) {
    if (std::abs(way.x) < 1e-9) return false;
    const double share = (screen.x - place.x) / way.x;
    if (share <= 0.0 || share >= 1e6) return false;
    return radius_of(place + way * share) < screen.radius;
  }

  const Scene& scene_;
  const View& view_;
  Screen left_, right_;
};

std::vector<glm::dvec2> shape_of(Glyph glyph, glm::dvec2 at, double r) {
  switch (glyph) {
    case Glyph::triangle_up:
      return {at + glm::dvec2(0, -r), at + glm::dvec2(r, 0.8 * r), at + glm::dvec2(-r, 0.8 * r)};
    case Glyph::triangle_down:
      return {at + glm::dvec2(0, r), at + glm::dvec2(-r, -0.8 * r), at + glm::dvec2(r, -0.8 * r)};
    case Glyph::diamond:
      return {at + glm::dvec2(0, -r), at + glm::dvec2(r, 0), at + glm::dvec2(0, r), at + glm::dvec2(-r, 0)};
    default: return {};
  }
}

std::vector<glm::dvec2> arch(glm::dvec2 at, double r) {
  std::vector<glm::dvec2> points;
  for (int i = 0; i <= 12; ++i) {
    const double angle = std::numbers::pi * i / 12;
    points.push_back(at + glm::dvec2(-r * std::cos(angle), 0.5 * r - 1.2 * r * std::sin(angle)));
  }
  return points;
}

}  // namespace

void draw_sign(Canvas& canvas, Glyph glyph, glm::dvec2 at, double radius, const Ink& color,
               const OverlayStyle& style) {
  const double rim = 1.4 * style.unit;
  if (glyph == Glyph::arch) {
    canvas.line(arch(at, radius * 0.9), {style.ground.color, color.opacity}, radius * 0.75);
    canvas.line(arch(at, radius * 0.9), color, radius * 0.45);
  } else if (glyph == Glyph::bars) {
    for (const double y : {-0.7, 0.0, 0.7}) {
      const glm::dvec2 corner = at + glm::dvec2(-radius, (y - 0.25) * radius), size(2 * radius, 0.5 * radius);
      canvas.box(corner - rim, size + 2 * rim, rim, {style.ground.color, color.opacity});
      canvas.box(corner, size, 0.0, color);
    }
  } else {
    std::vector<glm::dvec2> outline = shape_of(glyph, at, radius);
    if (outline.empty()) return;
    canvas.fill(outline, color);
    outline.push_back(outline.front());
    canvas.line(outline, {style.ground.color, color.opacity}, rim);
  }
}

void draw_signs(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style) {
  const Sight sight(scene, view);
  // The gravest stand first in the list and are drawn last.
  for (auto mark = scene.marks.rbegin(); mark != scene.marks.rend(); ++mark) {
    if (mark->shape != MarkShape::glyph || !sight.sees(*mark)) continue;
    const std::optional<glm::dvec2> at = in_picture(view, mark->place);
    if (!at) continue;
    const double radius = (mark->chosen ? 12.0 : 8.0) * style.unit;
    draw_sign(canvas, mark->glyph, *at, radius, ink_of(mark->colour, mark->covered ? 0.5 : 1.0), style);
    if (mark->chosen) canvas.ring(*at, 19.0 * style.unit, ink_of(mark->colour), 2.0 * style.unit);
  }
}

}  // namespace laywright
