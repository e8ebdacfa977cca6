#include "lay/section.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "lay/fiber_diameter.h"

namespace laywright {

Section::Section(double fiber_diameter, BarrelLine barrel, FaceLine left, FaceLine right)
    : d_(fiber_diameter),
      per_d_(1.0 / fiber_diameter),
      half_(static_cast<float>(0.5 * fiber_diameter)),
      passing_(fiber_diameter - static_cast<double>(half_)),
      most_(fiber_diameter),
      barrel_(barrel),
      left_(left),
      right_(right) {}

void Section::scatter(double half_spread) {
  even_ = false;
  half_spread_ = half_spread;
  most_ = d_ + 2.0 * half_spread;
  passing_ = static_cast<double>(half_);
}

void Section::admit(float half) {
  const double thicker = static_cast<double>(half) - passing_;
  half_ = half;
  passing_ = static_cast<double>(half);
  barrel_.at_zero += thicker * std::hypot(1.0, barrel_.slope);
  left_.at_axis += thicker * std::hypot(1.0, left_.slope);
  right_.at_axis -= thicker * std::hypot(1.0, right_.slope);
}

Section Section::of(const Plan& plan, double theta) {
  const Spool& spool = plan.spool();
  const double d = plan.fiber().diameter_mm;
  const double barrel_slope = 0.5 * spool.barrel_taper_mm / spool.inside_width_mm;
  const double barrel_radius = 0.5 * spool.barrel_diameter_mm;
  const BarrelLine barrel{barrel_radius + 0.5 * d * std::hypot(1.0, barrel_slope), barrel_slope};
  // The face opens outward with its taper and wobbles with its run-out, which is given at the rim.
  const double wobble = spool.flange_runout_mm / spool.flange_diameter_mm * std::cos(theta);
  const double opening = std::tan(spool.flange_taper_rad);
  const double slope = wobble - opening;
  const double clear = 0.5 * d * std::hypot(1.0, slope);
  const double right_radius = barrel_radius + 0.5 * spool.barrel_taper_mm;
  Section section(d, barrel, FaceLine{barrel_radius * opening + clear, slope},
                  FaceLine{spool.inside_width_mm - right_radius * opening - clear, -slope});
  if (plan.fiber().diameter_scatter_mm > 0.0) section.scatter(FiberDiameter::half_spread_mm(plan.fiber()));
  return section;
}

std::vector<Section> Section::ring(const Plan& plan, int stations) {
  std::vector<Section> sections;
  sections.reserve(static_cast<std::size_t>(stations));
  for (int i = 0; i < stations; ++i) sections.push_back(of(plan, 2.0 * std::numbers::pi * i / stations));
  return sections;
}

double Section::cap(std::int32_t i, double x) const {
  const Exposed& c = (*this)[i];
  const double dx = x - c.x;
  const double keeps = reach(i);
  return c.r + std::sqrt(std::max(0.0, keeps * keeps - dx * dx));
}

Section::Height Section::height(double x) const {
  Height height{barrel_.at(x), none};
  any_near(x, most_, [&](std::int32_t i) {
    const double keeps = reach(i);
    if ((*this)[i].r + keeps <= height.r || std::abs(x - (*this)[i].x) >= keeps) return false;
    const double r = cap(i, x);
    if (r > height.r) height = {r, i};
    return false;
  });
  return height;
}

bool Section::hidden(std::int32_t i) const {
  const Exposed& c = (*this)[i];
  // At the ends of the list the flange bounds what can be reached: nothing there is given up.
  if (c.before == none || c.after == none) return false;
  if (!even_) return hidden_for_the_thinnest(i);
  const Exposed& a = (*this)[c.before];
  const Exposed& b = (*this)[c.after];
  const double dx = b.x - a.x;
  const double dr = b.r - a.r;
  if (dx >= 2.0 * d_) return false;
  // The surface passes from a's cap to b's at their crossing P, or at the side of the higher one.
  const double square = dx * dx + dr * dr;
  const double reach = 4.0 * d_ * d_ - square;
  if (reach <= 0.0 || reach * dx * dx < dr * dr * square) {
    const double x = a.r > b.r ? a.x + d_ : b.x - d_;
    const Exposed& low = a.r > b.r ? b : a;
    const double off = x - c.x;
    // Straight below or above the higher neighbour there is no crossing: the higher of the two shows.
    if (std::abs(off) >= d_) return c.r <= std::max(a.r, b.r);
    const double off_low = x - low.x;
    return c.r + std::sqrt(d_ * d_ - off * off) <= low.r + std::sqrt(std::max(0.0, d_ * d_ - off_low * off_low));
  }
  const double cx = c.x - a.x;
  const double cr = c.r - a.r;
  const double cross = dx * cr - dr * cx;
  // Between a and b and d away from both, a centre above the line between them lies above the surface.
  if (cross >= 0.0) return false;
  // Below it, c shows when P lies within d of it. With P = a + (b - a) / 2 + k n, n the normal of b - a and
  // 4 k^2 = reach / square, that is lean < 2 k cross; compared in squares, for this is asked at every insertion.
  const double lean = cx * (cx - dx) + cr * (cr - dr);
  return lean >= 0.0 || lean * lean * square <= cross * cross * reach;
}

// Where diameters scatter: whether no fiber, however thin, would touch circle i. A thick turn may come out from under a thin
// one above it, on its other side: so what lies beyond such a one is asked, too.
bool Section::hidden_for_the_thinnest(std::int32_t i) const {
  const Exposed& c = (*this)[i];
  if (shows_between(c.before, c.after, c)) return false;
  for (std::int32_t l = c.before;
       c.x - static_cast<double>(c.half) < (*this)[l].x - static_cast<double>((*this)[l].half);
       l = (*this)[l].before) {
    if ((*this)[l].before == none || shows_between((*this)[l].before, l, c)) return false;
  }
  for (std::int32_t l = c.after;
       c.x + static_cast<double>(c.half) > (*this)[l].x + static_cast<double>((*this)[l].half);
       l = (*this)[l].after) {
    if ((*this)[l].after == none || shows_between(l, (*this)[l].after, c)) return false;
  }
  return true;
}

// Whether the thinnest fiber that passes would touch c where it lies deepest between the circles left and right. On the safe
// side: c counts as thicker than it is by what the scatter may make of two, for a cap of another radius may show beside that
// place.
bool Section::shows_between(std::int32_t left, std::int32_t right, const Exposed& c) const {
  const Exposed& a = (*this)[left];
  const Exposed& b = (*this)[right];
  const double thinnest = 0.5 * d_ - half_spread_;
  const double reach_a = thinnest + static_cast<double>(a.half);
  const double reach_b = thinnest + static_cast<double>(b.half);
  const double reach_c = thinnest + static_cast<double>(c.half) + 2.0 * half_spread_;
  const double dx = b.x - a.x;
  const double dr = b.r - a.r;
  if (dx >= reach_a + reach_b) return true;
  const double square = dx * dx + dr * dr;
  const double share = 0.5 + 0.5 * (reach_a * reach_a - reach_b * reach_b) / square;
  const double up = std::sqrt(std::max(0.0, reach_a * reach_a / square - share * share));
  double x = a.x + share * dx - up * dr;
  double r = a.r + share * dr + up * dx;
  if (r < std::max(a.r, b.r)) {
    // The surface passes from one to the other at the side of the higher one.
    const bool a_higher = a.r > b.r;
    const Exposed& low = a_higher ? b : a;
    const double reach_low = a_higher ? reach_b : reach_a;
    x = a_higher ? a.x + reach_a : b.x - reach_b;
    const double off = x - low.x;
    if (std::abs(off) >= reach_low) return true;
    r = low.r + std::sqrt(reach_low * reach_low - off * off);
  }
  const double off = x - c.x;
  return r < c.r || off * off + (r - c.r) * (r - c.r) < reach_c * reach_c;
}

void Section::unlink(std::int32_t i) {
  const Exposed c = (*this)[i];
  if (c.before != none) at(c.before).after = c.after;
  if (c.after != none) at(c.after).before = c.before;
  if (first_ == i) first_ = c.after;
  if (last_ == i) last_ = c.before;
  free_.push_back(i);
}

void Section::insert(double x, double r, std::uint32_t stroke) {
  const std::int32_t before = at_or_before(x);
  const std::int32_t after = before == none ? first_ : (*this)[before].after;
  std::int32_t i = none;
  if (free_.empty()) {
    i = static_cast<std::int32_t>(circles_.size());
    circles_.emplace_back();
  } else {
    i = free_.back();
    free_.pop_back();
  }
  at(i) = {x, r, before, after, stroke, half_};
  top_ = std::max(top_, r);
  (before == none ? first_ : at(before).after) = i;
  (after == none ? last_ : at(after).before) = i;
  cursor_ = i;
  while ((*this)[i].before != none && hidden((*this)[i].before)) unlink((*this)[i].before);
  while ((*this)[i].after != none && hidden((*this)[i].after)) unlink((*this)[i].after);
}

}  // namespace laywright
