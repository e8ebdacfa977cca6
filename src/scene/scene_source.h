// What scenes of one build are made from: the plan, the build, its measurements, and what is looked up often. Made
// once per build (about a fifth of a second for 12 million nodes; fit for a background thread), then only read: any
// number of threads may make scenes from it at once.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "lay/build.h"
#include "measure/fiber_line.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"
#include "scene/guide_track.h"
#include "scene/late_payoff.h"
#include "scene/shell.h"
#include "scene/turn_index.h"
#include "scene/view.h"

namespace laywright {

class SceneSource {
 public:
  // Precondition: the build was laid from the plan and has at least one node; measurements are of it, or empty when
  // they are not known yet (then there are no findings and no dimension of the diameter).
  SceneSource(Plan plan, std::shared_ptr<const Build> build, std::shared_ptr<const Measurements> measurements,
              const ShellSettings& settings = {});

  [[nodiscard]] const Plan& plan() const { return plan_; }
  [[nodiscard]] const Build& build() const { return *build_; }
  [[nodiscard]] const Measurements& measurements() const { return *measurements_; }
  [[nodiscard]] const FiberLine& line() const { return line_; }
  [[nodiscard]] const TurnIndex& turns() const { return turns_; }
  [[nodiscard]] const ShellIndex& shells() const { return shells_; }
  [[nodiscard]] const GuideTrack& guide() const { return guide_; }

  // How hard each node is to be drawn off, in times the pull of winding: the first time it takes as long as late_payoff.h says. Null
  // when cancelled.
  [[nodiscard]] LatePayoff::Forces payoff_forces(DrawOff way, Progress& progress) const {
    return payoff_->forces(plan_, *build_, way, progress);
  }
  // Whether payoff_forces would give them at once.
  [[nodiscard]] bool knows_payoff(DrawOff way) const { return payoff_->known(way) != nullptr; }

  [[nodiscard]] std::size_t stations() const { return static_cast<std::size_t>(build_->stations_per_turn); }
  [[nodiscard]] double d() const { return build_->fiber_diameter_mm; }
  // Radius of the bare barrel, outside the width its nearer end.
  [[nodiscard]] double barrel_radius(double x_mm) const;

  // Index of the stroke that laid a node, as Build::stroke_of, at a cost that does not grow with their number.
  [[nodiscard]] std::size_t stroke_of(std::size_t node) const;

 private:
  Plan plan_;
  std::shared_ptr<const Build> build_;
  std::shared_ptr<const Measurements> measurements_;
  FiberLine line_;
  TurnIndex turns_;
  std::vector<std::uint32_t> stroke_at_turn_;
  ShellIndex shells_;
  GuideTrack guide_;
  std::shared_ptr<LatePayoff> payoff_ = std::make_shared<LatePayoff>();
};

// The turn of the spool at which so much fiber is laid; brought into the wind. The inverse of length_at_turn.
[[nodiscard]] double turn_at_length(const SceneSource& source, double length_mm);
[[nodiscard]] double length_at_turn(const SceneSource& source, double turn);

// The fiber that a view shows: nodes [first, end) and the pieces between them. Nodes from `end` up to `wind_end` are
// laid in this view but outside the chosen layers, as are those before `first`.
struct VisibleFiber {
  std::size_t first = 0, end = 0;  // first == end when nothing is shown
  std::size_t wind_end = 0;        // one past the last node laid

  [[nodiscard]] bool shows(std::size_t node) const { return node >= first && node < end; }
  [[nodiscard]] bool shows_piece(std::size_t node) const { return node >= first && node + 1 < end; }
};

[[nodiscard]] VisibleFiber visible_fiber(const SceneSource& source, const View& view);

// The sectors that wedge and axial cut take away: none, one or two, apart from each other, each with `from` in
// [0, 2 pi) and `to` up to a full turn beyond. A sector of a full turn takes everything away.
[[nodiscard]] std::vector<Sector> removed_sectors(const View& view);

[[nodiscard]] bool is_removed(const std::vector<Sector>& removed, double angle);

// The shell of the fiber that a view shows, coloured. With Outside::faded, layers below the chosen ones stay, with a
// faded colour; with gone they are bare. A slit between two turns that is narrower than a column is closed, since
// whether a column's middle meets it is chance. Cuts are not applied: the shell is whole around the spool and along x,
// and what draws it leaves out what is removed. The memory of a shell that is no longer needed can be used again.
[[nodiscard]] Shell make_shell(const SceneSource& source, const View& view, Shell recycled = {});

// The shell of everything laid, to be drawn as a veil over the chosen layers; none unless view.outside is faded and
// something lies over them.
[[nodiscard]] std::optional<Shell> make_veil(const SceneSource& source, const View& view);

}  // namespace laywright
