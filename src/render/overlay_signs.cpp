#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <span>

#include "render/overlay_parts.h"

namespace laywright {
namespace {

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

bool faces_eye(const View& view, const Vec3& place, const Vec3& facing) {
  const Vec3 toward_eye =
      view.camera.projection == Projection::parallel ? -forward_of(view.camera) : eye_of(view.camera) - place;
  return glm::dot(toward_eye, facing) > 0.0;
}

void draw_sign(Canvas& canvas, Glyph glyph, glm::dvec2 at, double radius, const Ink& color,
               const OverlayStyle& style) {
  const double rim = 1.4 * style.unit;
  const Ink edge{glm::vec3(1.0F), color.opacity};  // white: all signs are darker, and so is most fiber
  if (glyph == Glyph::arch) {
    canvas.line(arch(at, radius * 0.9), edge, radius * 0.75);
    canvas.line(arch(at, radius * 0.9), color, radius * 0.45);
  } else if (glyph == Glyph::bars) {
    for (const double y : {-0.7, 0.0, 0.7}) {
      const glm::dvec2 corner = at + glm::dvec2(-radius, (y - 0.25) * radius), size(2 * radius, 0.5 * radius);
      canvas.box(corner - rim, size + 2 * rim, rim, edge);
      canvas.box(corner, size, 0.0, color);
    }
  } else {
    std::vector<glm::dvec2> outline = shape_of(glyph, at, radius);
    if (outline.empty()) return;
    canvas.fill(outline, color);
    outline.push_back(outline.front());
    canvas.line(outline, edge, rim);
  }
}

void draw_lay_point(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style) {
  if (!scene.guide) return;
  const GuidePose& pose = scene.guide->pose;
  if (!faces_eye(view, pose.lay_point, in_space(0.0, 1.0, pose.angle))) return;
  const std::optional<glm::dvec2> at = in_picture(view, pose.lay_point);
  if (!at) return;
  canvas.ring(*at, 6.5 * style.unit, {glm::vec3(1.0F), 0.9}, 4.5 * style.unit);
  canvas.ring(*at, 6.5 * style.unit, style.ink, 2.0 * style.unit);
}

namespace {

// A ring around the very place, wide enough to leave the fiber in it free, and its sign beside it: on the side that is
// farther from the picture's edge.
void draw_chosen(Canvas& canvas, const Mark& mark, glm::dvec2 at, double fiber_px, const OverlayStyle& style) {
  const double u = style.unit, ring = std::max(9.0 * u, 0.75 * fiber_px);
  // Around a light colour a dark rim, around a dark one a light.
  const Ink colour = ink_of(mark.colour);
  const bool is_light = 0.3 * static_cast<double>(colour.color.r) + 0.6 * static_cast<double>(colour.color.g) > 0.55;
  canvas.ring(at, ring, is_light ? Ink{glm::vec3(0.1F), 0.85} : Ink{glm::vec3(1.0F), 0.9}, 5.4 * u);
  canvas.ring(at, ring, colour, 2.6 * u);
  if (mark.glyph == Glyph::none) return;
  const double right = at.x < 0.7 * canvas.width() ? 1.0 : -1.0, up = at.y > 0.25 * canvas.height() ? -1.0 : 1.0;
  const glm::dvec2 way = glm::normalize(glm::dvec2(right, up));
  const glm::dvec2 from = at + way * (ring + 2.0 * u), sign = at + way * (ring + 30.0 * u);
  canvas.line({from, sign}, {glm::vec3(1.0F), 0.9}, 4.0 * u);
  canvas.line({from, sign}, ink_of(mark.colour), 2.0 * u);
  draw_sign(canvas, mark.glyph, sign, 11.0 * u, ink_of(mark.colour), style);
}

// Where a finding that knows no places stands: in the middle of its extent.
MarkSpot middle_of(const Scene& scene, const Mark& mark) {
  MarkSpot middle;
  middle.place = mark.place;
  middle.facing = mark.facing;
  middle.covered = mark.covered;
  middle.shown = !is_removed(scene.removed, angle_of(mark.place)) && mark.place.x >= scene.x_from_mm &&
                 mark.place.x <= scene.x_to_mm;
  return middle;
}

}  // namespace

void draw_signs(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style,
                OverlayRoom& taken) {
  const Projector project(view);
  const double u = style.unit, fiber_px = scene.shell.fiber_diameter_mm / mm_per_px(view);
  // The gravest stand first in the list and are drawn last.
  for (auto mark = scene.marks.rbegin(); mark != scene.marks.rend(); ++mark) {
    const MarkSpot middle = mark->spots.empty() ? middle_of(scene, *mark) : MarkSpot{};
    const std::span<const MarkSpot> spots = mark->spots.empty() ? std::span(&middle, 1) : std::span(mark->spots);
    for (std::size_t i = spots.size(); i-- > 0;) {
      const MarkSpot& spot = spots[i];
      const bool worst = i == 0;
      if (!spot.shown || !faces_eye(view, spot.place, spot.facing)) continue;
      const std::optional<glm::dvec2> at = project(spot.place);
      if (!at) continue;
      if (worst) taken.signs.push_back(*at);
      if (mark->chosen && worst) {
        draw_chosen(canvas, *mark, *at, fiber_px, style);
      } else if (mark->shape == MarkShape::glyph && (worst || !spot.covered)) {
        draw_sign(canvas, mark->glyph, *at, (worst ? 8.0 : 5.5) * u, ink_of(mark->colour, spot.covered ? 0.5 : 1.0),
                  style);
      }
    }
  }
}

}  // namespace laywright
