// One Newton step for a whole stretch of nodes of a string window.
//
// Unknown are the moves (x, r) of each node. A held node does not move. A free one comes into balance. A sliding one
// moves along its contact, and its force comes to the edge of the friction cone: b F = 0 with b = t + mu n for a slide
// along t. The rounding of a cap under a sliding node is left out: it would make the step longer, and a node that has
// slid too far is not let back by friction. Nodes that the step would slide backwards are held, and the step is taken
// again without them.
#include <cmath>

#include "lay/slide.h"
#include "lay/string_window.h"

namespace laywright {
namespace {

constexpr int most_rounds = 4;

// Forces within this share of the cone's edge count as sliding.
constexpr double edge_tolerance = 1e-6;

}  // namespace

StringWindow::Freedom StringWindow::freedom_of(std::size_t k) const {
  const Resting& rest = node(k).rest;
  if (rest.lifted()) return {Freedom::Kind::free, {}, {}, 1};
  const Force force = force_on(k);
  const Section& section = section_of(k);
  const double mu = friction_.mu;
  const auto slides = [&](const Contact& contact, int way) {
    const Normal n = normal_of(section, contact, rest.x, rest.r);
    const double press = -(force.x * n.x + force.r * n.r);
    const double along = way * (force.x * n.r - force.r * n.x);
    if (mu == 0.0) return true;
    return press >= 0.0 && along > 0.0 && along >= mu * press * (1.0 - edge_tolerance);
  };
  if (!(rest.in_valley() && mu == 0.0) && slides(rest.right, 1)) {
    return {Freedom::Kind::slides, normal_of(section, rest.right, rest.x, rest.r), rest.right, 1};
  }
  if (!(rest.in_valley() && mu == 0.0) && slides(rest.left, -1)) {
    return {Freedom::Kind::slides, normal_of(section, rest.left, rest.x, rest.r), rest.left, -1};
  }
  return {};
}

// Fills moves_ for the nodes low..high as freedoms_ lets them move.
bool StringWindow::solve_newton_step(std::size_t low, std::size_t high) {
  const std::size_t nodes = high - low + 1;
  const bool bends = bending_length2_ > 0.0;
  matrix_.reset(2 * nodes, bends ? 5 : 3);
  moves_.assign(2 * nodes, 0.0);
  const std::size_t tip = count_ - 1;
  for (std::size_t i = 0; i < nodes; ++i) {
    const std::size_t k = low + i;
    const Freedom& freedom = freedoms_[i];
    const std::size_t row = 2 * i;
    if (freedom.kind == Freedom::Kind::held) {
      matrix_.at(row, row) = 1.0;
      matrix_.at(row + 1, row + 1) = 1.0;
      continue;
    }
    // Derivatives of the force on k: along x by the x of k - 2 .. k + 2, along r by the r of k - 1 .. k + 1.
    double by_x[5] = {0.0, 1.0, k == tip ? -1.0 - end_.stiffness_x : -2.0, k == tip ? 0.0 : 1.0, 0.0};
    const double by_r[3] = {drop_, k == tip ? -1.0 - end_.stiffness_r : -2.0, k == tip ? 0.0 : drop_};
    if (bends && k < laid_) {
      const double bend = bending_at(k);
      const double weight[3] = {1.0, -2.0, 1.0};
      for (int m = -1; m <= 1; ++m) {
        const std::size_t at = k + static_cast<std::size_t>(m + 1) - 1;
        if (at == 0 || at + 1 >= laid_) continue;
        for (int j = -1; j <= 1; ++j) by_x[2 + m + j] -= bend * weight[m + 1] * weight[j + 1];
      }
    }
    const Force force = force_on(k);
    // Rows: one equation along `first`, one along `second`; a slide's second is that it keeps to its contact.
    Force first{1.0, 0.0};
    const bool slides = freedom.kind == Freedom::Kind::slides;
    if (slides) {
      const Normal& n = freedom.normal;
      first = {freedom.way * n.r + friction_.mu * n.x, -freedom.way * n.x + friction_.mu * n.r};
    }
    // A wall under the node would leave the first pivot empty: the two rows change places there.
    const bool steep = slides && std::abs(freedom.normal.x) > std::abs(freedom.normal.r);
    const std::size_t balance = steep ? row + 1 : row;
    const std::size_t other = steep ? row : row + 1;
    for (int j = -2; j <= 2; ++j) {
      const std::size_t column_node = i + static_cast<std::size_t>(j + 2) - 2;
      if (column_node >= nodes) continue;
      const double dx = by_x[2 + j];
      const double dr = j >= -1 && j <= 1 ? by_r[1 + j] : 0.0;
      if (dx == 0.0 && dr == 0.0) continue;
      matrix_.at(balance, 2 * column_node) += first.x * dx;
      if (dr != 0.0) matrix_.at(balance, 2 * column_node + 1) += first.r * dr;
      if (!slides && dr != 0.0) matrix_.at(other, 2 * column_node + 1) += dr;
    }
    moves_[balance] = -(first.x * force.x + first.r * force.r);
    if (slides) {
      matrix_.at(other, row) = freedom.normal.x;
      matrix_.at(other, row + 1) = freedom.normal.r;
    } else {
      moves_[other] = -force.r;
    }
  }
  return matrix_.solve(moves_);
}

void StringWindow::move_by_newton_step(std::size_t k, const Freedom& freedom, double x, double r) {
  Resting& rest = movable(k).rest;
  const Section& section = section_of(k);
  movable(k).ledge.known = false;
  if (freedom.kind == Freedom::Kind::free) {
    settle(section, rest, rest.x + x, rest.r + r, friction_);
    return;
  }
  // Drawn along without friction, pressed on enough to follow the surface and to stop in a valley.
  const double half = 0.5 * section.fiber_diameter();
  const double to_x = rest.x + x - half * freedom.normal.x;
  const double to_r = rest.r + r - half * freedom.normal.r;
  rest.left = rest.right = freedom.contact;
  settle(section, rest, to_x, to_r, FrictionCone(0.0));
}

bool StringWindow::newton_step(std::size_t low, std::size_t high) {
  freedoms_.clear();
  for (std::size_t k = low; k <= high; ++k) freedoms_.push_back(freedom_of(k));
  for (int round = 0; round < most_rounds; ++round) {
    if (!solve_newton_step(low, high)) return false;
    bool again = false;
    for (std::size_t i = 0; i < freedoms_.size(); ++i) {
      Freedom& freedom = freedoms_[i];
      if (freedom.kind != Freedom::Kind::slides) continue;
      const double along = moves_[2 * i] * freedom.normal.r - moves_[2 * i + 1] * freedom.normal.x;
      if (along * freedom.way >= 0.0 || friction_.mu == 0.0) continue;
      freedom = {};
      again = true;
    }
    if (again) continue;
    for (std::size_t i = 0; i < freedoms_.size(); ++i) {
      if (freedoms_[i].kind != Freedom::Kind::held)
        move_by_newton_step(low + i, freedoms_[i], moves_[2 * i], moves_[2 * i + 1]);
    }
    return true;
  }
  return false;
}

}  // namespace laywright
