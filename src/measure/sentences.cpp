#include "measure/sentences.h"

#include <fmt/format.h>

#include <cmath>

#include "base/quantity_text.h"
#include "measure/gravity.h"
#include "measure/phrases.h"

namespace laywright {

namespace {

struct Told {
  const Plan& plan;
  const Build& build;
  const Finding& finding;
  const Cluster& cluster;

  [[nodiscard]] double width() const { return plan.spool().inside_width_mm; }
  [[nodiscard]] std::string size() const { return in_mm_and_d(finding.size_mm, build.fiber_diameter_mm); }
  [[nodiscard]] std::string layers() const { return layers_of(finding); }
  [[nodiscard]] bool once() const { return finding.occurrences == 1; }

  [[nodiscard]] std::string worst_place() const {
    return place_of(build.nodes.x(cluster.extent.worst_node), width(), build.fiber_diameter_mm);
  }
  [[nodiscard]] std::string times() const { return count_of(finding.occurrences); }

  // Where a single one is: "43 mm from the left flange, over 120 degrees of the spool".
  [[nodiscard]] std::string here() const { return fmt::format("{}, {}", worst_place(), round_of(finding)); }

  // Where several are: "in 14 places in layers 3 to 9 (the worst in layer 7, 43 mm from the left flange)".
  [[nodiscard]] std::string places() const {
    if (finding.layer == finding.last_layer) {
      return fmt::format("in {} places in {} (the worst {})", times(), layers(), worst_place());
    }
    return fmt::format("in {} places in {} (the worst in layer {}, {})", times(), layers(), cluster.worst_layer,
                       worst_place());
  }
};

std::string gap(const Told& t) {
  if (is_planned_gap(t.plan, t.finding.size_mm)) {
    return fmt::format(
        "The turns of {} stand up to {} apart because the pitch of the plan is wider than the fiber: the turns of "
        "the next layer sink in between them, so the layers mix, and the wind becomes looser than a close one.",
        t.layers(), t.size());
  }
  const char* later = "turns of the layers above can fall in and be trapped there when the fiber is drawn off";
  if (t.once()) {
    return fmt::format("Two neighbouring turns of {} leave a gap of {} between them, {}: {}.", t.layers(), t.size(),
                       t.here(), later);
  }
  return fmt::format("Neighbouring turns leave gaps of up to {} between them {}: {}.", t.size(), t.places(), later);
}

std::string flange_gap(const Told& t) {
  const char* side = name_of(*t.finding.side);
  const char* later =
      "the layers above sag into the hole, and a turn that falls to its bottom is held fast when the fiber is drawn "
      "off";
  if (t.once()) {
    return fmt::format("Layer {} turns back {} short of the {} flange, {}: {}.", t.finding.layer, t.size(), side,
                       round_of(t.finding), later);
  }
  return fmt::format(
      "The fiber turns back up to {} short of the {} flange {} times in {} (the worst in layer {}): {}.", t.size(),
      side, t.times(), t.layers(), t.cluster.worst_layer, later);
}

// "from layer 5 on", or "in layer 5" / "in layers 5 to 8" when it passes.
std::string while_of(const Told& t) {
  const bool to_the_end = static_cast<std::size_t>(t.finding.last_layer) + 1 >= t.build.strokes.size();
  if (to_the_end && t.finding.layer < t.finding.last_layer) return fmt::format("from layer {} on", t.finding.layer);
  return fmt::format("after {}", t.layers());
}

std::string pile_up(const Told& t) {
  return fmt::format(
      "At the {} flange a ridge stands {} above the level beside it, {}: turns can slide down from the heap over "
      "those already laid, and cross them so that the fiber catches when it is drawn off.",
      name_of(*t.finding.side), t.size(), while_of(t));
}

std::string edge_valley(const Told& t) {
  return fmt::format(
      "At the {} flange the surface sinks to {} below the level beside it, {}: turns can slide down into the "
      "valley, and "
      "the layers above bury them there.",
      name_of(*t.finding.side), t.size(), while_of(t));
}

std::string ride_up(const Told& t) {
  const char* later = "the place beside it stays empty, and the layers above follow the bump";
  if (t.once()) {
    return fmt::format("A turn of {} climbs onto the turn beside it and stands {} above it, {}: {}.", t.layers(),
                       t.size(), t.here(), later);
  }
  return fmt::format("Turns climb onto the turns beside them, up to {} above them, {}: {}.", t.size(), t.places(),
                     "places beside them stay empty, and the layers above follow the bumps");
}

std::string dropped_turn(const Told& t) {
  const char* later =
      "the turns laid over it hold it fast, so that the fiber can snag or break when it is drawn off";
  if (t.once()) {
    return fmt::format("A turn of {} has fallen into a gap and lies {} below its layer, {}: {}.", t.layers(),
                       t.size(), t.here(), later);
  }
  return fmt::format("Turns have fallen into gaps and lie up to {} below their layer {}: {}.", t.size(), t.places(),
                     "the turns laid over them hold them fast, so that the fiber can snag or break when it is drawn "
                     "off");
}

std::string bridge(const Told& t) {
  const char* later = "later turns push it in, which tightens or slackens it there";
  if (t.once()) {
    return fmt::format(
        "The fiber of {} hangs free over {} degrees of the spool, {}, above a hole at least {} deep: {}.",
        t.layers(), figure(t.cluster.extent.detail, 0), t.worst_place(), t.size(), later);
  }
  return fmt::format(
      "The fiber hangs free, over up to {} degrees of the spool above holes at least {} deep, {}: {}.",
      figure(t.cluster.extent.detail, 0), t.size(), t.places(), later);
}

// "12", "12 and a half", "12 1/3": the simple fraction that the turns per double stroke come near to.
std::string near_fraction(double turns) {
  for (const int parts : {1, 2, 3, 4}) {
    const double whole = std::round(turns * parts);
    if (std::abs(turns * parts - whole) > 0.1 && parts < 4) continue;
    const int numerator = static_cast<int>(whole);
    if (numerator % parts == 0) return fmt::format("{}", numerator / parts);
    return fmt::format("{} {}/{}", numerator / parts, numerator % parts, parts);
  }
  return {};
}

std::string ribbon(const Told& t) {
  const double turns = t.cluster.extent.detail;
  return fmt::format(
      "The spool makes {} turns while the guide goes there and back, so near to {} that each stroke lays its "
      "turns on those of an earlier one and {} build ridges up to {} high: ridges topple, and hollows stay open "
      "between them.",
      figure(turns, 2), near_fraction(turns), t.layers(), t.size());
}

std::string rim_overrun(const Told& t) {
  const char* later = "fiber beyond the rim falls off the spool and is damaged when the spool is handled";
  if (t.build.stopped_by == StopReason::rim) {
    return fmt::format(
        "The spool is full: the wind stopped after {} m, in layer {}, because the next fiber would have passed "
        "the rim of the flanges; {}.",
        figure(t.build.length_mm / 1000.0, t.build.length_mm < 1.0e5 ? 1 : 0), t.finding.last_layer, later);
  }
  return fmt::format("From {} on, in {}, fiber stands up to {} beyond the rim of the flanges: {}.",
                     along_of(t.finding.length_mm[0]), t.layers(), t.size(), later);
}

}  // namespace

std::string sentence(const Plan& plan, const Build& build, const Finding& finding, const Cluster& cluster) {
  const Told told{plan, build, finding, cluster};
  switch (finding.kind) {
    case FindingKind::gap: return gap(told);
    case FindingKind::flange_gap: return flange_gap(told);
    case FindingKind::pile_up: return pile_up(told);
    case FindingKind::edge_valley: return edge_valley(told);
    case FindingKind::ride_up: return ride_up(told);
    case FindingKind::dropped_turn: return dropped_turn(told);
    case FindingKind::bridge: return bridge(told);
    case FindingKind::ribbon: return ribbon(told);
    case FindingKind::rim_overrun: return rim_overrun(told);
  }
  return {};
}

}  // namespace laywright
