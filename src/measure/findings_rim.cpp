#include "measure/findings.h"
#include "measure/runs.h"

namespace laywright {

std::vector<Occurrence> find_rim_overrun(const StrokeView& view) {
  const NodeStore& nodes = view.build.nodes;
  const double half = 0.5 * view.diameter();
  const double rim = 0.5 * view.plan.spool().flange_diameter_mm;
  Runs runs(view, FindingKind::rim_overrun);
  const auto add = [&](std::size_t k, double beyond) { runs.add(k, beyond, nodes.x(k) - half, nodes.x(k) + half); };
  bool overrun = false;
  for (std::size_t k = view.first; k < view.end; ++k) {
    if (nodes.r(k) + half <= rim) continue;
    add(k, nodes.r(k) + half - rim);
    overrun = true;
  }
  // It stopped before anything stood out.
  const bool last = view.stroke + 1 == view.build.strokes.size();
  if (!overrun && last && view.build.stopped_by == StopReason::rim) add(view.end - 1, 0.0);
  return runs.finish();
}

}  // namespace laywright
