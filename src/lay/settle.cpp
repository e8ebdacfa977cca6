#include "lay/settle.h"

#include <cassert>

#include "lay/slide.h"

namespace laywright {
namespace {

using Kind = Contact::Kind;
using sliding::Stop;
using sliding::Vec;
using sliding::View;

// A node passes at most a few surfaces on its way; more would be a cycle of rounding.
constexpr int most_moves = 64;

// A way that meets a circle at less than this angle (rad) grazes it: within rounding, it passes.
constexpr double tangent = 1e-12;

// Within this share of d a node counts as standing at a side.
constexpr double at_a_side = 1e-9;

Contact face(Kind kind) { return {kind, Section::none}; }

// Returns true when friction has stopped the node.
template <int S>
bool slide(const Section& section, Resting& node, const Contact& contact, Vec pull, const FrictionCone& cone) {
  const Stop stop =
      sliding::slide_right(View<S>(section), {S * node.x, node.r}, contact, {S * pull.x, pull.r}, cone);
  node.x = S * stop.at.x;
  node.r = stop.at.r;
  node.left = node.right = stop.contact;
  if (stop.next.kind == Kind::none) return stop.contact.kind != Kind::none;
  const bool same_circle = stop.next.circle != Section::none && stop.next.circle == contact.circle;
  if (same_circle) {
    node.left = node.right = stop.next;  // from a cap to its side, or back: no corner between them
  } else {
    (S > 0 ? node.right : node.left) = stop.next;
  }
  return false;
}

// First obstacle on the straight way of a lifted node, as a share of the way; 1 when it is free.
struct Hit {
  double share = 1.0;
  Contact contact;
};

void hit_line(Hit& hit, Vec way, Vec normal, double clearance, const Contact& contact) {
  const double approach = sliding::dot(way, normal);
  if (approach >= 0.0) return;
  const double share = std::max(0.0, -clearance / approach);
  if (share < hit.share) hit = {share, contact};
}

void hit_circle(Hit& hit, const Section& section, std::int32_t i, Vec q, Vec way) {
  const double d = section.reach(i);
  const Vec c{section[i].x, section[i].r};
  const Vec off = q - c;
  const double b = sliding::dot(off, way);
  const double a = sliding::dot(way, way);
  const double gap = std::max(0.0, sliding::dot(off, off) - d * d);
  const double root = b * b - a * gap;
  if (b < 0.0 && root >= 0.0 && b < -tangent * d * std::sqrt(a)) {
    const double share = (-b - std::sqrt(root)) / a;
    if (share < hit.share && off.r + share * way.r >= 0.0) hit = {share, {Kind::circle, i}};
  }
  // The sides below the cap; a node that stands at one may be within by rounding.
  const double side = d * (1.0 - at_a_side);
  const bool from_left = off.x <= -side && way.x > 0.0;
  const bool from_right = off.x >= side && way.x < 0.0;
  if (!from_left && !from_right) return;
  const double share = std::max(0.0, ((from_left ? -d : d) - off.x) / way.x);
  if (share < hit.share && off.r + share * way.r < 0.0) {
    hit = {share, {from_left ? Kind::left_side : Kind::right_side, i}};
  }
}

void move_lifted(const Section& section, Resting& node, Vec pull) {
  const Vec q{node.x, node.r};
  const Vec way = pull - q;
  const double d = section.most_reach();
  Hit hit;
  const double low = std::min(q.x, pull.x) - d;
  const double high = std::max(q.x, pull.x) + d;
  std::int32_t i = section.at_or_before(low);
  i = i == Section::none ? section.first() : section[i].after;
  for (; i != Section::none && section[i].x < high; i = section[i].after) hit_circle(hit, section, i, q, way);

  // A line that the end of the way keeps clear of is not met.
  const BarrelLine& barrel = section.barrel();
  if (pull.r <= barrel.at(pull.x)) {
    const double scale = 1.0 / std::sqrt(1.0 + barrel.slope * barrel.slope);
    hit_line(hit, way, {-barrel.slope * scale, scale}, (q.r - barrel.at_zero - barrel.slope * q.x) * scale,
             face(Kind::barrel));
  }
  for (const Kind kind : {Kind::left_face, Kind::right_face}) {
    const FaceLine& line = kind == Kind::left_face ? section.left() : section.right();
    const double sign = kind == Kind::left_face ? 1.0 : -1.0;
    if (sign * (pull.x - line.at(pull.r)) > 0.0) continue;
    const double clearance =
        sign * (q.x - line.at_axis - line.slope * q.r) / std::sqrt(1.0 + line.slope * line.slope);
    const Normal n = normal_of(section, face(kind), q.x, q.r);
    hit_line(hit, way, {n.x, n.r}, clearance, face(kind));
  }
  if (hit.contact.kind == Kind::none) {
    node.x = pull.x;
    node.r = pull.r;
    return;
  }
  node.x = q.x + hit.share * way.x;
  node.r = q.r + hit.share * way.r;
  node.left = node.right = hit.contact;
}

}  // namespace

Normal normal_of_line(const Section& section, Kind kind) {
  switch (kind) {
    case Kind::left_side: return {-1.0, 0.0};
    case Kind::right_side: return {1.0, 0.0};
    case Kind::left_face: {
      const double scale = 1.0 / std::sqrt(1.0 + section.left().slope * section.left().slope);
      return {scale, -section.left().slope * scale};
    }
    case Kind::right_face: {
      const double scale = 1.0 / std::sqrt(1.0 + section.right().slope * section.right().slope);
      return {-scale, section.right().slope * scale};
    }
    case Kind::barrel: {
      const double scale = 1.0 / std::sqrt(1.0 + section.barrel().slope * section.barrel().slope);
      return {-section.barrel().slope * scale, scale};
    }
    case Kind::circle:
    case Kind::none: break;
  }
  return {};
}

Resting set_down(const Section& section, double x) {
  const Section::Height height = section.height(x);
  const Contact below = height.circle == Section::none ? face(Kind::barrel) : Contact{Kind::circle, height.circle};
  const Resting node{x, height.r, below, below};
  // Beyond a face, the fiber slips in to where the face meets the surface.
  if (x < section.left().at(node.r)) {
    const View<1> view(section);
    const Stop corner = sliding::end_of_descent(view, view.near(), face(Kind::left_face), view.first(), HUGE_VAL);
    return {corner.at.x, corner.at.r, corner.contact, corner.next};
  }
  if (x > section.right().at(node.r)) {
    const View<-1> view(section);
    const Stop corner = sliding::end_of_descent(view, view.near(), face(Kind::right_face), view.first(), HUGE_VAL);
    return {-corner.at.x, corner.at.r, corner.next, corner.contact};
  }
  return node;
}

void settle(const Section& section, Resting& node, double x, double r, const FrictionCone& cone) {
  const Vec pull{x, r};
  for (int move = 0; move < most_moves; ++move) {
    if (node.lifted()) {
      move_lifted(section, node, pull);
      if (node.lifted()) return;
      continue;
    }
    const Vec force{x - node.x, r - node.r};
    const Normal nl = normal_of(section, node.left, node.x, node.r);
    const Normal nr = node.in_valley() ? normal_of(section, node.right, node.x, node.r) : nl;
    const double press_left = -(force.x * nl.x + force.r * nl.r);
    const double press_right = -(force.x * nr.x + force.r * nr.r);
    if (press_left < 0.0 && press_right < 0.0) {
      node.left = node.right = {};
      continue;
    }
    const double along_left = force.x * nl.r - force.r * nl.x;
    const double along_right = force.x * nr.r - force.r * nr.x;
    if (press_right >= 0.0 && along_right > cone.mu * press_right) {
      if (slide<1>(section, node, node.right, pull, cone)) return;
    } else if (press_left >= 0.0 && -along_left > cone.mu * press_left) {
      if (slide<-1>(section, node, node.left, pull, cone)) return;
    } else {
      return;
    }
  }
}

}  // namespace laywright
