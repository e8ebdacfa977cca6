#include "measure/findings.h"
#include "measure/gravity.h"
#include "measure/runs.h"

namespace laywright {

std::vector<Occurrence> find_gaps(const StrokeView& view) {
  const double limit = view.gap_limit();
  // What the pitch explains and what it does not are told apart, or the first would hide the second.
  Runs planned(view, FindingKind::gap), wider(view, FindingKind::gap);
  for (std::size_t k = view.first; k < view.end; ++k) {
    const double gap = view.gap_right_of(k);
    if (gap <= limit) continue;
    const double x = view.build.nodes.x(k);
    Runs& runs = is_planned_gap(view.plan, gap) ? planned : wider;
    runs.add(k, gap, x, x + gap + view.diameter());
  }
  std::vector<Occurrence> found = planned.finish();
  const std::vector<Occurrence> more = wider.finish();
  found.insert(found.end(), more.begin(), more.end());
  return found;
}

}  // namespace laywright
