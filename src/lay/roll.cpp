// The rolling of a string window: one banded step for the stretch behind the lay point (MODEL.md, "A round fiber rolls").
//
// A node on a single contact rolls along it, against the string and against the twist (rolling_balance.cpp).
// One in a valley is held by its two contacts until the pull leaves the wedge between their normals; then it rolls on
// the contact that is left. What friction does not hold sideways is left to the sweeps. The rounding of a cap, which
// hastens a fall, is left out of the balance, so that each step is one downhill; what falls, falls over some steps.
#include <algorithm>
#include <cmath>

#include "base/hash.h"
#include "lay/slide.h"
#include "lay/string_window.h"

namespace laywright {
namespace {

using Kind = Contact::Kind;

// Steps go further than their balance asks, as the sweeps do, by as much of this as friction has left: what has slid too
// far is not brought back.
constexpr double over_rolling = 0.6;

// Straight on top of a turn there is no rest: any fiber is out of round or leans by about that much (rad). What comes
// out hardly depends on it (the same ridges at .02 and .05).
constexpr double top_tilt = 0.02;

// A pull this near to straight down, over its size, leaves the side to chance.
constexpr double tie = 1e-3;

// A move shorter than this, over the tolerance at which the string is at rest, is none.
constexpr double least_roll = 0.02;

// A pull along the surface, over what presses on it, that opens a node's other contact: straight down it does not, by
// whatever rounding.
constexpr double loose = 1e-6;

// What moves less than this in a step, in d, is left to the string, unless it stands where there is no rest.
constexpr double still_d = 0.0075;

bool is_face(const Contact& contact) { return contact.kind == Kind::left_face || contact.kind == Kind::right_face; }
bool carries_rolling(const Contact& contact) { return contact.kind == Kind::circle || contact.kind == Kind::barrel; }

// Rolls a node right along its contact until the surface ends it; returns how far it came.
template <int S>
double roll_right(const Section& section, Resting& rest, const Contact& contact, double way) {
  using sliding::Vec;
  const sliding::View<S> view(section);
  const Vec from{S * rest.x, rest.r};
  Vec to;
  sliding::Stop end;
  bool ends = false;
  if (contact.kind == Kind::circle) {
    const Vec centre = view.centre(contact.circle);
    const Vec off = from - centre + way * sliding::rightward(view.per_reach(contact.circle) * (from - centre));
    to = centre + (view.reach(contact.circle) / std::sqrt(dot(off, off))) * off;
    end = sliding::end_of_cap(view, contact.circle, from.x);
    ends = off.r <= 0.0;  // past the cap's side
  } else {
    to = from + way * sliding::barrel_line(view).along;
    end = sliding::end_of_barrel(view, from, contact);
  }
  ends = ends || to.x >= end.at.x;
  if (ends) to = end.at;
  if (to.x < from.x) return 0.0;
  rest.x = S * to.x;
  rest.r = to.r;
  rest.left = rest.right = contact;
  if (ends) {
    const bool own_side = end.next.circle != Section::none && end.next.circle == contact.circle;
    (S > 0 ? rest.right : rest.left) = end.next;
    if (own_side) rest.left = rest.right = end.next;
  }
  return std::sqrt(dot(to - from, to - from));
}

}  // namespace

// What the node's contacts let it do, its pull along them and the greatest twist that friction bears there.
StringWindow::RollRow StringWindow::rolling_of(std::size_t k) const {
  RollRow row;
  const Resting& rest = node(k).rest;
  if (rest.lifted()) {
    row.state = RollRow::State::turns;
    return row;
  }
  const Section& section = section_of(k);
  // Without bending: beside twist it is small at any length that nodes resolve, E I / G J (d / step)^2, but it makes much of
  // the little that the sweeps leave, and would decide what lies straight on top.
  const Force force = string_force_on(k);
  const auto press_on = [&](const Normal& n) { return -(force.x * n.x + force.r * n.r); };
  const auto along = [&](const Normal& n) { return force.x * n.r - force.r * n.x; };
  const Normal right = normal_of(section, rest.right, rest.x, rest.r);
  const double press_right = press_on(right);
  if (!rest.in_valley()) {
    if (press_right <= 0.0) return row;
    row.bears = friction_.mu * press_right;
    if (!carries_rolling(rest.right)) return row;
    row.rolls_on(rest.right, right, 0, along(right));
    const bool on_top = rest.right.kind == Kind::circle && std::abs(row.pull) < tie * press_right;
    row.falls = on_top;
    if (on_top) row.pull = (falls_right(k) ? top_tilt : -top_tilt) * press_right;
    return row;
  }
  const Normal left = normal_of(section, rest.left, rest.x, rest.r);
  const double press_left = press_on(left);
  row.bears = friction_.mu * (std::max(0.0, press_left) + std::max(0.0, press_right));
  // Between a face and the top of a turn: a face does not hold from above.
  const double lean_right = is_face(rest.left) && rest.right.kind == Kind::circle ? top_tilt * press_right : 0.0;
  const double lean_left = is_face(rest.right) && rest.left.kind == Kind::circle ? top_tilt * press_left : 0.0;
  if (press_right >= 0.0 && along(right) > loose * press_right - lean_right && carries_rolling(rest.right)) {
    row.falls = along(right) < lean_right;
    row.rolls_on(rest.right, right, 1, std::max(along(right), lean_right));
  } else if (press_left >= 0.0 && -along(left) > loose * press_left - lean_left && carries_rolling(rest.left)) {
    row.falls = -along(left) < lean_left;
    row.rolls_on(rest.left, left, -1, std::min(along(left), -lean_left));
  }
  return row;
}

// The side is drawn anew each turn, so that a stretch that falls together falls one way.
bool StringWindow::falls_right(std::size_t k) const {
  Hash hash;
  hash.add(roll_.seed);
  hash.add(static_cast<std::uint64_t>(k / sections_.size()));
  return ((hash.value() & 1U) != 0) != roll_.mirrored;
}

// The same for a node on a single cap that it does not leave.
bool StringWindow::roll_on_ledge(StringNode& node, double way) {
  Resting& rest = node.rest;
  Ledge& ledge = node.ledge;
  if (!ledge.known && !find_ledge(node, *node.section)) return false;
  if (!ledge.ends_known) find_ends(node, *node.section);
  const double off_x = rest.x - ledge.x;
  const double off_r = rest.r - ledge.r;
  const double turn = way / ledge.reach;
  const double x = off_x + turn * off_r;
  const double r = off_r - turn * off_x;
  const double scale = ledge.reach / std::sqrt(x * x + r * r);
  const double to = ledge.x + scale * x;
  if (r <= 0.0 || to <= ledge.left || to >= ledge.right) return false;
  rest.x = to;
  rest.r = ledge.r + scale * r;
  return true;
}

// Turns and moves node k as its row says; returns how far it moved.
double StringWindow::roll_on(std::size_t k, const RollRow& row) {
  StringNode& here = movable(k);
  if (!row.moves()) {
    here.rolled += row.turns;
    return 0.0;
  }
  const double way = row.turns * (1.0 + over_rolling * std::max(0.0, 1.0 - std::abs(row.twist_after) / row.bears));
  if (std::abs(way) < least_roll * tolerance_) return 0.0;
  double gone = way;
  if (!roll_on_ledge(here, way)) {
    gone = way > 0.0 ? roll_right<1>(*here.section, here.rest, row.contact, way)
                     : -roll_right<-1>(*here.section, here.rest, row.contact, -way);
    here.ledge.known = false;
  }
  here.rolled += gone;
  return std::abs(gone);
}

// Nodes from the oldest that may still roll: those that the last step moved, and what hangs together with them.
std::size_t StringWindow::first_rolling(std::size_t base, std::size_t tip) const {
  const std::size_t reach = std::max(base, tip > roll_.reach ? tip - roll_.reach : 0);
  const std::size_t fresh = std::min(still_rolls_, tip > 2 * roll_.every ? tip - 2 * roll_.every : 0);
  std::size_t low = std::max(reach, fresh > 2 ? fresh - 2 : 0);
  while (low > reach && !node(low - 1).rest.in_valley()) --low;
  return low;
}

void StringWindow::roll() {
  const std::size_t tip = count_ - 1;
  const std::size_t top = std::isinf(span_.stiffness) ? tip - 1 : tip;
  const std::size_t base = std::max<std::size_t>(first_movable(), 1);
  const std::size_t low = first_rolling(base, tip);
  still_rolls_ = count_;
  if (top < low) return;
  rolls_.clear();
  for (std::size_t k = low; k <= top; ++k) rolls_.push_back(rolling_of(k));
  if (!balance_rolls(low)) return;
  for (std::size_t k = low; k <= top; ++k) {
    const double moved = roll_on(k, rolls_[k - low]);
    if (moved <= still_d * section_of(k).fiber_diameter() && !rolls_[k - low].falls) continue;
    disturbed_ = std::min(disturbed_, k);
    still_rolls_ = std::min(still_rolls_, k);
  }
}

}  // namespace laywright
