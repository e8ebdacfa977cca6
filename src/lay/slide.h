// Sliding along the offset surface in one direction. Written once for "rightward" (clockwise around a cap) and used
// in a mirrored view for the other direction.
#pragma once

#include <algorithm>
#include <cmath>
#include <optional>

#include "lay/settle.h"

namespace laywright::sliding {

// Within this share of d a point that touches something stands above it, whatever rounding says.
constexpr double from_above = 1e-9;

struct Vec {
  double x = 0.0, r = 0.0;
};
inline Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.r + b.r}; }
inline Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.r - b.r}; }
inline Vec operator*(double s, Vec a) { return {s * a.x, s * a.r}; }
inline double dot(Vec a, Vec b) { return a.x * b.x + a.r * b.r; }

// Along the surface to the right: a normal turned clockwise by a quarter.
inline Vec rightward(Vec normal) { return {normal.r, -normal.x}; }

// A section seen with x times S (S = 1 or -1), so that code for the right serves the left.
template <int S>
class View {
 public:
  using Kind = Contact::Kind;
  static constexpr Kind far_side = S > 0 ? Kind::right_side : Kind::left_side;
  static constexpr Kind near_side = S > 0 ? Kind::left_side : Kind::right_side;
  static constexpr Kind far_face = S > 0 ? Kind::right_face : Kind::left_face;
  static constexpr Kind near_face = S > 0 ? Kind::left_face : Kind::right_face;

  explicit View(const Section& section) : section_(section) {}

  [[nodiscard]] Vec centre(std::int32_t i) const { return {S * section_[i].x, section_[i].r}; }
  [[nodiscard]] std::int32_t after(std::int32_t i) const { return S > 0 ? section_[i].after : section_[i].before; }
  [[nodiscard]] std::int32_t before(std::int32_t i) const { return S > 0 ? section_[i].before : section_[i].after; }
  [[nodiscard]] std::int32_t first() const { return S > 0 ? section_.first() : section_.last(); }
  [[nodiscard]] std::int32_t first_right_of(double x) const {
    std::int32_t i = section_.at_or_before(S * x);
    if constexpr (S > 0) {
      i = i == Section::none ? section_.first() : section_[i].after;
    }
    while (i != Section::none && centre(i).x <= x) i = after(i);
    return i;
  }
  [[nodiscard]] double d() const { return section_.fiber_diameter(); }
  [[nodiscard]] double reach(std::int32_t i) const { return section_.reach(i); }
  [[nodiscard]] double per_reach(std::int32_t i) const { return section_.per_reach(i); }
  [[nodiscard]] double most_reach() const { return section_.most_reach(); }
  [[nodiscard]] bool even() const { return section_.even(); }
  [[nodiscard]] double barrel_slope() const { return S * section_.barrel().slope; }
  [[nodiscard]] double barrel_at(double x) const { return section_.barrel().at_zero + barrel_slope() * x; }
  [[nodiscard]] FaceLine far() const { return mirrored(S > 0 ? section_.right() : section_.left()); }
  [[nodiscard]] FaceLine near() const { return mirrored(S > 0 ? section_.left() : section_.right()); }
  [[nodiscard]] Vec normal(const Contact& c, Vec q) const {
    const Normal n = normal_of(section_, c, S * q.x, q.r);
    return {S * n.x, n.r};
  }

 private:
  static FaceLine mirrored(FaceLine face) { return {S * face.at_axis, S * face.slope}; }
  const Section& section_;
};

struct Stop {
  Vec at;
  Contact contact;  // what carries it there; none: it lifts off
  Contact next;     // what ends the way; none: friction stopped it, or it lifts off
};

struct Line {
  Vec foot, along;  // a point, and a unit vector
};
inline Line face_line(FaceLine face) {
  const double scale = 1.0 / std::sqrt(1.0 + face.slope * face.slope);
  return {{face.at_axis, 0.0}, {face.slope * scale, scale}};
}
template <int S>
Line barrel_line(const View<S>& view) {
  const double scale = 1.0 / std::sqrt(1.0 + view.barrel_slope() * view.barrel_slope());
  return {{0.0, view.barrel_at(0.0)}, {scale, view.barrel_slope() * scale}};
}

// Where a line meets a circle of that radius, in the order of the line's direction.
struct Meeting {
  bool meets;
  Vec first, second;
};
inline Meeting meet(const Line& line, Vec centre, double radius) {
  const Vec nearest = line.foot + dot(centre - line.foot, line.along) * line.along;
  const Vec off = nearest - centre;
  const double square = radius * radius - dot(off, off);
  if (square <= 0.0) return {false, {}, {}};
  const Vec half = std::sqrt(square) * line.along;
  return {true, nearest - half, nearest + half};
}

// Where the cap over circle i passes into that over circle j on its right: in a valley, at the side under j's cap, or, where
// j does not reach it, nowhere (false).
template <int S>
bool passes_into(const View<S>& view, std::int32_t i, std::int32_t j, Stop& end) {
  using Kind = Contact::Kind;
  const Vec c = view.centre(i);
  const Vec b = view.centre(j);
  const Vec between = b - c;
  const double reach = view.reach(i);
  const double other = view.reach(j);
  if (between.x >= reach + other) return false;
  const double square = dot(between, between);
  Vec valley;
  if (reach == other) {
    const double up = std::sqrt(std::max(0.0, reach * reach / square - 0.25));
    valley = {0.5 * (c.x + b.x) - between.r * up, 0.5 * (c.r + b.r) + between.x * up};
  } else {
    const double share = 0.5 + 0.5 * (reach * reach - other * other) / square;
    const double up = std::sqrt(std::max(0.0, reach * reach / square - share * share));
    valley = {c.x + share * between.x - between.r * up, c.r + share * between.r + between.x * up};
  }
  if (valley.r >= std::max(c.r, b.r)) {
    end = {valley, {Kind::circle, i}, {Kind::circle, j}};
    return true;
  }
  if (b.r <= c.r) return false;
  const double off = b.x - other - c.x;
  end = {{b.x - other, c.r + std::sqrt(std::max(0.0, reach * reach - off * off))},
         {Kind::circle, i},
         {View<S>::near_side, j}};
  return true;
}

// Where the cap over circle i ends on the right of a node that stands on it at x, and in what.
template <int S>
Stop end_of_cap(const View<S>& view, std::int32_t i, double x) {
  using Kind = Contact::Kind;
  const Vec c = view.centre(i);
  const double reach = view.reach(i);
  Stop end{{c.x + reach, c.r}, {Kind::circle, i}, {View<S>::far_side, i}};
  if (view.even()) {
    const std::int32_t next = view.after(i);
    if (next != Section::none) passes_into(view, i, next, end);
  } else {
    // Where diameters scatter, any that is near may end it, and a cap may show on both sides of one above it.
    const double here = x - from_above * view.d();
    for (std::int32_t j = view.first_right_of(x - view.most_reach());
         j != Section::none && view.centre(j).x - view.most_reach() < end.at.x; j = view.after(j)) {
      Stop other;
      if (j != i && passes_into(view, i, j, other) && other.at.x >= here && other.at.x < end.at.x) end = other;
    }
  }
  // A barrel that rises meets the cap before its side does.
  if (view.barrel_at(end.at.x) > end.at.r) {
    const Meeting m = meet(barrel_line(view), c, reach);
    if (m.meets) end = {m.second, {Kind::circle, i}, {Kind::barrel, Section::none}};
  }
  const Meeting m = meet(face_line(view.far()), c, reach);
  if (m.meets && m.second.r >= c.r && m.second.x < end.at.x) {
    end = {m.second, {Kind::circle, i}, {View<S>::far_face, Section::none}};
  }
  return end;
}

// Highest surface met by a point that slides down the line x(r) = line.at_axis + line.slope * r from radius `top`, among
// the circles from `from` on to the right.
template <int S>
Stop end_of_descent(const View<S>& view, FaceLine line, Contact on, std::int32_t from, double top) {
  using Kind = Contact::Kind;
  const double m = view.barrel_slope();
  const double barrel_r = (view.barrel_at(0.0) + m * line.at_axis) / (1.0 - m * line.slope);
  Stop end{{line.at(barrel_r), barrel_r}, on, {Kind::barrel, Section::none}};
  // Higher up there may be turns again, under which the point has come by.
  const double highest = top + from_above * view.d();
  for (std::int32_t i = from; i != Section::none; i = view.after(i)) {
    const Vec c = view.centre(i);
    // The line leans by its slope only: far circles cannot reach it.
    if (c.x - view.most_reach() > line.at(line.slope > 0.0 ? highest : end.at.r)) break;
    const double d = view.reach(i);
    const Meeting meeting = meet(face_line(line), c, d);
    if (meeting.meets && meeting.second.r >= c.r) {
      if (meeting.second.r > end.at.r && meeting.second.r <= highest) end = {meeting.second, on, {Kind::circle, i}};
    } else if (line.slope < 0.0) {
      // Below its cap the line comes to its side.
      const double side_r = (c.x - d - line.at_axis) / line.slope;
      if (side_r < c.r && side_r > end.at.r && side_r <= highest)
        end = {{c.x - d, side_r}, on, {View<S>::near_side, i}};
    }
  }
  return end;
}

// Where a node that slides right over a cap, pulled toward `pull`, is stopped: by friction, which holds it where the
// pull makes the cone's angle with the normal, or where a pull from outside the cap lifts it, at its tangent point.
struct CapStop {
  Vec at;
  bool above;  // on the upper half; below it the cap has ended before
  bool lifts;
};

inline CapStop stop_on_cap(Vec centre, double d, Vec pull, const FrictionCone& cone) {
  const Vec a = pull - centre;
  const double size = std::sqrt(dot(a, a));
  const bool lifts = size >= d;
  const double cosine = lifts ? d / size : std::min(1.0, d * cone.sine / size);
  const double sine = std::sqrt(1.0 - cosine * cosine);
  const Vec unit = (1.0 / size) * a;
  Vec normal;
  if (lifts) {
    normal = {unit.x * cosine - unit.r * sine, unit.r * cosine + unit.x * sine};
  } else {
    const Vec u{unit.x * cosine + unit.r * sine, unit.r * cosine - unit.x * sine};
    normal = {u.x * cone.sine - u.r * cone.cosine, u.r * cone.sine + u.x * cone.cosine};
  }
  return {centre + d * normal, normal.r >= 0.0, lifts};
}

// Where a node that slides right along the barrel from q comes to a turn or to the far face.
template <int S>
Stop end_of_barrel(const View<S>& view, Vec q, const Contact& on) {
  using Kind = Contact::Kind;
  const FaceLine face = view.far();
  const double face_r =
      (view.barrel_at(0.0) + view.barrel_slope() * face.at_axis) / (1.0 - view.barrel_slope() * face.slope);
  Stop end{{face.at(face_r), face_r}, on, {View<S>::far_face, Section::none}};
  // Not only the first turn: another straight above it, by rounding nearer, may have the side that is met.
  for (std::int32_t i = view.first_right_of(q.x); i != Section::none; i = view.after(i)) {
    const Vec c = view.centre(i);
    if (c.x - view.most_reach() >= end.at.x) break;
    const double x = c.x - view.reach(i);
    Stop here{{x, view.barrel_at(x)}, on, {View<S>::near_side, i}};
    // A barrel that falls comes to the cap above its side.
    const Meeting meeting = meet(barrel_line(view), c, view.reach(i));
    if (here.at.r > c.r && meeting.meets) here = {meeting.first, on, {Kind::circle, i}};
    if (here.at.x < end.at.x) end = here;
  }
  return end;
}

// Where a node that slides up the far face from q comes to a turn that lies on the face or leans toward it. It is then
// held there by the turn; none: nothing ends its way.
template <int S>
std::optional<Stop> end_of_ascent(const View<S>& view, Vec q, const Contact& on) {
  using Kind = Contact::Kind;
  const FaceLine face = view.far();
  if (face.slope == 0.0) return std::nullopt;
  const bool opens = face.slope > 0.0;
  std::optional<Stop> end;
  for (std::int32_t i = opens ? view.first_right_of(q.x) : view.first(); i != Section::none; i = view.after(i)) {
    const Vec c = view.centre(i);
    if (!opens && c.x >= q.x) break;
    const double d = view.reach(i);
    const double side = c.x + (opens ? -d : d);
    Stop here{{side, (side - face.at_axis) / face.slope}, on, {}};
    if (opens) here.next = {View<S>::near_side, i};
    if (here.at.r >= c.r) {
      const Meeting meeting = meet(face_line(face), c, d);
      if (!meeting.meets) continue;
      here.at = meeting.first;
      if (opens) here.next = {Kind::circle, i};
    }
    const bool ahead = here.at.r >= q.r - from_above * view.d();
    if (ahead && (!end || here.at.r < end->at.r)) end = here;
  }
  return end;
}

// The first circle that may lie under the right side of circle i: where diameters scatter, one whose centre lies farther
// left may come out farther right.
template <int S>
std::int32_t first_under(const View<S>& view, std::int32_t i, double side) {
  std::int32_t from = view.after(i);
  if (view.even()) return from;
  for (std::int32_t j = view.before(i); j != Section::none && view.centre(j).x + view.most_reach() > side;
       j = view.before(j)) {
    from = j;
  }
  return from;
}

// Whether a thicker turn hangs over the left side of circle i between q and the top of that side: there the way up ends.
template <int S>
bool hangs_over(const View<S>& view, std::int32_t i, Vec q, Vec top) {
  for (std::int32_t j = view.after(i); j != Section::none && view.centre(j).x - view.most_reach() < q.x;
       j = view.after(j)) {
    const Vec c = view.centre(j);
    const double off = c.x - q.x;
    const double reach = view.reach(j);
    if (off < reach && c.r > q.r && c.r - std::sqrt(reach * reach - off * off) < top.r) return true;
  }
  return false;
}

// Slides right along the contact from q, pulled toward `pull`; precondition: the pull overcomes friction there.
template <int S>
Stop slide_right(const View<S>& view, Vec q, const Contact& contact, Vec pull, const FrictionCone& cone) {
  using Kind = Contact::Kind;
  if (contact.kind == Kind::circle) {
    const Stop end = end_of_cap(view, contact.circle, q.x);
    const CapStop stop = stop_on_cap(view.centre(contact.circle), view.reach(contact.circle), pull, cone);
    if (stop.above && stop.at.x < end.at.x) return {stop.at, stop.lifts ? Contact{} : contact, {}};
    return end;
  }
  const Vec n = view.normal(contact, q);
  const Vec t = rightward(n);
  const double press = dot(q - pull, n);
  const Vec stop = pull + press * n - (cone.mu * press) * t;
  Stop end;
  if (contact.kind == Kind::barrel) {
    end = end_of_barrel(view, q, contact);
  } else if (contact.kind == View<S>::far_side) {
    const double down = view.centre(contact.circle).x + view.reach(contact.circle);
    end = end_of_descent(view, FaceLine{down, 0.0}, contact, first_under(view, contact.circle, down), q.r);
    // Straight down it may also come to a face: to the far one, or to the near one where that opens under the turn.
    const auto stops_at = [&](const FaceLine& face, Kind kind, double side) {
      if (face.slope == 0.0 || side * (end.at.x - face.at_axis - face.slope * end.at.r) <= 0.0) return;
      end = {{end.at.x, (end.at.x - face.at_axis) / face.slope}, contact, {kind, Section::none}};
    };
    stops_at(view.far(), View<S>::far_face, 1.0);
    stops_at(view.near(), View<S>::near_face, -1.0);
  } else if (contact.kind == View<S>::near_side) {
    const Vec c = view.centre(contact.circle);
    end = {{c.x - view.reach(contact.circle), c.r}, contact, {Kind::circle, contact.circle}};
    if (!view.even() && hangs_over(view, contact.circle, q, end.at)) return {q, contact, {}};
  } else if (contact.kind == View<S>::near_face) {
    end = end_of_descent(view, view.near(), contact, view.first(), q.r);
  } else {
    const std::optional<Stop> turn = end_of_ascent(view, q, contact);
    if (!turn) return {stop, contact, {}};
    end = *turn;
  }
  return dot(stop - q, t) < dot(end.at - q, t) ? Stop{stop, contact, {}} : end;
}

}  // namespace laywright::sliding
