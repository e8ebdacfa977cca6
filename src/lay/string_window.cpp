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

// Most windows rest before that many; even, so that sweeps go both ways between Newton steps.
constexpr int sweeps_before_newton_step = 12;

// What a Newton step costs for each of its nodes, in visits.
constexpr std::size_t newton_step_visits = 8;

// How far ahead of the lay point the span is looked at: nodes, and rad.
constexpr std::size_t most_ahead = 64;
constexpr double most_ahead_rad = 0.5;

}  // namespace

StringWindow::StringWindow(std::vector<Section>& sections, double friction, double angle, std::size_t length,
                           double bending_length2, double tolerance, Rolling roll, FiberDiameter* diameters)
    : sections_(sections),
      friction_(friction),
      angle_(angle),
      drop_(cos_of_small(angle)),
      length_(length),
      bending_length2_(bending_length2),
      tolerance_(tolerance),
      ring_(std::bit_ceil(length + 8 + most_ahead)),
      mask_(ring_.size() - 1),
      roll_(roll),
      diameters_(diameters) {
  for (const Section& section : sections_) highest_ = std::max(highest_, section.top());
  for (std::size_t j = 0; j <= most_ahead && static_cast<double>(j) * angle < most_ahead_rad; ++j) {
    const double cosine = cos_of_small(static_cast<double>(j) * angle);
    rises_.push_back({1.0 / cosine - 1.0, cosine, std::sqrt(1.0 - cosine * cosine)});
  }
}

double StringWindow::second_difference(std::size_t k) const {
  // No bending moment at the lay point, nor ahead of it, nor at the very start.
  if (k == 0 || k + 1 >= laid_) return 0.0;
  return node(k - 1).rest.x - 2.0 * node(k).rest.x + node(k + 1).rest.x;
}

double StringWindow::bending_at(std::size_t k) const {
  if (bending_length2_ <= 0.0) return 0.0;
  const double step = node(k).rest.r * angle_;
  return bending_length2_ / (step * step);
}

// The span ahead of the lay point is straight.
double StringWindow::bending_force(std::size_t k) const {
  if (bending_length2_ <= 0.0 || k >= laid_) return 0.0;
  return -bending_at(k) * (second_difference(k - 1) - 2.0 * second_difference(k) + second_difference(k + 1));
}

// Of the lay point, where the span ahead touches something, and of nodes ahead of it; in units of the stiffness of one
// edge, as force_on().
StringWindow::Force StringWindow::force_ahead(std::size_t k) const {
  const Resting& here = node(k).rest;
  const Link before = link_before(k);
  const Link after = link_after(k);
  return {before.stiffness_x * (before.x - here.x) + after.stiffness_x * (after.x - here.x),
          before.stiffness_r * (before.r - here.r) + after.stiffness_r * (after.r - here.r)};
}

double StringWindow::stiffness_ahead(std::size_t k) const {
  return link_before(k).stiffness_x + link_after(k).stiffness_x;
}

// Without bending, in units of the stiffness of one edge.
StringWindow::Force StringWindow::string_force_on(std::size_t k) const {
  if (k + 1 >= laid_ && count_ > laid_) return force_ahead(k);
  const Resting& here = node(k).rest;
  const Resting& before = node(k - 1).rest;
  Force force{before.x - here.x, 0.0};
  if (k + 1 == count_) {
    force.x += end_.stiffness_x * (end_.x - here.x);
    force.r = before.r * drop_ - here.r;
  } else {
    const Resting& after = node(k + 1).rest;
    force.x += after.x - here.x;
    force.r = (before.r + after.r) * drop_ - 2.0 * here.r;
  }
  return force;
}

StringWindow::Force StringWindow::force_on(std::size_t k) const {
  Force force = string_force_on(k);
  force.x += bending_force(k);
  return force;
}

double StringWindow::string_stiffness_of(std::size_t k) const {
  if (k + 1 >= laid_ && count_ > laid_) return stiffness_ahead(k);
  return k + 1 == count_ ? 1.0 + end_.stiffness_x : 2.0;
}

double StringWindow::stiffness_of(std::size_t k) const {
  return string_stiffness_of(k) + (k < laid_ ? 6.0 * bending_at(k) : 0.0);
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
  node.ledge = {circle.x, circle.r, section.reach(contact.circle), 0.0, 0.0, true, false};
  return true;
}

void StringWindow::find_ends(StringNode& node, const Section& section) {
  const std::int32_t circle = node.rest.left.circle;
  node.ledge.right = sliding::end_of_cap(sliding::View<1>(section), circle, node.rest.x).at.x;
  node.ledge.left = -sliding::end_of_cap(sliding::View<-1>(section), circle, -node.rest.x).at.x;
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
  const sliding::CapStop stop =
      sliding::stop_on_cap({mirror * ledge.x, ledge.r}, ledge.reach, {mirror * pull.x, pull.r}, friction_);
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
  // With the guide at the lay point the last node is where the guide is.
  std::size_t top = std::isinf(span_.stiffness) ? count_ - 2 : count_ - 1;
  if (top < base) return;
  const std::size_t newest = std::min(disturbed_, laid_ - 1);
  disturbed_ = static_cast<std::size_t>(-1);
  std::size_t low = std::max(base, newest > reach ? newest - reach : 0);
  std::size_t high = top;
  std::size_t visits = 0;
  // What moves disturbs what lies beside it; ahead of the lay point, the next that touches, however far.
  const auto disturb = [&](std::size_t first, std::size_t last) {
    low = std::min(low, std::max(base, first > reach ? first - reach : 0));
    high = std::max(high, std::min(top, last + reach));
    if (last + 1 < laid_ || count_ == laid_) return;
    low = std::min(low, std::max(base, laid_ > 2 ? laid_ - 2 : 0));
    high = top;
  };
  for (int sweep = 0; sweep < most_sweeps && visits < most_visits_per_node * length_; ++sweep) {
    std::size_t moved_low = top + 1;
    std::size_t moved_high = base;
    const auto visit = [&](std::size_t k) {
      if (hangs_ahead(k)) return;
      ++visits;
      if (!update(k)) return;
      moved_low = std::min(moved_low, k);
      moved_high = std::max(moved_high, k);
      disturb(k, k);
    };
    if (sweep % 2 == 0) {
      for (std::size_t k = high + 1; k-- > low;) visit(k);
    } else {
      for (std::size_t k = low; k <= high; ++k) visit(k);
    }
    if (moved_low > top) return;
    if (sweep % sweeps_before_newton_step == sweeps_before_newton_step - 1) {
      if (count_ > laid_) {
        straighten();
        trim();
        top = count_ - 1;
        high = std::min(high, top);
      }
      // What moves pulls on what lies beside it: step with as much again on the older side.
      const std::size_t more = high - low + 1;
      const std::size_t from = std::max(base, low > more ? low - more : 0);
      visits += newton_step_visits * (high - from + 1);
      if (newton_step(from, high)) {
        moved_low = from;
        moved_high = high;
      }
    }
    low = top;
    high = base;
    disturb(moved_low, moved_high);
  }
}

// A node at x, in the air at r where nothing there is higher.
Resting StringWindow::placed(const Section& section, double x, double r) {
  const Resting down = set_down(section, x);
  if (r <= down.r) return down;
  // Clear of what lies below. A face that leans in may be in the way up there; beside it, turns may stand higher.
  const double between = section.between_faces(down.x, r);
  if (between != down.x) {
    const Resting beside = set_down(section, between);
    return r > beside.r ? Resting{beside.x, r, {}, {}} : beside;
  }
  return {down.x, r, {}, {}};
}

// The section of node k, told how thick the fiber is there.
Section& StringWindow::admit(std::size_t k, std::size_t station) {
  Section& section = sections_[station];
  if (diameters_ == nullptr) return section;
  diameters_->extend_to(k, level_ > 0.0 ? level_ : section.barrel().at_zero);
  section.admit(diameters_->half_mm(k));
  return section;
}

// A new lay point, with nothing of the span's on its station yet.
void StringWindow::set_down_next(std::size_t k, double x) {
  StringNode& added = movable(k);
  added.section = &admit(k, station_);
  added.section->turn_to(x);
  added.ledge.known = false;
  added.rolled = 0.0;
  if (k == 0) {
    added.rest = set_down(*added.section, x);
    return;
  }
  // The twist of the last node fades along the span, as its place does.
  added.rolled = node(k - 1).rolled / (1.0 + span_.stiffness);
  added.rest = placed(*added.section, x, node(k - 1).rest.r * drop_);
}

// The rest of the span beyond node k, to the guide. At the lay point the span leaves the spool along the tangent, and does
// not lift the fiber.
StringWindow::Link StringWindow::end_at(std::size_t k) const {
  if (k < laid_) return {span_.toward, 0.0, span_.stiffness, 0.0};
  const std::size_t ahead = k + 1 - laid_;
  const double edges = 1.0 / span_.stiffness;
  const double stiffness = 1.0 / (edges - static_cast<double>(ahead));
  const double length = (edges + 0.5) * angle_ * level_;  // to second order in an edge over the span
  const double r = level_ * rises_[ahead].cosine + length * rises_[ahead].sine;
  return {span_.toward, r, stiffness, stiffness};
}

StringWindow::Link StringWindow::link_between(std::size_t k, std::size_t other) const {
  const std::size_t edges = k > other ? k - other : other - k;
  const Resting& there = node(other).rest;
  const double stiffness = 1.0 / static_cast<double>(edges);
  return {there.x, there.r * rises_[edges].cosine, stiffness, stiffness};
}

StringWindow::Link StringWindow::link_before(std::size_t k) const {
  std::size_t before = k - 1;
  while (hangs_ahead(before)) --before;
  return link_between(k, before);
}

StringWindow::Link StringWindow::link_after(std::size_t k) const {
  std::size_t after = k + 1;
  while (hangs_ahead(after)) ++after;
  if (after < count_) return link_between(k, after);
  return end_at(k);
}

void StringWindow::place_ahead(std::size_t k, double x, double r) {
  StringNode& here = movable(k);
  const Section& section = *here.section;
  const bool clear = r > section.barrel().at(x) && !section.in_the_way(x, r) && section.between_faces(x, r) == x;
  here.rest = clear ? Resting{x, r, {}, {}} : placed(section, x, r);
  here.ledge.known = false;
}

// The string ends with the last node ahead that touches something.
void StringWindow::trim() {
  while (count_ > laid_ && node(count_ - 1).rest.lifted()) --count_;
  end_ = end_at(count_ - 1);
}

// Nodes that hang in the span ahead lie on the straight lines between those that touch something, or touch it now.
void StringWindow::straighten() {
  for (std::size_t k = laid_; k < count_; ++k) {
    if (!hangs_ahead(k)) continue;
    const Resting& from = node(k - 1).rest;
    std::size_t to = k;
    while (hangs_ahead(to)) ++to;
    if (to == count_) return;
    const double edges = static_cast<double>(to - k + 1);
    const double up = (node(to).rest.r - from.r * (1.0 + rises_[to - k + 1].over)) / edges;
    place_ahead(k, from.x + (node(to).rest.x - from.x) / edges, from.r * (1.0 + rises_[1].over) + up);
  }
}

// Lets the string end where the span last touches a turn ahead of the lay point: what stands higher than the lay point
// is met up to sqrt(2 R d) before it, from above.
void StringWindow::look_ahead() {
  trim();
  straighten();
  if (std::isinf(span_.stiffness) || span_.stiffness <= 0.0) return;
  const std::size_t ahead = count_ - laid_;
  const double room = 1.0 / span_.stiffness - 1.0;  // nodes
  const Resting end = node(count_ - 1).rest;
  const double d = section_of(count_ - 1).most_reach();
  const double along = end_.stiffness_x * (end_.x - end.x);
  const double up = end_.stiffness_r * (end_.r - end.r);
  const auto x_at = [&](std::size_t j) { return end.x + along * static_cast<double>(j); };
  const auto r_at = [&](std::size_t j) { return end.r * (1.0 + rises_[j].over) + up * static_cast<double>(j); };
  std::size_t touched = 0;
  std::size_t station = (station_ + ahead) % sections_.size();
  for (std::size_t j = 1; ahead + j < rises_.size() && static_cast<double>(ahead + j) < room; ++j) {
    if (++station >= sections_.size()) station = 0;
    Section& section = admit(count_ - 1 + j, station);
    if (r_at(j) >= highest_ + d) break;
    if (r_at(j) >= section.top() + d) continue;
    section.turn_to(x_at(j));
    if (section.in_the_way(x_at(j), r_at(j))) touched = j;
  }
  if (touched == 0) return;
  const double fades = node(count_ - 1).rolled * end_.stiffness_x;
  for (std::size_t j = 1; j <= touched; ++j) {
    StringNode& added = movable(count_);
    added.section = &sections_[(station_ + ahead + j) % sections_.size()];
    added.rolled = node(count_ - 1).rolled - fades;
    place_ahead(count_, x_at(j), r_at(j));
    ++count_;
  }
  end_ = end_at(count_ - 1);
}

void StringWindow::set_down_again() {
  count_ = laid_;
  const std::size_t first = first_movable();
  for (std::size_t k = first; k < laid_; ++k) {
    StringNode& set = movable(k);
    set.rest = placed(admit(k, k % sections_.size()), set.rest.x, set.rest.r);
    set.ledge.known = false;
  }
  disturbed_ = std::max<std::size_t>(first, 1);
}

void StringWindow::add(double x, std::uint32_t stroke, SpanPull span) {
  const std::size_t k = laid_++;
  span_ = span;
  if (laid_ > count_) {
    set_down_next(k, x);
    count_ = laid_;
  }
  movable(k).stroke = stroke;
  level_ = k == 0 ? node(k).rest.r : level_ + (node(k - 1).rest.r - level_) / static_cast<double>(sections_.size());
  if (k > 0) look_ahead();
  if (++station_ == sections_.size()) station_ = 0;
  sections_[(station_ + rises_.size()) % sections_.size()].bring_near();
  if (k == 0) return;
  relax();
  if (!std::isinf(roll_.stiffness) && k > 1 && k % roll_.every == 0) roll();
}

}  // namespace laywright
