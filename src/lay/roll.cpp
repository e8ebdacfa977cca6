// The rolling of a string window: one banded step for the stretch behind the lay point (MODEL.md, "A round fiber rolls").
//
// Unknown is how far each node rolls on. One that lies on a single contact moves as far along it, against the string
// and against the twist: pull + k (second difference of what is rolled) = 0, k the twist's stiffness over the tension.
// One in a valley is held by its two contacts until the pull leaves the wedge between their normals; then it rolls on
// the contact that is left. Where the twist asks more of a contact than friction gives, the fiber turns in place until
// it asks no more. What friction does not hold sideways is left to the sweeps. The rounding of a cap, which hastens a
// fall, is left out of the matrix, so that each step is one downhill; what falls, falls over some steps.
#include <algorithm>
#include <cmath>

#include "base/hash.h"
#include "lay/slide.h"
#include "lay/string_window.h"

namespace laywright {
namespace {

using Kind = Contact::Kind;

// Steps go further than their balance asks, as the sweeps do.
constexpr double over_rolling = 1.6;

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

// A twist within this share of what friction bears is borne: where the fiber has just turned in place, both are equal.
constexpr double edge_tolerance = 1e-6;

// Where the fiber slides, pull, twist and what friction bears are equal: rounding must not decide which is the greatest.
constexpr double twist_slack = 1.1;

// What moves less than this in a step, in d, is left to the string, unless it stands where there is no rest.
constexpr double still_d = 0.0075;

// Nodes that the step would roll backwards out of a valley are held, and the step is taken again.
constexpr int most_rounds = 3;

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

// What the node's contacts let it do, its pull along them and the greatest twist that they bear.
StringWindow::RollRow StringWindow::rolling_of(std::size_t k) const {
  RollRow row;
  const Resting& rest = node(k).rest;
  if (rest.lifted()) return row;
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

// Fills in the equation of node k: its twist, and what resists.
void StringWindow::set_equation(std::size_t k, RollRow& row) const {
  const bool tip = k + 1 == count_;
  const double rolled = node(k).rolled;
  // The guide does not let the fiber turn: the span bears twist as it bears tension.
  const double twist = roll_.stiffness * (node(k - 1).rolled - rolled +
                                          (tip ? -end_.stiffness_x * rolled : node(k + 1).rolled - rolled));
  row.diagonal = roll_.stiffness * (1.0 + (tip ? end_.stiffness_x : 1.0));
  row.off = -roll_.stiffness;
  if (row.moves && std::abs(twist) <= twist_slack * std::max(row.bears, std::abs(row.pull))) {
    // Without bending: on the diagonal alone it would hold a stretch that moves as a whole.
    row.diagonal += string_stiffness_of(k);
    row.right = row.pull + twist;
    return;
  }
  row.moves = false;
  row.way = 0;
  if (std::abs(twist) > row.bears * (1.0 + edge_tolerance) || row.bears == 0.0) {
    row.right = twist - std::copysign(row.bears, twist);
  } else {
    row.hold();
  }
}

// Solves rolls_ for how far each node turns: elimination along a chain.
void StringWindow::solve_rolls() {
  const auto coupling = [&](const RollRow& row, const RollRow& beside) {
    const double string =
        row.moves && beside.moves ? row.normal.x * beside.normal.x + row.normal.r * beside.normal.r : 0.0;
    return row.off - string;
  };
  const std::size_t n = rolls_.size();
  for (std::size_t i = 0; i < n; ++i) {
    RollRow& row = rolls_[i];
    double diagonal = row.diagonal;
    double right = row.right;
    if (i > 0) {
      const double before = coupling(row, rolls_[i - 1]);
      diagonal -= before * rolls_[i - 1].after;
      right -= before * rolls_[i - 1].turn;
    }
    row.after = i + 1 < n ? coupling(row, rolls_[i + 1]) / diagonal : 0.0;
    row.turn = right / diagonal;
  }
  for (std::size_t i = n - 1; i-- > 0;) rolls_[i].turn -= rolls_[i].after * rolls_[i + 1].turn;
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
  if (!row.moves) {
    here.rolled += row.turn;
    return 0.0;
  }
  const double way = over_rolling * row.turn;
  if (std::abs(way) < least_roll * tolerance_) return 0.0;
  if (roll_on_ledge(here, way)) {
    here.rolled += way;
    return std::abs(way);
  }
  const double gone = way > 0.0 ? roll_right<1>(*here.section, here.rest, row.contact, way)
                                : -roll_right<-1>(*here.section, here.rest, row.contact, -way);
  here.rolled += gone;
  here.ledge.known = false;
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
  for (std::size_t k = low; k <= top; ++k) {
    rolls_.push_back(rolling_of(k));
    set_equation(k, rolls_.back());
  }
  for (int round = 0; round < most_rounds; ++round) {
    solve_rolls();
    bool again = false;
    for (RollRow& row : rolls_) {
      if (row.turn * row.way >= 0.0) continue;
      row.hold();
      again = true;
    }
    if (!again) break;
  }
  for (std::size_t k = low; k <= top; ++k) {
    const double moved = roll_on(k, rolls_[k - low]);
    if (moved <= still_d * section_of(k).fiber_diameter() && !rolls_[k - low].falls) continue;
    disturbed_ = std::min(disturbed_, k);
    still_rolls_ = std::min(still_rolls_, k);
  }
}

}  // namespace laywright
