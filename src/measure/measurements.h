// What is measured on a build, each by one definition. Lengths mm, angles deg, gaps also in d. No figure depends on
// the number of stations beyond the fineness of the build itself.
//
// The definitions in full: layer table in layer_table.h, surface and outer diameter in surface.h, ridge and valley in
// edge_shape.h, findings in findings.h, their order in severity.h and gravity.h.
//
// A wind seldom ends at a flange, and a layer that ends on the way stands on one side of the spool alone. What tells how
// level a wind is (outer diameters left, middle and right, ridge, valley, and the findings of them) is therefore taken
// after the last whole stroke, and the unfinished layer is named beside it. What must have room (greatest diameter, rim
// clearance) and what fills it (surface, fill factor) takes all the fiber that lies there.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "base/progress.h"
#include "lay/build.h"
#include "plan/lay_plan.h"

namespace laywright {

// How far the surface beside a flange rises over, and sinks under, the level beside it, mm, 0 or more.
struct EdgeShape {
  double ridge_mm = 0.0, valley_mm = 0.0;
};
using EdgeShapes = std::array<EdgeShape, 2>;  // left, right

struct LayerRow {
  int layer = 0;      // 1 = on the barrel
  int direction = 1;  // +1 to the right, -1 to the left
  double turns = 0.0;
  double length_mm = 0.0;
  double mean_diameter_mm = 0.0;      // of centre lines
  std::optional<double> mean_rise_d;  // over the layer below at the same place; none where nothing lies below
  double gap_length_mm = 0.0;         // fiber length beside which a gap over the limit is open
  double flange_gap_length_mm = 0.0;  // the part of it that is beside a flange
  int crossings = 0;                  // times that the layer crosses a turn of the layer below
  double bridged_share = 0.0;         // of its length
  // Outer diameter left, middle and right once the layer lies, whole or not, as in OuterDiameter.
  std::array<double, 3> outer_diameter_mm{};
  std::optional<EdgeShapes> edges{};  // once the layer lies; none of a layer that is not whole
};

// Over theta, at x[i] = (i + 1/2) * width / x.size(): outer radius of the surface (fiber included), mm.
struct SurfaceProfile {
  std::vector<double> x_mm, mean_mm, least_mm, greatest_mm;
};

// Where the surface is touched.
struct SurfacePlace {
  double x_mm = 0.0, angle_deg = 0.0;
};

// Twice the mean crest radius of the first and last max(5 % of the width, 3 d), and of the central half, after the last
// whole stroke; of a wind that ends within its first layer, as it lies. Greatest is that of the highest fiber anywhere,
// unfinished layer included.
struct OuterDiameter {
  double left_mm = 0.0, middle_mm = 0.0, right_mm = 0.0, greatest_mm = 0.0;
  std::optional<SurfacePlace> greatest_at{};  // none where nothing is laid
};

// The last layer, where the wind ends before it reaches the other flange.
struct UnfinishedLayer {
  int layer = 0;
  double turns = 0.0;
  double end_x_mm = 0.0;                      // where its last turn lies
  std::array<double, 3> outer_diameter_mm{};  // left, middle, right, with it
};

// What becomes of a finding when the spool is inspected or unwound (severity.h).
enum class FindingSeverity { small, worth_a_look, grave };

enum class FindingKind { gap, flange_gap, pile_up, edge_valley, ride_up, dropped_turn, bridge, ribbon, rim_overrun };

// Stable names, as in the JSON document: "flange_gap".
[[nodiscard]] const char* name_of(FindingKind kind);

// Of a whole edge: one place, for as many layers as it lasts.
[[nodiscard]] inline bool is_edge(FindingKind kind) {
  return kind == FindingKind::pile_up || kind == FindingKind::edge_valley;
}

// One of the places that a finding is made of.
struct FindingPlace {
  std::size_t first_node = 0, end_node = 0;  // fiber that it concerns
  std::size_t node = 0;                      // where it is largest
  double size_mm = 0.0;
};

struct Finding {
  static constexpr std::size_t most_places = 32;

  FindingKind kind = FindingKind::gap;
  int layer = 0;  // the first it occurs in
  int last_layer = 0;
  double turn = 0.0;         // from the start of the wind, where it begins
  std::optional<Side> side;  // flange it belongs to, if any
  std::array<double, 2> x_mm{};
  std::array<double, 2> angle_deg{};  // extent around the spool: [0, 360] when all round, [350, 370] over the zero
  std::array<double, 2> length_mm{};  // of fiber, from the start of the wind
  double size_mm = 0.0;               // the greatest occurrence
  double size_d = 0.0;
  int occurrences = 1;               // that were merged
  std::vector<FindingPlace> places;  // the largest of them, at most most_places; largest first
  FindingSeverity severity = FindingSeverity::small;
  std::string text;  // what, where, how large, what it will do later: for a trainee
};

struct Measurements {
  std::vector<LayerRow> layers;
  SurfaceProfile surface;
  OuterDiameter outer_diameter;
  std::optional<UnfinishedLayer> unfinished_layer;
  std::optional<EdgeShapes> edges;  // after the last whole stroke; none where no stroke is whole
  double fill_factor = 0.0;
  double rim_clearance_mm = 0.0;  // may be negative when the rim was overrun
  std::optional<double> fiber_mass_kg;
  std::optional<double> wind_time_s;
  std::vector<Finding> findings;  // gravest first
};

// Precondition: the build was laid from the plan. Cancelled through `progress`: returns what is ready so far.
[[nodiscard]] Measurements measure(const Plan& plan, const Build& build, Progress& progress);

}  // namespace laywright
