#include "lay/slump.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

#include "lay/grains.h"

namespace laywright {
namespace {

// Strokes whose turns may give way, and those below them that carry them; what is older is hidden under both.
constexpr std::size_t strokes_that_move = 5, strokes_seen = 18;

// A slope: so much over so many diameters, both in d. A close-packed pile holds more, and a level surface shows less.
constexpr double slope_rise = 1.5;
constexpr std::size_t slope_run = 5;
// So far beside one turns may still give way, in d.
constexpr std::size_t beside_slope = 8;

constexpr std::size_t stations_asked = 32;

// What has moved by less than this stays where it was laid; and what is nearer than this carries. In d.
constexpr double stays_d = 0.01, carries_d = 0.01;

// What carries a centre, of all that lies in its section already.
struct Carried {
  Support support = Support::none;
  bool rides_up = false;
};

Carried carried(const Section& section, double x, double r, double half, std::uint32_t stroke) {
  const double d = section.fiber_diameter();
  const double near = carries_d * d;
  int turns = 0;
  Carried is;
  section.any_near(x, 2.0 * d, [&](std::int32_t i) {
    const Section::Exposed& circle = section[i];
    const double keeps = half + static_cast<double>(circle.half) + near;
    const double dx = x - circle.x;
    const double dr = r - circle.r;
    if (dr <= 0.0 || dx * dx + dr * dr > keeps * keeps) return false;
    ++turns;
    if (circle.stroke == stroke && dr > ride_up_d * d) is.rides_up = true;
    return false;
  });
  const bool barrel = r - section.barrel().at(x) < near;
  const bool face = x - section.left().at(r) < near || section.right().at(r) - x < near;
  const int contacts = turns + (barrel ? 1 : 0) + (face ? 1 : 0);
  if (contacts > 1) {
    is.support = Support::valley;
  } else if (turns == 1) {
    is.support = Support::turn;
  } else if (barrel) {
    is.support = Support::barrel;
  } else if (face) {
    is.support = Support::flange;
  }
  return is;
}

}  // namespace

// A node of the strokes seen, and where it lies now.
struct Slump::Moved {
  std::size_t node = 0;
  double x = 0.0, r = 0.0;
  bool moved = false;
};

Slump::Slump(const Plan& plan, int stations)
    : d_(plan.fiber().diameter_mm), friction_(plan.fiber().friction), bare_(Section::ring(plan, stations)) {
  const Torsion torsion = torsion_of(plan);
  const Spool& spool = plan.spool();
  slack_mm_ = slack_depth_mm(plan, torsion);
  rolls_ = torsion.rolls;
  twist_over_tension_ = torsion.rolls ? torsion.over_tension() : 0.0;
  radius_ = middle_radius_mm(plan);
  const double opens =
      std::tan(spool.flange_taper_rad) * 0.5 * (spool.flange_diameter_mm - spool.barrel_diameter_mm);
  left_end_ = -opens - spool.flange_runout_mm - d_;
  width_ = spool.inside_width_mm - 2.0 * left_end_;
}

bool Slump::in(const std::vector<bool>& near, double x) const {
  const double at = (x - left_end_) / d_;
  return at >= 0.0 && static_cast<std::size_t>(at) < near.size() && near[static_cast<std::size_t>(at)];
}

// By the mean surface over the angle, as a jaw of two diameters feels it.
std::vector<bool> Slump::near_slopes(const std::vector<Section>& sections) const {
  const auto columns = static_cast<std::size_t>(std::ceil(width_ / d_));
  const std::size_t every = std::max<std::size_t>(1, sections.size() / stations_asked);
  std::vector<double> crest(columns, 0.0);
  for (std::size_t s = 0; s < sections.size(); s += every) {
    const Section& section = sections[s];
    for (std::size_t i = 0; i < columns; ++i) {
      const double x = left_end_ + (static_cast<double>(i) + 0.5) * d_;
      const double r = section.height(x).r;
      double highest = 0.0;
      for (const double aside : {-1.0, -0.5, 0.0, 0.5, 1.0}) {
        highest = std::max(highest, section.height(section.between_faces(x + aside * d_, r)).r);
      }
      crest[i] += highest;
    }
  }
  const double rise = slope_rise * d_ * std::ceil(static_cast<double>(sections.size()) / static_cast<double>(every));
  std::vector<bool> near(columns, false);
  for (std::size_t i = 0; i + slope_run < columns; ++i) {
    if (std::abs(crest[i + slope_run] - crest[i]) < rise) continue;
    const std::size_t from = i > beside_slope ? i - beside_slope : 0;
    const std::size_t to = std::min(columns, i + slope_run + beside_slope);
    std::fill(near.begin() + static_cast<std::ptrdiff_t>(from), near.begin() + static_cast<std::ptrdiff_t>(to),
              true);
  }
  return near;
}

Slump::Outcome Slump::give_way(Build& build, std::vector<Section>& sections, Progress& progress) {
  const std::vector<bool> near = near_slopes(sections);
  if (std::find(near.begin(), near.end(), true) == near.end()) return Outcome::stayed;

  const NodeStore& nodes = build.nodes;
  const std::size_t count = nodes.size();
  const std::size_t strokes = build.strokes.size();
  const auto first_of_last = [&](std::size_t last) {
    return strokes > last ? build.strokes[strokes - last].first_node : std::size_t{0};
  };
  const std::size_t oldest = first_of_last(strokes_seen);
  const std::size_t first = std::max<std::size_t>(1, first_of_last(strokes_that_move));
  const std::size_t stations = sections.size();
  const double step = 2.0 * std::numbers::pi * radius_ / static_cast<double>(stations);
  GrainLaw law{d_, friction_, rolls_, slack_mm_, radius_ / (step * step), 0.0};
  law.twist_stiffness = twist_over_tension_ * law.string_stiffness;
  Grains grains(law, bare_);

  std::vector<int> grain_of(count - oldest, Grains::none);
  int last = Grains::none;
  for (std::size_t k = oldest; k < count; ++k) {
    const double x = nodes.x(k);
    const bool here = in(near, x);
    // What would be joined to the part that stays, or ends there, stays with it.
    const bool moves = here && k >= first && k + 1 < count && in(near, nodes.x(k - 1)) && in(near, nodes.x(k + 1));
    if (!here && !in(near, x - 2.0 * d_) && !in(near, x + 2.0 * d_)) {
      last = Grains::none;
      continue;
    }
    const int grain = grains.add(k % stations, x, nodes.r(k), laid_r_[k], build.half_mm(k), moves);
    if (moves) grain_of[k - oldest] = grain;
    if (moves && last != Grains::none) grains.join(last, grain);
    last = moves ? grain : Grains::none;
  }
  // What shows of older strokes carries, too.
  for (std::size_t s = 0; s < stations; ++s) {
    const Section& section = sections[s];
    for (std::int32_t i = section.first(); i != Section::none; i = section[i].after) {
      const Section::Exposed& circle = section[i];
      if (build.strokes[circle.stroke].first_node >= oldest) continue;
      grains.add(s, circle.x, circle.r, circle.r, static_cast<double>(circle.half), false);
    }
  }
  if (!grains.come_to_rest(progress)) return Outcome::stopped;

  std::vector<Moved> all;
  all.reserve(count - oldest);
  bool any = false;
  for (std::size_t k = oldest; k < count; ++k) {
    all.push_back({k, nodes.x(k), nodes.r(k), false});
    const int i = grain_of[k - oldest];
    if (i == Grains::none) continue;
    const Grains::Grain& grain = grains[i];
    const double dx = grain.x - grain.x_from;
    const double dr = grain.r - grain.r_from;
    if (dx * dx + dr * dr < stays_d * stays_d * d_ * d_) continue;
    all.back() = {k, grain.x, grain.r, true};
    any = true;
  }
  if (!any) return Outcome::stayed;
  lay_anew(build, sections, oldest, all);
  return Outcome::moved;
}

// From below, each where nothing is in its way: discs at rest press into one another by a little, the build's do not.
void Slump::lay_anew(Build& build, std::vector<Section>& sections, std::size_t oldest,
                     const std::vector<Moved>& moved) {
  std::vector<std::vector<const Moved*>> at(sections.size());
  for (const Moved& m : moved) at[m.node % sections.size()].push_back(&m);
  const Grid& xs = build.nodes.x_grid();
  const Grid& rs = build.nodes.r_grid();
  for (std::size_t s = 0; s < sections.size(); ++s) {
    Section fresh = bare_[s];
    const Section& before = sections[s];
    std::vector<Section::Exposed> older;
    for (std::int32_t i = before.first(); i != Section::none; i = before[i].after) {
      if (build.strokes[before[i].stroke].first_node < oldest) older.push_back(before[i]);
    }
    std::sort(older.begin(), older.end(), [](const auto& a, const auto& b) { return a.r < b.r; });
    for (const Section::Exposed& circle : older) {
      if (!build.diameters.even()) fresh.admit(circle.half);
      fresh.insert(circle.x, circle.r, circle.stroke);
    }
    std::sort(at[s].begin(), at[s].end(),
              [](const Moved* a, const Moved* b) { return a->r < b->r || (a->r == b->r && a->node < b->node); });
    for (const Moved* m : at[s]) {
      const std::size_t k = m->node;
      const auto stroke = static_cast<std::uint32_t>(build.stroke_of(k));
      if (!build.diameters.even()) fresh.admit(build.diameters.half_mm(k));
      double x = m->x;
      double r = m->r;
      const double lowest = fresh.height(x).r;
      if (m->moved || r < lowest) {
        r = std::max(r, lowest);
        x = xs.decode(xs.nearest(fresh.between_faces(x, r)));
        const std::uint32_t r_code = rs.nearest(std::max(r, fresh.height(x).r)) + 1U;
        r = rs.decode(r_code);
        const Carried is = carried(fresh, x, r, build.half_mm(k), stroke);
        build.nodes.move(k, xs.nearest(x), r_code, is.support, is.rides_up);
      }
      fresh.insert(x, r, stroke);
    }
    sections[s] = std::move(fresh);
  }
}

}  // namespace laywright
