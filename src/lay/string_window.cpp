#include "lay/string_window.h"

#include <algorithm>
#include <bit>
#include <cmath>

#include "lay/same_everywhere.h"
#include "lay/slide.h"

namespace laywright {
namespace {

// A window that has not come to rest by then is left as it is, and goes on with the next node: every state on the way
// keeps its distances. Only fiber with hardly any friction, which never rests, gets so far.
constexpr int most_sweeps = 400;
constexpr std::size_t most_visits_per_node = 40;  // of the whole window

// Each move goes this much further than its own balance asks, as in successive over-relaxation: half the sweeps of
// plain relaxation. Nearer to 2 a node overshoots before its neighbours follow, and friction then keeps it there.
constexpr double over_relaxation = 1.5;

// Most windows rest before that many; even, so that sweeps go both ways between leaps.
constexpr int sweeps_before_leap = 12;

// What a leap costs for each of its nodes, in visits.
constexpr std::size_t leap_visits = 8;

// Above the rim, where nothing is kept, the faces may even meet: not for std::clamp.
double between_faces(const Section& section, double x, double r) {
  const FaceLine& left = section.left();
  const FaceLine& right = section.right();
  return std::max(left.at_axis + left.slope * r, std::min(right.at_axis + right.slope * r, x));
}

}  // namespace

StringWindow::StringWindow(std::vector<Section>& sections, double friction, double angle, std::size_t length,
                           double bending_length2, double tolerance, Rolling roll)
    : sections_(sections),
      friction_(friction),
      angle_(angle),
      drop_(cos_of_small(angle)),
      length_(length),
      bending_length2_(bending_length2),
      tolerance_(tolerance),
      ring_(std::bit_ceil(length + 8)),
      mask_(ring_.size() - 1),
      roll_(roll) {}

double StringWindow::second_difference(std::size_t k) const {
  // No bending moment at the lay point, nor at the very start.
  if (k == 0 || k + 1 >= count_) return 0.0;
  return node(k - 1).rest.x - 2.0 * node(k).rest.x + node(k + 1).rest.x;
}

double StringWindow::bending_at(std::size_t k) const {
  if (bending_length2_ <= 0.0) return 0.0;
  const double step = node(k).rest.r * angle_;
  return bending_length2_ / (step * step);
}

// In units of the stiffness of one edge.
StringWindow::Force StringWindow::force_on(std::size_t k) const {
  const Resting& here = node(k).rest;
  const Resting& before = node(k - 1).rest;
  Force force{before.x - here.x, 0.0};
  if (k + 1 == count_) {
    force.x += span_.stiffness * (span_.toward - here.x);
    force.r = before.r * drop_ - here.r;
  } else {
    const Resting& after = node(k + 1).rest;
    force.x += after.x - here.x;
    force.r = (before.r + after.r) * drop_ - 2.0 * here.r;
  }
  if (bending_length2_ > 0.0) {
    force.x -= bending_at(k) * (second_difference(k - 1) - 2.0 * second_difference(k) + second_difference(k + 1));
  }
  return force;
}

double StringWindow::stiffness_of(std::size_t k) const {
  return (k + 1 == count_ ? 1.0 + span_.stiffness : 2.0) + 6.0 * bending_at(k);
}

// One stiffness for both directions (the greater): where the string rests does not depend on it.
StringWindow::Pull StringWindow::pull_on(std::size_t k) const {
  const Force force = force_on(k);
  const double step = over_relaxation / stiffness_of(k);
  return {node(k).rest.x + step * force.x, node(k).rest.r + step * force.r};
}

bool StringWindow::find_ledge(StringNode& node, const Section& section) {
  const Contact& contact = node.rest.left;
  if (contact.kind != Contact::Kind::circle || node.rest.in_valley()) return false;
  const Section::Exposed& circle = section[contact.circle];
  node.ledge = {circle.x, circle.r, 0.0, 0.0, true, false};
  return true;
}

void StringWindow::find_ends(StringNode& node, const Section& section) {
  const std::int32_t circle = node.rest.left.circle;
  node.ledge.right = sliding::end_of_cap(sliding::View<1>(section), circle).at.x;
  node.ledge.left = -sliding::end_of_cap(sliding::View<-1>(section), circle).at.x;
  node.ledge.ends_known = true;
}

// Does what settle() does, as long as the node stays on the cap that carries it. Returns false when it does not.
bool StringWindow::settle_on_ledge(StringNode& node, const Section& section, Pull pull) const {
  Resting& rest = node.rest;
  Ledge& ledge = node.ledge;
  if (!ledge.known && !find_ledge(node, section)) return false;
  // Normal times d, and forces times d with it: only their ratio matters.
  const double nx = rest.x - ledge.x;
  const double nr = rest.r - ledge.r;
  const double fx = pull.x - rest.x;
  const double fr = pull.r - rest.r;
  const double press = -(fx * nx + fr * nr);
  const double along = fx * nr - fr * nx;
  if (press < 0.0) return false;
  if (!(std::abs(along) > friction_.mu * press)) return true;
  if (!ledge.ends_known) find_ends(node, section);
  const double mirror = along > 0.0 ? 1.0 : -1.0;
  const sliding::CapStop stop = sliding::stop_on_cap({mirror * ledge.x, ledge.r}, section.fiber_diameter(),
                                                     {mirror * pull.x, pull.r}, friction_);
  const double x = mirror * stop.at.x;
  if (stop.lifts || !stop.above || x <= ledge.left || x >= ledge.right) return false;
  rest.x = x;
  rest.r = stop.at.r;
  return true;
}

bool StringWindow::update(std::size_t k) {
  StringNode& node = movable(k);
  const Pull pull = pull_on(k);
  const double x = node.rest.x;
  const double r = node.rest.r;
  const Section& section = section_of(k);
  if (!settle_on_ledge(node, section, pull)) {
    settle(section, node.rest, pull.x, pull.r, friction_);
    node.ledge.known = false;
  }
  return std::abs(node.rest.x - x) > tolerance_ || std::abs(node.rest.r - r) > tolerance_;
}

void StringWindow::relax() {
  const std::size_t reach = bending_length2_ > 0.0 ? 2 : 1;
  const std::size_t base = std::max<std::size_t>(first_movable(), 1);
  const std::size_t tip = count_ - 1;
  // With the guide at the lay point the last node is where the guide is.
  const std::size_t top = std::isinf(span_.stiffness) ? tip - 1 : tip;
  if (top < base) return;
  const std::size_t newest = std::min(disturbed_, tip);
  disturbed_ = static_cast<std::size_t>(-1);
  std::size_t low = std::max(base, newest > reach ? newest - reach : 0);
  std::size_t high = top;
  std::size_t visits = 0;
  for (int sweep = 0; sweep < most_sweeps && visits < most_visits_per_node * length_; ++sweep) {
    std::size_t moved_low = top + 1;
    std::size_t moved_high = base;
    const auto visit = [&](std::size_t k) {
      ++visits;
      if (!update(k)) return;
      moved_low = std::min(moved_low, k);
      moved_high = std::max(moved_high, k);
      low = std::min(low, std::max(base, k > reach ? k - reach : 0));
      high = std::max(high, std::min(top, k + reach));
    };
    if (sweep % 2 == 0) {
      for (std::size_t k = high + 1; k-- > low;) visit(k);
    } else {
      for (std::size_t k = low; k <= high; ++k) visit(k);
    }
    if (moved_low > top) return;
    if (sweep % sweeps_before_leap == sweeps_before_leap - 1) {
      // What moves pulls on what lies beside it: leap with as much again on the older side.
      const std::size_t more = high - low + 1;
      const std::size_t from = std::max(base, low > more ? low - more : 0);
      visits += leap_visits * (high - from + 1);
      if (leap(from, high)) {
        moved_low = from;
        moved_high = high;
      }
    }
    low = std::max(base, moved_low > reach ? moved_low - reach : 0);
    high = std::min(top, moved_high + reach);
  }
}

void StringWindow::add(double x, std::uint32_t stroke, SpanPull span) {
  const std::size_t k = count_++;
  StringNode& added = movable(k);
  added.stroke = stroke;
  added.section = &sections_[station_];
  if (++station_ == sections_.size()) station_ = 0;
  sections_[station_].bring_near();
  added.rest = set_down(*added.section, x);
  added.ledge.known = false;
  span_ = span;
  added.rolled = 0.0;
  if (k == 0) return;
  // The twist of the last node fades along the span, as its place does.
  added.rolled = node(k - 1).rolled / (1.0 + span.stiffness);
  const double free_r = node(k - 1).rest.r * drop_;
  if (free_r > added.rest.r) {
    // Clear of what lies below. A face that leans in may be in the way up there; beside it, turns may stand higher.
    const double between = between_faces(*added.section, added.rest.x, free_r);
    if (between != added.rest.x) added.rest = set_down(*added.section, between);
    if (free_r > added.rest.r) added.rest = {added.rest.x, free_r, {}, {}};
  }
  relax();
  if (!std::isinf(roll_.stiffness) && k > 1 && k % roll_.every == 0) roll();
}

}  // namespace laywright
