#include "scene/spool_solid.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "base/units.h"
#include "scene/scene_source.h"

namespace laywright {

namespace {

// A place in an axial section.
struct SectionPoint {
  double x = 0.0, r = 0.0;
};

// Outline of a body at an angle, as two chains of equally many points from the bore outward; the body lies between
// them, the second to the left (lower x) of the first.
struct Outline {
  std::vector<SectionPoint> right, left;
};
using OutlineAt = std::function<Outline(double angle)>;

// The same as a loop, counterclockwise with x to the right and r upward.
std::vector<SectionPoint> loop_of(const Outline& outline) {
  std::vector<SectionPoint> loop = outline.right;
  loop.insert(loop.end(), outline.left.rbegin(), outline.left.rend());
  return loop;
}

struct Around {
  double angle = 0.0, cosine = 1.0, sine = 0.0;
};

Around around(double angle) { return {angle, std::cos(angle), std::sin(angle)}; }

class Lathe {
 public:
  explicit Lathe(const OutlineAt& outline) : outline_(outline) {}

  // Turns the outline through an arc; with caps at its ends unless it is the full turn.
  void turn(const std::vector<Around>& rings, bool closed) {
    const std::size_t edges = loop_of(outline_(rings.front().angle)).size();
    for (std::size_t edge = 0; edge < edges; ++edge) turn_edge(rings, closed, edge, (edge + 1) % edges);
    if (closed) return;
    cap(rings.front(), -1.0);
    cap(rings.back(), 1.0);
  }

  Mesh finish() { return std::move(mesh_); }

 private:
  std::uint32_t add(const SectionPoint& point, const Around& at, double nx, double nr, double nt) {
    const auto index = static_cast<std::uint32_t>(mesh_.vertices.size());
    mesh_.vertices.push_back({static_cast<float>(point.x), static_cast<float>(point.r * at.cosine),
                              static_cast<float>(point.r * at.sine), static_cast<float>(nx),
                              static_cast<float>(nr * at.cosine - nt * at.sine),
                              static_cast<float>(nr * at.sine + nt * at.cosine)});
    return index;
  }
  void triangle(std::uint32_t a, std::uint32_t b, std::uint32_t c) {
    mesh_.triangles.insert(mesh_.triangles.end(), {a, b, c});
  }

  void turn_edge(const std::vector<Around>& rings, bool closed, std::size_t from, std::size_t to) {
    const auto first = static_cast<std::uint32_t>(mesh_.vertices.size());
    for (const Around& ring : rings) {
      const std::vector<SectionPoint> loop = loop_of(outline_(ring.angle));
      const SectionPoint a = loop[from], b = loop[to];
      const double length = std::hypot(b.x - a.x, b.r - a.r);
      const double nx = (b.r - a.r) / length, nr = (a.x - b.x) / length;
      add(a, ring, nx, nr, 0.0);
      add(b, ring, nx, nr, 0.0);
    }
    const auto count = static_cast<std::uint32_t>(rings.size());
    for (std::uint32_t i = 0; i + (closed ? 0 : 1) < count; ++i) {
      const std::uint32_t here = first + 2 * i, next = first + 2 * ((i + 1) % count);
      triangle(here, here + 1, next);
      triangle(next, here + 1, next + 1);
    }
  }

  void cap(const Around& ring, double side) {
    const Outline outline = outline_(ring.angle);
    const auto first = static_cast<std::uint32_t>(mesh_.vertices.size());
    for (std::size_t i = 0; i < outline.right.size(); ++i) {
      add(outline.right[i], ring, 0.0, 0.0, side);
      add(outline.left[i], ring, 0.0, 0.0, side);
    }
    const auto count = static_cast<std::uint32_t>(outline.right.size());
    for (std::uint32_t i = 0; i + 1 < count; ++i) {
      const std::uint32_t right = first + 2 * i, left = right + 1, right_up = right + 2, left_up = right + 3;
      // x to r turns towards rising angles: counterclockwise there is seen from the end of the arc.
      if (side > 0.0) {
        triangle(left, right, right_up);
        triangle(left, right_up, left_up);
      } else {
        triangle(right, left, right_up);
        triangle(right_up, left, left_up);
      }
    }
  }

  const OutlineAt& outline_;
  Mesh mesh_;
};

// The arcs that are left, in rings.
struct Arc {
  std::vector<Around> rings;
  bool closed = false;
};

std::vector<Arc> arcs_left(const View& view, int segments) {
  const std::vector<Sector> removed = removed_sectors(view);
  std::vector<Arc> arcs;
  const auto add = [&](double from, double span) {
    const int count = std::max(1, static_cast<int>(std::ceil(span / full_turn * segments - 1e-9)));
    Arc arc;
    arc.closed = removed.empty();
    for (int i = 0; i < count + (arc.closed ? 0 : 1); ++i) arc.rings.push_back(around(from + span * i / count));
    arcs.push_back(std::move(arc));
  };
  if (removed.empty()) add(0.0, full_turn);
  for (std::size_t i = 0; i < removed.size(); ++i) {
    const Sector& next = removed[(i + 1) % removed.size()];
    double span = next.from - removed[i].to;
    while (span < 0.0) span += full_turn;
    // What is thinner than a hair's breadth at any rim is the rounding of angles.
    constexpr double thinnest = 1e-7;
    if (span > thinnest && removed[i].to - removed[i].from < full_turn - thinnest) add(removed[i].to, span);
  }
  return arcs;
}

Mesh turned(const OutlineAt& outline, const std::vector<Arc>& arcs) {
  Lathe lathe(outline);
  for (const Arc& arc : arcs) lathe.turn(arc.rings, arc.closed);
  return lathe.finish();
}

double slope_of_wobble(const Spool& spool) { return spool.flange_runout_mm / spool.flange_diameter_mm; }

}  // namespace

double left_face_x(const Plan& plan, double r, double angle) {
  const Spool& spool = plan.spool();
  const double barrel = 0.5 * spool.barrel_diameter_mm;
  return slope_of_wobble(spool) * std::cos(angle) * r - std::tan(spool.flange_taper_rad) * (r - barrel);
}

double right_face_x(const Plan& plan, double r, double angle) {
  const Spool& spool = plan.spool();
  const double barrel = 0.5 * (spool.barrel_diameter_mm + spool.barrel_taper_mm);
  return spool.inside_width_mm - slope_of_wobble(spool) * std::cos(angle) * r +
         std::tan(spool.flange_taper_rad) * (r - barrel);
}

SpoolSolid make_spool(const Plan& plan, const View& view, int segments) {
  const Spool& spool = plan.spool();
  const double rim = 0.5 * spool.flange_diameter_mm, left = 0.5 * spool.barrel_diameter_mm;
  const double right = left + 0.5 * spool.barrel_taper_mm;
  const double bore = bore_share * std::min(left, right);
  const double thickness = flange_thickness_share * spool.flange_diameter_mm;
  const std::vector<Arc> arcs = arcs_left(view, segments);

  SpoolSolid solid;
  solid.bore_radius_mm = bore;
  solid.inside_width_mm = plan.spool().inside_width_mm;
  solid.flange_thickness_mm = thickness;
  // Below the barrel's surface a face goes straight down: flange and barrel touch and do not overlap.
  solid.left_flange = turned(
      [&](double angle) {
        const double foot = left_face_x(plan, left, angle), top = left_face_x(plan, rim, angle);
        return Outline{{{foot, bore}, {foot, left}, {top, rim}},
                       {{foot - thickness, bore}, {foot - thickness, left}, {top - thickness, rim}}};
      },
      arcs);
  solid.right_flange = turned(
      [&](double angle) {
        const double foot = right_face_x(plan, right, angle), top = right_face_x(plan, rim, angle);
        return Outline{{{foot + thickness, bore}, {foot + thickness, right}, {top + thickness, rim}},
                       {{foot, bore}, {foot, right}, {top, rim}}};
      },
      arcs);
  solid.barrel = turned(
      [&](double angle) {
        const double from = left_face_x(plan, left, angle), to = right_face_x(plan, right, angle);
        return Outline{{{to, bore}, {to, right}}, {{from, bore}, {from, left}}};
      },
      arcs);
  return solid;
}

}  // namespace laywright
