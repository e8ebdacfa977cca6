#include "render/mark_layer.h"

#include <algorithm>
#include <array>

#include "base/units.h"

namespace laywright {
namespace {

struct Piece {
  std::array<float, 4> from, to;  // place, and length of the line so far
};

// The extent of gaps: a breath of colour, the less the larger it is. The gaps themselves are lit (gap_layer.h).
double fill_of(const Mark& mark, const Frame& frame) {
  if (mark.shape == MarkShape::hatch) return 0.7;
  const double whole = static_cast<double>(frame.x_range.y - frame.x_range.x) * full_turn;
  const double share = (mark.x_to_mm - mark.x_from_mm) * (mark.sector.to - mark.sector.from) / whole;
  return std::clamp(0.16 - 0.4 * share, 0.04, 0.16);
}

bool is_patch(const Mark& mark) { return mark.shape == MarkShape::band || mark.shape == MarkShape::hatch; }

double strength(const Mark& mark) { return (mark.covered ? 0.45 : 1.0) * (mark.chosen ? 1.0 : 0.85); }

std::vector<Piece> pieces_of(const std::vector<std::vector<Vec3>>& paths) {
  std::vector<Piece> pieces;
  for (const std::vector<Vec3>& path : paths) {
    float travelled = 0.0F;
    for (std::size_t i = 0; i + 1 < path.size(); ++i) {
      const glm::vec3 a(path[i]), b(path[i + 1]);
      const float onward = travelled + glm::length(b - a);
      pieces.push_back({{a.x, a.y, a.z, travelled}, {b.x, b.y, b.z, onward}});
      travelled = onward;
    }
  }
  return pieces;
}

void load_pieces(QuadInstances& instances, const std::vector<Piece>& pieces) {
  instances.load(pieces.data(), pieces.size() * sizeof(Piece), pieces.size());
  instances.floats(1, 4, sizeof(Piece), 0);
  instances.floats(2, 4, sizeof(Piece), sizeof(Piece::from));
}

double distance_from(const Vec3& place, const Vec3& a, const Vec3& b) {
  const Vec3 along = b - a;
  const double length2 = glm::dot(along, along);
  const double share = length2 > 0.0 ? std::clamp(glm::dot(place - a, along) / length2, 0.0, 1.0) : 0.0;
  return glm::length(place - a - share * along);
}

// Every fourth place, and the last; `strays` grows to how far a place that is left out lies from what is left.
std::vector<Vec3> thinned(const std::vector<Vec3>& path, double& strays) {
  constexpr std::size_t step = 4;
  std::vector<Vec3> left;
  for (std::size_t from = 0; from + 1 < path.size(); from += step) {
    const std::size_t to = std::min(from + step, path.size() - 1);
    left.push_back(path[from]);
    for (std::size_t i = from + 1; i < to; ++i)
      strays = std::max(strays, distance_from(path[i], path[from], path[to]));
  }
  if (!path.empty()) left.push_back(path.back());
  return left;
}

}  // namespace

void MarkLayer::load(const Scene& scene) {
  lines_.clear();
  patches_.clear();
  const double spool_mm = glm::length(scene.axis.to - scene.axis.from);
  for (const Mark& mark : scene.marks) {
    if (is_patch(mark)) patches_.push_back(mark);
    mark.shape == MarkShape::glyph ? add_fiber(mark) : add_outline(scene, mark, spool_mm / 60);
  }
  if (scene.explained) add_axis(scene.axis, theme_colours(scene.theme));
  gaps_.load(scene);
  guide_.load(scene);
  if (!scene.guide) return;
  // The tube of the free fiber can be finer than a pixel; a line never is.
  Line style;
  style.colour = theme_colours(scene.theme).ink;
  style.width_px = 1.4;
  style.on_wind = false;
  add_line({{scene.guide->pose.lay_point, scene.guide->pose.fiber_end}}, style);
}

void MarkLayer::add_line(const std::vector<Path>& paths, const Line& style) {
  const std::vector<Piece> pieces = pieces_of(paths);
  if (pieces.empty()) return;
  Line& line = lines_.emplace_back();
  line.colour = style.colour;
  line.opacity = style.opacity;
  line.width_px = style.width_px;
  line.dash_mm = style.dash_mm;
  line.on_wind = style.on_wind;
  line.rimmed = style.rimmed;
  load_pieces(line.pieces, pieces);
  std::vector<Path> thin;
  for (const Path& path : paths) thin.push_back(thinned(path, line.strays_mm));
  load_pieces(line.few, pieces_of(thin));
}

void MarkLayer::add_outline(const Scene& scene, const Mark& mark, double dash_mm) {
  const std::vector<Vec3> outline = outline_of(mark);
  Line style;
  style.colour = mark.colour;
  style.opacity = strength(mark);
  style.width_px = mark.chosen ? 3.0 : (is_patch(mark) ? 1.2 : 2.0);
  style.dash_mm = mark.dashed ? dash_mm : 0.0;
  // All round it is two rings; else one closed line.
  const bool rings = outline.size() >= 8 && outline.front() == outline[outline.size() / 2 - 1];
  const auto half = outline.begin() + static_cast<std::ptrdiff_t>(outline.size() / 2);
  std::vector<Path> paths;
  if (rings) {
    paths = {{outline.begin(), half}, {half, outline.end()}};
  } else {
    paths = {outline};
  }
  // What is cut away has no outline in the air.
  std::vector<Path> left;
  for (const Path& path : paths) {
    left.emplace_back();
    for (std::size_t i = 0; i < path.size(); ++i) {
      const bool gone = is_removed(scene.removed, angle_of(path[i])) || path[i].x < scene.x_from_mm - 1e-9 ||
                        path[i].x > scene.x_to_mm + 1e-9;
      if (gone && !left.back().empty()) left.emplace_back();
      if (!gone) left.back().push_back(path[i]);
    }
  }
  add_line(left, style);
}

void MarkLayer::add_fiber(const Mark& mark) {
  std::vector<Path> paths;
  for (const MarkSpot& spot : mark.spots) paths.insert(paths.end(), spot.paths.begin(), spot.paths.end());
  Line style;
  style.colour = mark.colour;
  style.width_px = mark.chosen ? 4.0 : 2.2;
  style.rimmed = true;
  add_line(paths, style);
}

void MarkLayer::add_axis(const AxisMark& axis, const ThemeColours& colours) {
  Line style;
  style.colour = colours.ink;
  style.width_px = 1.2;
  style.dash_mm = glm::length(axis.to - axis.from) / 40;
  style.on_wind = false;
  add_line({{axis.from, axis.to}}, style);
  style.dash_mm = 0.0;
  style.width_px = 2.0;
  add_line({{axis.zero_from, axis.zero_to}}, style);
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

// In a quick frame what strays by less than a pixel and a half looks the same.
const QuadInstances& MarkLayer::pieces_for(const Frame& frame, const Line& line) {
  return frame.coarse && line.strays_mm < 1.5 * frame.mm_per_px ? line.few : line.pieces;
}

void MarkLayer::draw(const Frame& frame) const {
  guide_.draw(frame);
  gaps_.draw(frame);
  if (!patches_.empty()) draw_patches(frame);
  if (!lines_.empty()) draw_lines(frame);
}

void MarkLayer::draw_lines(const Frame& frame) const {
  frame.use(line_);
  line_.set("screen", glm::vec2(frame.width, frame.height));
  line_.set("toward_eye", 0.002F);
  line_.set("from_eye", frame.from_eye);
  std::vector<glm::vec2> shown;
  for (const Sector& sector : frame.shown) shown.emplace_back(sector.from, sector.to - sector.from);
  if (shown.empty()) shown.emplace_back(0.0F, -1.0F);
  line_.set("shown", shown);
  line_.set("sectors", static_cast<float>(shown.size()));
  line_.set("x_range", frame.x_range);
  for (const Line& line : lines_) {
    const QuadInstances& pieces = pieces_for(frame, line);
    line_.set("dash_mm", line.dash_mm);
    line_.set("cut", line.on_wind ? 1.0F : 0.0F);
    if (line.rimmed && !frame.coarse) {
      line_.set("tint", glm::vec4(1.0F, 1.0F, 1.0F, 0.85F * static_cast<float>(line.opacity)));
      line_.set("width", (line.width_px + 1.3) * static_cast<double>(frame.factor));
      pieces.draw();
    }
    line_.set("tint", glm::vec4(rgb_of(line.colour), line.opacity));
    line_.set("width", line.width_px * static_cast<double>(frame.factor));
    pieces.draw();
  }
}

}  // namespace laywright
