#include "lay/lay.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "lay/guide.h"
#include "lay/lag.h"
#include "lay/slump.h"
#include "lay/string_window.h"
#include "lay/torsion.h"
#include "plan/size_estimate.h"

namespace laywright {
namespace {

// Share of a turn that can still move. Friction holds the fiber long before; a frictionless one is cut here.
constexpr double movable_turn = 0.75;

// The string is at rest when no node moves more than this, in d.
constexpr double rest_tolerance_d = 5e-5;

// A span that forgets more than all but this share of its lag from one station to the next leaves the node no choice: a
// spring as stiff as that would drag it up any flange that is not quite square.
constexpr double least_stay = 1e-4;

// The string bends by what lies so many nodes behind its first movable one.
constexpr std::size_t nodes_that_bend = 2;

// E I / T of the load-carrying core, mm^2; 0 when the plan does not say enough.
double bending_length2(const Plan& plan) {
  const Fiber& fiber = plan.fiber();
  const auto& tension = plan.wind().tension_N;
  if (!fiber.modulus_MPa || !fiber.core_diameter_mm || !tension || *tension <= 0.0) return 0.0;
  const double inertia = std::numbers::pi / 64.0 * std::pow(*fiber.core_diameter_mm, 4.0);
  return *fiber.modulus_MPa * inertia / *tension;
}

// A stretch that falls takes some steps of the fiber's rolling; steps and reach go with the length that can fall, so
// that they do not depend on the mesh.
constexpr double steps_in_critical_length = 6.0;
constexpr double reach_in_critical_lengths = 2.0;
constexpr double least_reach = 8.0;  // nodes

Rolling rolling_of(const Plan& plan, int stations, std::uint64_t seed) {
  const Torsion torsion = torsion_of(plan);
  if (!torsion.rolls) return {};
  const double step = 2.0 * std::numbers::pi / stations * middle_radius_mm(plan);
  const double critical = roll_lengths(plan, torsion).critical_mm / step;
  Rolling rolling;
  rolling.stiffness = torsion.over_tension();
  rolling.every = static_cast<std::size_t>(std::max(1.0, std::round(critical / steps_in_critical_length)));
  rolling.reach = static_cast<std::size_t>(std::max(least_reach, std::round(reach_in_critical_lengths * critical)));
  rolling.seed = seed;
  rolling.mirrored = plan.traverse().start == Side::right;
  return rolling;
}

class Winder {
 public:
  Winder(const Plan& plan, const LaySettings& settings)
      : plan_(plan),
        stations_(stations_for(plan, settings.fidelity)),
        angle_(2.0 * std::numbers::pi / stations_),
        rim_r_(0.5 * plan.spool().flange_diameter_mm),
        sections_(Section::ring(plan, stations_)),
        guide_(plan, settings.seed),
        change_(settings.change),
        window_(sections_, plan.fiber().friction, angle_, window_nodes(stations_), bending_length2(plan),
                rest_tolerance_d * plan.fiber().diameter_mm, rolling_of(plan, stations_, settings.seed),
                plan.fiber().diameter_scatter_mm > 0.0 ? &build_.diameters : nullptr) {
    build_.diameters = FiberDiameter(plan, stations_, settings.seed);
    const Spool& spool = plan.spool();
    const double d = plan.fiber().diameter_mm;
    const double rim = 0.5 * spool.flange_diameter_mm;
    const double inner = 0.5 * (spool.barrel_diameter_mm + std::min(0.0, spool.barrel_taper_mm));
    const double opening = std::tan(spool.flange_taper_rad) * (rim + d - inner) + spool.flange_runout_mm + d;
    // A cone goes on where a flange leans away from its end.
    const double lowest = inner - 0.5 * std::abs(spool.barrel_taper_mm) / spool.inside_width_mm * opening;
    build_.nodes =
        NodeStore(Grid::over(-opening, spool.inside_width_mm + opening), Grid::over(lowest, rim + 2.0 * d));
    build_.stations_per_turn = stations_;
    build_.fiber_diameter_mm = d;
    build_.seed = settings.seed;
    if (settings.gives_way && is_soft(plan, torsion_of(plan))) slump_.emplace(plan, stations_);
    build_.nodes.reserve(static_cast<std::size_t>((turns_estimate(plan.draft()) + 2.0) * stations_));
  }

  Result<Build> run(Progress& progress) {
    while (!done_) {
      lay_one();
      const std::size_t fixed = window_.first_movable();
      if (fixed > 0) deposit(fixed - 1);
      if (slump_ && !give_way(progress)) return stopped();
      if (turn_nodes_ == 0) {
        if (progress.cancelled()) return stopped();
        progress.report(share_done());
      }
    }
    progress.report(1.0);
    return std::move(build_);
  }

 private:
  [[nodiscard]] Issue stopped() const {
    Issue issue;
    issue.file = plan_.file();
    issue.what = stopped_text;
    return issue;
  }
  static int stations_for(const Plan& plan, double fidelity) {
    return std::max(16, static_cast<int>(std::lround(stations_needed(plan) * fidelity)));
  }
  static std::size_t window_nodes(int stations) {
    return static_cast<std::size_t>(std::lround(movable_turn * stations));
  }

  [[nodiscard]] double share_done() const {
    const Wind& wind = plan_.wind();
    if (wind.length_mm) return length_ / *wind.length_mm;
    if (wind.turns) return static_cast<double>(build_.nodes.size()) / (*wind.turns * stations_);
    const double barrel = plan_.spool().barrel_diameter_mm;
    return (turn_diameter_ - barrel) / (*wind.diameter_mm - barrel);
  }

  void lay_one() {
    ++stations_laid_;
    if (window_.size() == 0) {
      window_.add(guide_.x(), static_cast<std::uint32_t>(guide_.stroke()), {});
      return;
    }
    // A change waits for a station: pieces of the guide's motion are cut nowhere else, so nothing that is not changed rounds
    // differently.
    if (!change_.nothing() && static_cast<double>(stations_laid_ - 2) >= change_.from_turn * stations_) {
      guide_.change(change_);
      change_ = {};
    }
    const Resting& tip = window_.last().rest;
    const double free_length = plan_.traverse().free_length_mm;
    double x = tip.x;
    double stays = 1.0;
    for (double left = angle_; left > 1e-12 * angle_;) {
      const GuidePiece piece = guide_.advance(left);
      left -= piece.angle;
      const Lagged lagged = lagged_behind(x, piece, tip.r, free_length);
      x = lagged.x;
      stays *= lagged.stays;
    }
    // The span as a spring that would hold the lay point where its lag takes it.
    SpanPull span{x, HUGE_VAL};
    if (stays > least_stay) span = {tip.x + (x - tip.x) / (1.0 - stays), (1.0 - stays) / stays};
    window_.add(x, static_cast<std::uint32_t>(guide_.stroke()), span);
  }

  // Makes node k part of its section and of the build.
  void deposit(std::size_t k) {
    const StringNode& node = window_.node(k);
    // Before the grids: far above the rim they have no place for it.
    if (node.rest.r + build_.half_mm(k) > rim_r_)
      return finish(StopReason::rim, static_cast<double>(k > 0 ? k - 1 : 0) / stations_);
    const Grid& xs = build_.nodes.x_grid();
    const Grid& rs = build_.nodes.r_grid();
    const std::uint32_t x_code = xs.nearest(node.rest.x);
    const std::uint32_t r_code = rs.nearest(node.rest.r) + 1U;  // never lower than computed
    const double x = xs.decode(x_code);
    const double r = rs.decode(r_code);
    const bool rides = rides_up(node);
    const Support support = support_of(node.rest);
    build_.nodes.push(x_code, r_code, support, rides);
    if (build_.strokes.size() <= node.stroke) {
      build_.strokes.push_back({k, node.stroke % 2 == 0 ? first_direction() : -first_direction()});
    }
    node.section->insert(x, r, node.stroke);
    window_.node(k + 1).section->bring_near();
    window_.fix(k, x, r);
    if (slump_) slump_->laid(r);
    if (k > 0) add_edge(k, x, r);
    last_x_ = x;
    last_r_ = r;
    if (!done_) check_turn(k, r);
  }

  [[nodiscard]] int first_direction() const { return plan_.traverse().start == Side::left ? 1 : -1; }

  static Support support_of(const Resting& rest) {
    if (rest.lifted()) return Support::none;
    if (rest.in_valley()) return Support::valley;
    switch (rest.left.kind) {
      case Contact::Kind::barrel: return Support::barrel;
      case Contact::Kind::left_face:
      case Contact::Kind::right_face: return Support::flange;
      default: return Support::turn;
    }
  }

  [[nodiscard]] bool rides_up(const StringNode& node) const {
    const Section& section = *node.section;
    const double height = ride_up_d * build_.fiber_diameter_mm;
    for (const Contact& contact : {node.rest.left, node.rest.right}) {
      if (contact.kind != Contact::Kind::circle) continue;
      const Section::Exposed& below = section[contact.circle];
      if (below.stroke == node.stroke && node.rest.r - below.r > height) return true;
    }
    return false;
  }

  // After each stroke, and at the end: laid turns of a soft fiber. The length wound is that of the fiber as it was laid.
  bool give_way(Progress& progress) {
    if (build_.strokes.size() == strokes_settled_ && !done_) return true;
    strokes_settled_ = build_.strokes.size();
    const Slump::Outcome outcome = slump_->give_way(build_, sections_, progress);
    if (outcome != Slump::Outcome::moved) return outcome == Slump::Outcome::stayed;
    const std::size_t last = build_.nodes.size() - 1;
    for (std::size_t k = last < nodes_that_bend ? 0 : last - nodes_that_bend; k <= last; ++k) {
      window_.fix(k, build_.nodes.x(k), build_.nodes.r(k));
    }
    last_x_ = build_.nodes.x(last);
    last_r_ = build_.nodes.r(last);
    window_.set_down_again();
    return true;
  }

  // Adds the edge from the node before, up to the end of the wind if that lies on it. Its length is the arc, and
  // what its slope adds, in a form that does not cancel.
  void add_edge(std::size_t k, double x, double r) {
    const double arc = 0.5 * (last_r_ + r) * angle_;
    const double across = (x - last_x_) * (x - last_x_) + (r - last_r_) * (r - last_r_);
    const double edge = arc + across / (arc + std::sqrt(arc * arc + across));
    const double start = static_cast<double>(k - 1);
    const Wind& wind = plan_.wind();
    if (wind.length_mm && length_ + edge >= *wind.length_mm) {
      const double share = (*wind.length_mm - length_) / edge;
      length_ = *wind.length_mm;
      finish(StopReason::length, (start + share) / stations_);
    } else if (wind.turns && start + 1.0 >= *wind.turns * stations_) {
      length_ += edge * (*wind.turns * stations_ - start);
      finish(StopReason::turns, *wind.turns);
    } else {
      length_ += edge;
    }
  }

  // Once a turn, the diameter that the last turn reached.
  void check_turn(std::size_t k, double r) {
    turn_r_ += r;
    if (++turn_nodes_ < stations_) return;
    turn_nodes_ = 0;
    turn_diameter_ = 2.0 * turn_r_ / stations_ + build_.fiber_diameter_mm;
    turn_r_ = 0.0;
    const auto& wanted = plan_.wind().diameter_mm;
    if (wanted && turn_diameter_ >= *wanted) finish(StopReason::diameter, static_cast<double>(k) / stations_);
  }

  void finish(StopReason reason, double turns) {
    done_ = true;
    build_.stopped_by = reason;
    build_.turns = turns;
    build_.length_mm = length_;
  }

  const Plan& plan_;
  int stations_;
  double angle_;
  double rim_r_;
  std::vector<Section> sections_;
  Guide guide_;
  MidwindChange change_;  // that is still to come
  std::size_t stations_laid_ = 0;
  Build build_;
  StringWindow window_;              // knows the diameters of the build
  std::optional<Slump> slump_;       // of a soft fiber
  std::size_t strokes_settled_ = 0;  // when it last gave way
  bool done_ = false;
  double length_ = 0.0, last_x_ = 0.0, last_r_ = 0.0;
  int turn_nodes_ = 0;  // fixed in the current turn
  double turn_r_ = 0.0, turn_diameter_ = 0.0;
};

}  // namespace

Result<Build> lay(const Plan& plan, const LaySettings& settings, Progress& progress) {
  return Winder(plan, settings).run(progress);
}

}  // namespace laywright
