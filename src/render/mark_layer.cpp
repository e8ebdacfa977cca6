#include "render/mark_layer.h"

#include <algorithm>
#include <array>
#include <numbers>

namespace laywright {
namespace {

constexpr double full_turn = 2.0 * std::numbers::pi;

struct Piece {
  std::array<float, 4> from, to;  // place, and length of the line so far
};

// A lit patch must leave the colours under it readable, the more so the larger it is.
double fill_of(const Mark& mark, const Frame& frame) {
  if (mark.shape == MarkShape::hatch) return 0.7;
  const double whole = static_cast<double>(frame.x_range.y - frame.x_range.x) * full_turn;
  const double share = (mark.x_to_mm - mark.x_from_mm) * (mark.sector.to - mark.sector.from) / whole;
  return std::clamp(0.35 - 0.8 * share, 0.10, 0.35);
}

bool is_patch(const Mark& mark) { return mark.shape == MarkShape::band || mark.shape == MarkShape::hatch; }

double strength(const Mark& mark) { return (mark.covered ? 0.45 : 1.0) * (mark.chosen ? 1.0 : 0.85); }

}  // namespace

void MarkLayer::load(const Scene& scene) {
  lines_.clear();
  patches_.clear();
  const double spool_mm = glm::length(scene.axis.to - scene.axis.from);
  for (const Mark& mark : scene.marks) {
    if (mark.shape == MarkShape::glyph) continue;
    if (is_patch(mark)) patches_.push_back(mark);
    add_outline(mark, spool_mm / 60);
  }
  add_axis(scene.axis, theme_colours(scene.theme));
}

void MarkLayer::add_line(const std::vector<Vec3>& places, std::size_t first, std::size_t last, const Line& style) {
  std::vector<Piece> pieces;
  float travelled = 0.0F;
  for (std::size_t i = first; i + 1 < last; ++i) {
    const glm::vec3 a(places[i]), b(places[i + 1]);
    const float onward = travelled + glm::length(b - a);
    pieces.push_back({{a.x, a.y, a.z, travelled}, {b.x, b.y, b.z, onward}});
    travelled = onward;
  }
  Line& line = lines_.emplace_back();
  line.colour = style.colour;
  line.opacity = style.opacity;
  line.width_px = style.width_px;
  line.dash_mm = style.dash_mm;
  line.pieces.load(pieces.data(), pieces.size() * sizeof(Piece), pieces.size());
  line.pieces.floats(1, 4, sizeof(Piece), 0);
  line.pieces.floats(2, 4, sizeof(Piece), sizeof(Piece::from));
}

void MarkLayer::add_outline(const Mark& mark, double dash_mm) {
  const std::vector<Vec3> outline = outline_of(mark);
  Line style;
  style.colour = mark.colour;
  style.opacity = strength(mark);
  style.width_px = mark.chosen ? 3.0 : (is_patch(mark) ? 1.2 : 2.0);
  style.dash_mm = mark.dashed ? dash_mm : 0.0;
  // All round it is two rings; else one closed line.
  const bool rings = outline.size() >= 8 && outline.front() == outline[outline.size() / 2 - 1];
  const std::size_t first_end = rings ? outline.size() / 2 : outline.size();
  add_line(outline, 0, first_end, style);
  if (rings) add_line(outline, first_end, outline.size(), style);
}

void MarkLayer::add_axis(const AxisMark& axis, const ThemeColours& colours) {
  Line style;
  style.colour = colours.ink;
  style.width_px = 1.2;
  style.dash_mm = glm::length(axis.to - axis.from) / 40;
  add_line({axis.from, axis.to}, 0, 2, style);
  style.dash_mm = 0.0;
  style.width_px = 2.0;
  add_line({axis.zero_from, axis.zero_to}, 0, 2, style);
}

void MarkLayer::draw_patches(const Frame& frame) const {
  frame.use(patch_);
  for (const Mark& mark : patches_) {
    const bool hatched = mark.shape == MarkShape::hatch;
    patch_.set("tint", glm::vec4(rgb_of(mark.colour), fill_of(mark, frame) * strength(mark)));
    patch_.set("hatch", hatched ? 1.0F : 0.0F);
    patch_.set("stripe_mm", std::clamp(mark.radius_mm / 18, 1.0, 8.0));
    patch_.set("radius", mark.radius_mm);
    for (const Sector& shown : frame.shown)
      for (const double turn : {-full_turn, 0.0, full_turn}) {
        const double from = std::max(mark.sector.from + turn, shown.from);
        const double to = std::min(mark.sector.to + turn, shown.to);
        if (from >= to) continue;
        const double x_from = std::max(mark.x_from_mm, static_cast<double>(frame.x_range.x));
        const double x_to = std::min(mark.x_to_mm, static_cast<double>(frame.x_range.y));
        if (x_from >= x_to) continue;
        patch_.set("window", glm::vec4(x_from, x_to, from, to));
        mesh_.draw();
      }
  }
}

void MarkLayer::draw(const Frame& frame) const {
  draw_patches(frame);
  frame.use(line_);
  line_.set("screen", glm::vec2(frame.width, frame.height));
  line_.set("toward_eye", 0.002F);
  for (const Line& line : lines_) {
    line_.set("tint", glm::vec4(rgb_of(line.colour), line.opacity));
    line_.set("width", line.width_px * frame.factor);
    line_.set("dash_mm", line.dash_mm);
    line.pieces.draw();
  }
}

}  // namespace laywright
