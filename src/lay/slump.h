// Laid turns of a soft fiber that give way near a slope.
//
// A laid turn that sinks grows slack, and a stiff fiber is slack before it has got anywhere: what lies, stays (MODEL.md). A
// soft one (is_soft, torsion.h) may sink by half a diameter and more and still be taut. So after each stroke the turns of
// its last strokes, near places where the surface slopes, are let go until what carries them holds them again.
#pragma once

#include <cstddef>
#include <vector>

#include "base/progress.h"
#include "lay/build.h"
#include "lay/section.h"
#include "lay/torsion.h"
#include "plan/lay_plan.h"

namespace laywright {

class Slump {
 public:
  // Precondition: the plan is sound, its fiber soft.
  Slump(const Plan& plan, int stations);

  // The next node has been laid at r.
  void laid(double r) { laid_r_.push_back(r); }

  enum class Outcome { stayed, moved, stopped };

  // Lets turns give way: moves nodes of the build, with what carries them, and makes the sections anew where it did. The
  // first and the last node stay. No two centres come nearer than before. Stopped when cancelled: then nothing moved.
  [[nodiscard]] Outcome give_way(Build& build, std::vector<Section>& sections, Progress& progress);

 private:
  [[nodiscard]] std::vector<bool> near_slopes(const std::vector<Section>& sections) const;  // for each d of x
  [[nodiscard]] bool in(const std::vector<bool>& near, double x) const;
  struct Moved;
  void lay_anew(Build& build, std::vector<Section>& sections, std::size_t oldest, const std::vector<Moved>& moved);

  double d_, friction_;
  bool rolls_;
  double slack_mm_, twist_over_tension_, radius_, left_end_, width_;
  std::vector<Section> bare_;
  std::vector<double> laid_r_;
};

}  // namespace laywright
