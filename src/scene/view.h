// What a person has chosen to see of a build: a plain value. Any value is allowed; what lies out of range is brought
// into it when the scene is made (layers beyond the last, an end beyond the wind).
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

#include "scene/coordinates.h"

namespace laywright {

enum class Colouring {
  layer,      // dark on the barrel, light on top
  direction,  // of the stroke: to the right, to the left
  rise,       // over the layer below at the same place, d
  gap,        // to the nearest turn of the same layer, the wider side, d
  height,     // over the middle of the spool, mm or in
  support,    // what carries the fiber: barrel, turn, valley, flange, nothing (bridge)
  length,     // from the start of the wind, m or ft
  tension,    // as planned where the fiber was laid, N or lbf; none where the plan does not say it
  // The pull that draws the fiber off, in times that of winding: from the side, over the left end, over the right end.
  payoff,
  payoff_left,
  payoff_right,
  material,  // what the fiber is made of: nothing is told
};

// In the order of the enumeration: as options, settings and lessons name them.
inline constexpr std::array<std::string_view, 12> colouring_names{
    "layer",  "direction", "rise",   "gap",         "height",       "support",
    "length", "tension",   "payoff", "payoff_left", "payoff_right", "material"};
[[nodiscard]] constexpr std::string_view name_of(Colouring colouring) {
  return colouring_names[static_cast<std::size_t>(colouring)];
}
[[nodiscard]] constexpr std::optional<Colouring> colouring_named(std::string_view name) {
  for (std::size_t i = 0; i < colouring_names.size(); ++i) {
    if (colouring_names[i] == name) return static_cast<Colouring>(i);
  }
  return std::nullopt;
}

enum class Outside { gone, faded };
enum class Units { metric, inch };
enum class Theme { light, dark };
enum class Projection { perspective, parallel };

// What a scale of colours spans, in the unit of its legend: low <= neutral < high. As it should be is neutral; what
// should not is the more conspicuous, the farther from it.
struct ColourRange {
  Colouring colouring = Colouring::layer;
  Units units = Units::metric;
  double low = 0.0, neutral = 0.0, high = 1.0;

  [[nodiscard]] bool operator==(const ColourRange&) const = default;
};

// Angles from `from` onward in rising angle to `to`, rad, of any size; from == to: nothing.
struct Sector {
  double from = 0.0, to = 0.0;

  [[nodiscard]] bool operator==(const Sector&) const = default;
};

// The eye looks at the target from azimuth (0: from +Z; grows towards +X) and elevation (grows towards +Y; within
// +-90), with Y up on the screen.
struct Camera {
  Vec3 target{0.0, 0.0, 0.0};
  double azimuth_deg = 30.0;
  double elevation_deg = 20.0;
  double distance_mm = 500.0;       // eye to target; also sets the size of a parallel picture
  double field_of_view_deg = 30.0;  // of the height. A parallel picture shows what this shows at the target
  Projection projection = Projection::perspective;

  [[nodiscard]] bool operator==(const Camera&) const = default;
};

// What a person likes, whatever is looked at: it holds for all views, and is remembered.
struct ViewChoices {
  Colouring colouring = Colouring::layer;
  Outside outside = Outside::gone;  // what happens to layers that are peeled away
  bool findings = true;
  bool dimensions = true;
  bool flanges_see_through = false;
  bool guide = true;   // the guide and its free fiber, where the view ends before the wind does
  bool legend = true;  // what colours and marks mean
  Units units = Units::metric;
  Theme theme = Theme::light;

  [[nodiscard]] bool operator==(const ViewChoices&) const = default;
};

// What is shown or not, by the name that settings have for it.
struct ViewSwitch {
  std::string_view name;
  bool ViewChoices::*shown;
};
inline constexpr auto view_switches =
    std::to_array<ViewSwitch>({{"findings", &ViewChoices::findings},
                               {"dimensions", &ViewChoices::dimensions},
                               {"flanges_see_through", &ViewChoices::flanges_see_through},
                               {"guide", &ViewChoices::guide},
                               {"legend", &ViewChoices::legend}});

struct View : ViewChoices {
  // Peel: the layers that are shown, 1 = on the barrel; last by default the newest.
  int first_layer = 1;
  std::optional<int> last_layer;

  std::optional<double> until_turn;  // the wind up to here; all of it by default (turn_at_length in scene_source.h)

  std::optional<Sector> wedge;               // cut out
  std::optional<double> axial_cut_rad;       // a plane through the axis; the half from this angle onward is cut away
  std::optional<double> x_from_mm, x_to_mm;  // of what is shown

  std::optional<std::size_t> chosen_finding;  // drawn stronger

  std::optional<ColourRange>
      range;  // of builds that stand side by side; heeded while it is of this colouring and units

  int width_px = 1280, height_px = 720;
  Camera camera;

  [[nodiscard]] bool operator==(const View&) const = default;
};

// With all layers, and without cuts.
[[nodiscard]] inline View with_nothing_away(View view) {
  view.first_layer = 1;
  view.last_layer.reset();
  view.wedge.reset();
  view.axial_cut_rad.reset();
  view.x_from_mm.reset();
  view.x_to_mm.reset();
  return view;
}

}  // namespace laywright
