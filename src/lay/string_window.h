// The stretch of fiber that can still move: a taut string on the spool, from the last fixed node to the free span.
//
// The string takes the path of least length, to second order the least of the integral of
// r + (x'^2 + r'^2) / (2 R) over the spool's angle, above the offset surface, against Coulomb friction (MODEL.md).
// With nodes an angle a apart and R cancelled, a node is pulled toward the middle of its neighbours in x, and in r
// toward the middle lowered by R a^2 / 2: a force of the same stiffness in both. Each node in turn settles under
// that pull, back and forth, until none moves more than the tolerance. Where that takes many sweeps (long stretches
// that slide or hang together) a Newton step solves for all of them at once, and the sweeps go on from there.
//
// The free span meets a turn that stands higher than the lay point before the lay point gets there, from above. Where it
// does, the string goes on ahead of the lay point to the last place that touches; what hangs between two places that
// touch is a straight line, and counts as one long edge.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "lay/band_matrix.h"
#include "lay/fiber_diameter.h"
#include "lay/settle.h"

namespace laywright {

// The cap that alone carries a node, kept at hand: most moves stay on it.
struct Ledge {
  double x = 0.0, r = 0.0;         // centre of the circle
  double reach = 0.0;              // its radius
  double left = 0.0, right = 0.0;  // x where the surface leaves the cap
  bool known = false;              // x, r hold
  bool ends_known = false;         // left, right hold
};

struct StringNode {
  Resting rest;
  std::uint32_t stroke = 0;
  Section* section = nullptr;  // of its station
  // How far the fiber has rolled to the right: d/2 times the angle by which it has turned about its own axis.
  double rolled = 0.0;
  Ledge ledge;
};

// The pull of the free span on the lay point: toward x = toward with `stiffness` times that of a string edge
// (infinity: the lay point is at x).
struct SpanPull {
  double toward = 0.0;
  double stiffness = 0.0;
};

// A place of the straight span, some nodes ahead of the lay point.
struct SpanRise {
  double over = 0.0;                // how far it is from the axis more than the lay point, as a share of the latter
  double cosine = 1.0, sine = 0.0;  // of the angle from the lay point
};

// How a round fiber rolls.
struct Rolling {
  double stiffness = HUGE_VAL;  // against twist, 4 G J / d^2, over the tension; infinity: it does not roll
  std::size_t every = 1;        // nodes from one rolling step to the next
  std::size_t reach = 0;        // nodes from the last one that may roll
  std::uint64_t seed = 0;       // of ties
  bool mirrored = false;        // ties fall to the other side: the wind begins at the right flange
};

class StringWindow {
 public:
  // angle: between nodes, rad. length: nodes that can move. bending: (E I / T) / (R a)^2 is bending_length2 / (R a)^2,
  // with bending_length2 = E I / T in mm^2.
  // `diameters`: of a fiber whose diameter scatters, drawn on as it is laid; it stays where it is. Null: there is no scatter.
  StringWindow(std::vector<Section>& sections, double friction, double angle, std::size_t length,
               double bending_length2, double tolerance, Rolling roll = {}, FiberDiameter* diameters = nullptr);

  // Adds the next node, with the lay point where the span would set it down, and lets the string come to rest.
  void add(double x, std::uint32_t stroke, SpanPull span);

  [[nodiscard]] std::size_t size() const { return laid_; }  // nodes ever added
  [[nodiscard]] const StringNode& node(std::size_t k) const { return ring_[k & mask_]; }
  [[nodiscard]] const StringNode& last() const { return node(laid_ - 1); }
  // Nodes of the span ahead of the lay point, up to the last that touches a turn.
  [[nodiscard]] std::size_t ahead() const { return count_ - laid_; }
  // Nodes before this one are fixed.
  [[nodiscard]] std::size_t first_movable() const { return laid_ > length_ ? laid_ - length_ : 0; }
  // Where a fixed node was stored exactly; later pulls use it.
  void fix(std::size_t k, double x, double r) {
    StringNode& n = ring_[k & mask_];
    n.rest.x = x;
    n.rest.r = r;
    if (r > highest_) highest_ = r;
  }

  // What the string lies on has changed: sets it down again, no lower than it was, to come to rest with the next node.
  void set_down_again();

 private:
  struct Force {
    double x, r;
  };
  struct Pull {
    double x, r;
  };
  // How a node can move in a Newton step: not at all, along its contact (to the right: way 1, left: -1), or freely.
  struct Freedom {
    enum class Kind : std::uint8_t { held, slides, free } kind = Kind::held;
    Normal normal;
    Contact contact;
    int way = 1;
  };

  // A node in a rolling step. Ways and forces along its contact, to the right; forces as string_force_on().
  struct RollRow {
    // turns: freely, in place.
    enum class State : std::uint8_t { held, turns, rolls };

    State state = State::held;
    bool falls = false;  // from a place where there is no rest
    Contact contact;
    Normal normal;
    int way = 0;         // 1, -1: to the right or left only; 0: either
    double pull = 0.0;   // of the string
    double bears = 0.0;  // what friction bears there; what is left of it hastens a step
    double twist = 0.0, string = 0.0, stiffness = 0.0;  // what twist asks; what string and twist resist a step
    // The solution: how far it turns, as the length that it rolls, and what twist asks then.
    double turns = 0.0, twist_after = 0.0;

    void rolls_on(const Contact& on, const Normal& its_normal, int only_way, double pulled) {
      state = State::rolls;
      contact = on;
      normal = its_normal;
      way = only_way;
      pull = pulled;
    }
    [[nodiscard]] bool moves() const { return state == State::rolls; }
    [[nodiscard]] double goes() const { return moves() ? turns : 0.0; }
    // What the string passes on of a move of the node beside it.
    [[nodiscard]] double along(const RollRow& beside) const {
      return normal.x * beside.normal.x + normal.r * beside.normal.r;
    }
    bool agrees(double beside);
  };

  // A stretch of the string from a node to the next that carries it, over those of the span that hang between.
  struct Link {
    double x = 0.0, r = 0.0;                      // where it pulls, seen from the node's own station
    double stiffness_x = 1.0, stiffness_r = 1.0;  // over that of an edge
  };

  static Resting placed(const Section& section, double x, double r);
  void set_down_next(std::size_t k, double x);
  Section& admit(std::size_t k, std::size_t station);
  [[nodiscard]] bool hangs_ahead(std::size_t k) const { return k >= laid_ && k < count_ && node(k).rest.lifted(); }
  [[nodiscard]] Link link_between(std::size_t k, std::size_t other) const;
  [[nodiscard]] Link link_before(std::size_t k) const;
  [[nodiscard]] Link link_after(std::size_t k) const;
  [[nodiscard]] Link end_at(std::size_t k) const;
  void look_ahead();
  void trim();
  void straighten();
  void place_ahead(std::size_t k, double x, double r);
  void relax();
  void roll();
  [[nodiscard]] RollRow rolling_of(std::size_t k) const;
  [[nodiscard]] bool falls_right(std::size_t k) const;
  bool balance_rolls(std::size_t low);
  bool solve_rolls();
  bool solve_rolls_between(std::size_t first, std::size_t end);
  static bool roll_on_ledge(StringNode& node, double way);
  double roll_on(std::size_t k, const RollRow& row);
  [[nodiscard]] std::size_t first_rolling(std::size_t base, std::size_t tip) const;
  bool newton_step(std::size_t low, std::size_t high);
  bool solve_newton_step(std::size_t low, std::size_t high);
  void move_by_newton_step(std::size_t k, const Freedom& freedom, double x, double r);
  [[nodiscard]] Freedom freedom_of(std::size_t k) const;
  [[nodiscard]] Force string_force_on(std::size_t k) const;  // without bending
  [[nodiscard]] Force force_on(std::size_t k) const;
  [[nodiscard]] double string_stiffness_of(std::size_t k) const;  // without bending
  [[nodiscard]] double stiffness_of(std::size_t k) const;
  [[nodiscard]] Force force_ahead(std::size_t k) const;
  [[nodiscard]] double stiffness_ahead(std::size_t k) const;
  [[nodiscard]] double bending_at(std::size_t k) const;
  [[nodiscard]] double bending_force(std::size_t k) const;
  [[nodiscard]] double second_difference(std::size_t k) const;
  [[nodiscard]] Pull pull_on(std::size_t k) const;
  bool update(std::size_t k);
  static bool find_ledge(StringNode& node, const Section& section);
  static void find_ends(StringNode& node, const Section& section);
  bool settle_on_ledge(StringNode& node, const Section& section, Pull pull) const;
  [[nodiscard]] StringNode& movable(std::size_t k) { return ring_[k & mask_]; }
  [[nodiscard]] const Section& section_of(std::size_t k) const { return *node(k).section; }

  std::vector<Section>& sections_;
  FrictionCone friction_;
  double angle_, drop_;
  std::size_t length_;
  double bending_length2_, tolerance_;
  std::vector<StringNode> ring_;
  // Nodes up to the lay point, and with those of the span ahead of it, up to the last that touches something.
  std::size_t mask_ = 0, laid_ = 0, count_ = 0;
  std::size_t station_ = 0;  // of the next node to be laid
  SpanPull span_;
  Link end_;                     // what holds the last node
  double level_ = 0.0;           // mean radius of the last turn or so: the guide stands where its tangent ends
  double highest_ = 0.0;         // of all that lies on the spool
  std::vector<SpanRise> rises_;  // of the places ahead
  BandMatrix matrix_;
  std::vector<double> moves_;  // x and r of each node in turn; in a rolling step how far it rolls
  std::vector<Freedom> freedoms_;
  Rolling roll_;
  FiberDiameter* diameters_;
  std::vector<RollRow> rolls_;
  std::size_t still_rolls_ = 0;                           // oldest node that the last rolling step moved
  std::size_t disturbed_ = static_cast<std::size_t>(-1);  // the same, until the sweeps have seen it
};

}  // namespace laywright
