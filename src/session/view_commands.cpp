#include "session/view_commands.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "scene/camera.h"
#include "session/bench_inside.h"
#include "session/command_rows.h"
#include "session/scrub_commands.h"
#include "session/show_commands.h"

namespace laywright {
namespace {

constexpr double quarter = 0.5 * std::numbers::pi;

// Angle around the spool's axis that faces the eye; the top of the spool for an eye on the axis.
double angle_toward_eye(const Camera& camera) {
  const Vec3 back = -forward_of(camera);
  constexpr double on_axis = 1e-6;
  return radius_of(back) < on_axis ? 0.0 : angle_of(back);
}

std::optional<double> if_finite(std::optional<double> value) {
  return value && std::isfinite(*value) ? value : std::nullopt;
}

// Makes a preference that of every view, and remembers it. It is changed from what is seen now, or from what will be.
void prefer(const BenchInside& in, const std::function<void(View&)>& change) {
  View& first = in.desks.empty() ? in.settings.view : in.view();
  change(first);
  const auto copy = [&](View& to) {
    static_cast<ViewChoices&>(to) = first;
    to.camera.projection = first.camera.projection;
  };
  copy(in.settings.view);
  for (Desk& desk : in.desks) copy(desk.stage.view);
  if (in.comparison) copy(in.comparison->stage.view);
}

Command preference(std::string name, std::function<void(View&)> change,
                   std::function<bool(const View&)> is_on = {}) {
  return {{.name = std::move(name),
           .needs = Needs::nothing,
           .act = [change = std::move(change)](const BenchInside& in) { prefer(in, change); },
           .is_on = std::move(is_on)}};
}

template <class Enum>
void turn_over(Enum& value, Enum one, Enum another) {
  value = value == one ? another : one;
}

int layers_of(const Wound& wound) { return static_cast<int>(wound.build().strokes.size()); }

std::string why_not_peel(const Workbench& bench, int change) {
  const View& view = bench.stage_in_hand()->view;
  const int layers = layers_of(*bench.wound_in_hand());
  const int last = std::min(view.last_layer.value_or(layers), layers);
  if (change < 0 && last <= view.first_layer) return "Only one layer is shown.";
  return change > 0 && last >= layers ? "All layers are shown." : "";
}

void peel_by(const BenchInside& in, int change) {
  const int layers = layers_of(in.wound());
  const int last = std::min(in.view().last_layer.value_or(layers), layers) + change;
  in.view().last_layer.reset();
  if (last < layers) in.view().last_layer = std::max(last, in.view().first_layer);
}

void open_or_close_wedge(const BenchInside& in) {
  View& view = in.view();
  if (view.wedge) return view.wedge.reset();
  const double toward = angle_toward_eye(view.camera);
  view.wedge = Sector{toward - 0.5 * quarter, toward + 0.5 * quarter};
}

void open_or_close_axial_cut(const BenchInside& in) {
  View& view = in.view();
  if (view.axial_cut_rad) return view.axial_cut_rad.reset();
  view.axial_cut_rad = angle_toward_eye(view.camera) - quarter;
}

}  // namespace

Command cmd::peel(int first_layer, std::optional<int> last_layer) {
  return {{.name = "peel", .act = [first_layer, last_layer](const BenchInside& in) {
             View& view = in.view();
             view.first_layer = std::max(1, first_layer);
             view.last_layer = last_layer;
             if (last_layer) view.last_layer = std::max(*last_layer, view.first_layer);
           }}};
}

Command cmd::peel_one(int layers) {
  return {{.name = fmt::format("peel by {}", layers),
           .needs = Needs::build,
           .why_not = [layers](const Workbench& bench) { return why_not_peel(bench, layers); },
           .act = [layers](const BenchInside& in) { peel_by(in, layers); }}};
}

Command cmd::set_wedge(std::optional<Sector> wedge) {
  return {{.name = "set wedge", .act = [wedge](const BenchInside& in) {
             in.view().wedge = wedge;
             if (wedge && !(std::isfinite(wedge->from) && std::isfinite(wedge->to))) in.view().wedge.reset();
           }}};
}

Command cmd::set_axial_cut(std::optional<double> angle_rad) {
  return {{.name = "set axial cut",
           .act = [angle_rad](const BenchInside& in) { in.view().axial_cut_rad = if_finite(angle_rad); }}};
}

Command cmd::toggle_wedge() {
  return {{.name = "wedge", .act = open_or_close_wedge, .is_on = [](const View& view) {
             return view.wedge.has_value();
           }}};
}

Command cmd::toggle_axial_cut() {
  return {{.name = "axial cut", .act = open_or_close_axial_cut, .is_on = [](const View& view) {
             return view.axial_cut_rad.has_value();
           }}};
}

Command cmd::set_x_range(std::optional<double> from_mm, std::optional<double> to_mm) {
  return {{.name = "set x range", .act = [from_mm, to_mm](const BenchInside& in) {
             in.view().x_from_mm = if_finite(from_mm);
             in.view().x_to_mm = if_finite(to_mm);
           }}};
}

Command cmd::show_all() {
  return {{.name = "show all", .needs = Needs::build, .act = [](const BenchInside& in) {
             in.view() = with_nothing_away(in.view());
             return to_end().act(in);
           }}};
}

Command cmd::set_colouring(Colouring colouring) {
  return preference(fmt::format("colour by {}", laywright::name_of(colouring)),
                    [colouring](View& view) { view.colouring = colouring; });
}

Command cmd::toggle_outside() {
  return preference(
      "toggle outside", [](View& view) { turn_over(view.outside, Outside::gone, Outside::faded); },
      [](const View& view) { return view.outside == Outside::faded; });
}

Command cmd::toggle_units() {
  return preference("toggle units", [](View& view) { turn_over(view.units, Units::metric, Units::inch); });
}

Command cmd::toggle_theme() {
  return preference("toggle theme", [](View& view) { turn_over(view.theme, Theme::light, Theme::dark); });
}

Command cmd::toggle_projection() {
  return preference("toggle projection", [](View& view) {
    turn_over(view.camera.projection, Projection::perspective, Projection::parallel);
  });
}

// Those that the menu and its keys alone give.
namespace {

Command next_colouring() {
  return preference("next colouring", [](View& view) {
    const auto next = (static_cast<std::size_t>(view.colouring) + 1) % colouring_names.size();
    view.colouring = static_cast<Colouring>(next);
  });
}

// One of view_switches.
Command toggle(bool ViewChoices::*shown) {
  const auto* const found = std::ranges::find(view_switches, shown, &ViewSwitch::shown);
  return preference(
      fmt::format("toggle {}", found->name), [shown](View& view) { view.*shown = !(view.*shown); },
      [shown](const View& view) { return view.*shown; });
}

// Cameras fly, or are there at once.
Command toggle_motion() {
  return {{.name = "toggle motion", .needs = Needs::nothing, .act = [](const BenchInside& in) {
             in.settings.motion = !in.settings.motion;
           }}};
}

}  // namespace

CommandRows view_rows() {
  using namespace cmd;
  return {
      {"View", "Peel one layer", "PageDown", "Take the outermost layer off.", peel_one(-1)},
      {"View", "Put one layer back", "PageUp", "Put the outermost layer back on.", peel_one(1)},
      {"View", "Wedge", "W", "Cut a quarter out of the spool, or close it.", toggle_wedge()},
      {"View", "Axial cut", "X", "Cut the spool along its axis, or close it.", toggle_axial_cut()},
      {"View", "Fade what is outside", "G", "Show layers outside the peel faded, or not at all.", toggle_outside()},
      {"View", "Show all", "A", "No peel, no cut, the whole wind.", show_all()},
      {"View", "Next colouring", "C", "Colour by something else.", next_colouring()},
      {"View", "Findings", "F", "Mark findings in the picture, or not.", toggle(&View::findings), Also::in_view_tab},
      {"View", "Dimensions", "D", "Show dimension lines, or not.", toggle(&View::dimensions), Also::in_view_tab},
      {"View", "See-through flanges", "S", "See through the flanges, or not.", toggle(&View::flanges_see_through),
       Also::in_view_tab},
      {"View", "Guide", "V", "Show the guide and the free fiber while the wind grows, or not.", toggle(&View::guide),
       Also::in_view_tab},
      {"View", "Legend", "E", "Say beside the spool what colours and marks mean, or not.", toggle(&View::legend),
       Also::in_view_tab},
      {"View", "Metric or inch", "U", "Change the units of all that is shown.", toggle_units()},
      {"View", "Light or dark", "L", "Change the colours of the window.", toggle_theme()},
      {"View", "Perspective or parallel", "P", "Change how depth is drawn.", toggle_projection()},
      {"View", "Flights or jumps", "J", "Let the camera fly to a finding, or be there at once.", toggle_motion()},
      {"View", "Show", "F9", "Show the spool to others: it fills, turns, and begins again.", show()},
  };
}

}  // namespace laywright
