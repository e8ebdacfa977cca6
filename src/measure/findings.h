// What is found on a build, each kind by one definition. `d` is the fiber diameter; limits are the plan's.
//
// How to add a finding:
//   1. Name it: FindingKind in measurements.h, its stable name in name_of (findings.cpp), its weight in gravity.cpp.
//   2. Detect it: a file findings_KIND.cpp with a function that takes a StrokeView (called once per stroke) or the
//      whole build, and returns Occurrences: one for each place, without a thought for how many there are. Runs
//      joins nodes along the fiber. Its definition and its size go beside its declaration below.
//   3. Call it: find_in_stroke or find_on_build (findings.cpp). Merging, place and order follow by themselves.
//   4. Tell it: a sentence in sentences.cpp: what, where, how large, what it will do later.
//   5. Test it: present at a known size, absent within its limit (tests/measure/findings_*).
#pragma once

#include <array>
#include <complex>
#include <map>
#include <optional>
#include <tuple>
#include <vector>

#include "measure/flange_reach.h"
#include "measure/merge.h"
#include "measure/occurrence.h"
#include "measure/stroke_view.h"
#include "measure/surface.h"
#include "plan/guide_cycle.h"

namespace laywright {

// gap: two neighbours in x of one layer, at one station, more than the limit apart (centre to centre less d).
// Size: that distance. Gaps that the plan's pitch explains are merged apart from wider ones.
[[nodiscard]] std::vector<Occurrence> find_gaps(const StrokeView& view);

// flange_gap: the outermost turn of a reversal stays away from the flange (flange_reach.h). Size: how far, beyond
// what the pitch makes unavoidable.
[[nodiscard]] std::vector<Occurrence> find_flange_gap(const StrokeView& view, const FlangeReach& reach);

// ride_up: nodes that the lay model marked as climbing on a turn of their own layer. Size: height over the lower of
// their neighbours in x that lie within d, at least d/2.
[[nodiscard]] std::vector<Occurrence> find_ride_ups(const StrokeView& view);

// dropped_turn: a node more than .8 d below its layer's local mean (.8 to .87 d is the rise of a nested layer at
// pitches up to 1.2 d), and more than d/2 below a neighbour in x: it fell, where a layer that sinks towards an edge
// does not. Only in layers whose pitch is below 2 d: at coarser pitch there is no closed layer to drop out of. Size:
// depth below the local mean.
[[nodiscard]] std::vector<Occurrence> find_dropped_turns(const StrokeView& view);

// bridge: fiber carried by nothing over an angle phi that is longer than a crossing explains. A straight run over
// phi passes R phi^2 / 8 below the circle through its ends, so what lies under it must be a hole of at least that
// depth. An ordinary crossing descends at most one layer, so runs over a hole of less than 2 d are no finding.
// Size: the depth R phi^2 / 8. Detail: phi, deg.
[[nodiscard]] std::vector<Occurrence> find_bridges(const StrokeView& view);

// ribbon: strokes of pitch over 2 d that crowd where earlier ones lie, m double strokes before (m = 1 to most_starts), either
//   - stacked: three fifths of the stroke lie within d/2 in x of a turn of that earlier one, where the same holds for
//     that one too: three strokes or more on one another (fiber that grips). Size: height of the stack; or
//   - crowded: the guide comes back to within d/2 of its place after m double strokes, and the phases x / pitch - angle
//     of all nodes laid so far in this direction, over eight strokes or more, have a mean resultant length of a fifth
//     or more at that pattern (a round turn on a round turn rolls off and comes to lie beside it). Size: how much
//     higher the stroke lies in the crowded half of the pattern than in the other, 0 where it does not.
// One occurrence per stroke. Detail: turns of the spool per double stroke.
class RibbonFinder {
 public:
  [[nodiscard]] std::vector<Occurrence> find(const StrokeView& view);

 private:
  static constexpr std::size_t most_double_strokes = most_starts;
  using Phases = std::array<std::complex<double>, most_double_strokes>;  // mean of exp(2 pi i m phase)
  [[nodiscard]] double stack_height(const StrokeView& view);
  // None where nothing is crowded.
  [[nodiscard]] std::optional<double> ridge_height(const StrokeView& view, double turns_per_double_stroke);

  // For each stroke and m: height of the stack under it, mm; 0 where nothing is stacked.
  std::vector<std::vector<double>> heights_;
  std::array<Phases, 2> phases_{};  // summed over the strokes of a direction: to the left, to the right
  std::array<std::size_t, 2> strokes_seen_{};
};

// pile_up, edge_valley: after the last whole stroke, the ridge or the valley beside a flange (edge_shape.h) is more than
// the limit. Size: that ridge or valley. One occurrence per side: it lasts from the first layer after which the edge stays
// beyond the limit, but for a few layers, to the last whole one. Edges that come to lie within the limit again are none.
[[nodiscard]] std::vector<Occurrence> find_edges(const Plan& plan, const Build& build, const Surface& surface,
                                                 std::size_t last_whole);

// rim_overrun: fiber surface beyond the flange radius, or a wind that stopped because it would have passed it.
// Size: how far beyond; 0 when it stopped in time.
[[nodiscard]] std::vector<Occurrence> find_rim_overrun(const StrokeView& view);

// All of them, merged, worded, gravest first.
class FindingsMaker {
 public:
  FindingsMaker(const Plan& plan, const Build& build, const FiberLine& line);

  // Strokes in their order. `reach`: the reversal at which the stroke begins.
  void find_in_stroke(const StrokeView& view, const std::optional<FlangeReach>& reach);
  void find_on_build(const Surface& surface, std::optional<std::size_t> last_whole);
  [[nodiscard]] std::vector<Finding> finish();

 private:
  struct Key {
    FindingKind kind;
    std::optional<Side> side;
    bool planned;  // explained by the plan's pitch

    [[nodiscard]] bool operator<(const Key& other) const {
      return std::tie(kind, side, planned) < std::tie(other.kind, other.side, other.planned);
    }
  };

  void add(const std::vector<Occurrence>& occurrences);

  const Plan& plan_;
  const Build& build_;
  const FiberLine& line_;
  RibbonFinder ribbons_;
  std::map<Key, Merger> mergers_;
};

}  // namespace laywright
