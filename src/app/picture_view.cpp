#include "app/picture_view.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "advise/setting_text.h"
#include "app/number_option.h"
#include "app/ranges.h"
#include "base/quantity.h"
#include "base/quantity_text.h"
#include "base/units.h"
#include "scene/camera.h"
#include "scene/finding_view.h"

namespace laywright {
namespace {

struct NamedView {
  const char* name;
  double azimuth_deg, elevation_deg;
};
constexpr std::array<NamedView, 5> named_views{{
    {"front", 24.0, 16.0},
    {"side", 0.0, 0.0},
    {"left", -90.0, 0.0},
    {"right", 90.0, 0.0},
    {"top", 0.0, 89.0},
}};

std::string check_angles(const std::string& text) {
  const auto range = read_pair<double>(text, ':');
  if (!range || std::abs(range->first) > 720.0 || std::abs(range->second) > 720.0)
    return "a cut is FROM:TO in degrees, like 0:90";
  return range->first == range->second ? "a cut from an angle to itself cuts nothing out" : "";
}

std::string check_pair(const std::string& text) {
  return read_pair<double>(text, ':') ? "" : "two numbers with a colon between them are due, like 10:60";
}

std::string check_across(const std::string& text) {
  const auto range = read_pair<double>(text, ':');
  if (!range || range->first >= range->second) return "places along the axis are FROM:TO in mm, rising, like 10:60";
  return "";
}

std::string check_layers(const std::string& text) {
  const auto range = read_pair<int>(text, ':');
  if (!range || range->first < 1 || range->second < range->first)
    return "layers are FIRST:LAST, counted from 1 on the barrel, like 1:5";
  return "";
}

std::string check_until(const std::string& text) {
  if (const auto turn = read_number<double>(text)) return *turn > 0.0 ? "" : "the wind must be longer than nothing";
  const ParsedQuantity length = parse_quantity(text, Dimension::length);
  if (!length.quantity) return "a turn, like 250, or a length of fiber, like \"500 m\", is due";
  return length.quantity->value > 0.0 ? "" : "the wind must be longer than nothing";
}

std::vector<std::string> names_of_views() {
  std::vector<std::string> names;
  for (const NamedView& view : named_views) names.emplace_back(view.name);
  return names;
}

OptionCheck checked(std::string (*check)(const std::string&)) { return check; }

void set_until(const std::string& text, const SceneSource& source, View& view) {
  if (text.empty()) return;
  if (const auto turn = read_number<double>(text)) {
    view.until_turn = *turn;
  } else {
    view.until_turn = turn_at_length(source, parse_quantity(text, Dimension::length).quantity->value);
  }
}

// A spool that is just looked at looks as it does in the shop.
Colouring usual_colouring(const PictureView& options) {
  const bool tells = !options.cut.empty() || options.section_deg || !options.across.empty() ||
                     !options.layers.empty() || options.findings || options.finding;
  return tells ? Colouring::layer : Colouring::material;
}

void set_camera(const PictureView& options, const SceneSource& source, View& view) {
  const auto named = std::find_if(named_views.begin(), named_views.end(),
                                  [&](const NamedView& candidate) { return options.name == candidate.name; });
  view.camera.azimuth_deg = options.azimuth_deg.value_or(named->azimuth_deg);
  view.camera.elevation_deg = options.elevation_deg.value_or(named->elevation_deg);
  if (options.parallel) view.camera.projection = Projection::parallel;
  view.camera = fit_camera(source.plan(), view);
  const OuterDiameter& outer = source.measurements().outer_diameter;
  const double width_mm = source.plan().spool().inside_width_mm;
  // A near view of a cut is a view of the turns in its face.
  if (view.wedge && options.zoom > 1.2 && outer.middle_mm > 0.0) {
    const double middle_mm = (source.barrel_radius(width_mm / 2) + outer.middle_mm / 2) / 2;
    view.camera.target = in_space(width_mm / 2, middle_mm, view.wedge->to);
  }
  if (!options.look_at.empty()) {
    const auto place = *read_pair<double>(options.look_at, ':');
    const double radius_mm = outer.middle_mm > 0.0 ? outer.middle_mm / 2 : source.barrel_radius(place.first);
    view.camera.target = in_space(place.first, radius_mm, place.second * rad_per_deg);
  }
  view.camera.distance_mm /= options.zoom;
}

}  // namespace

void add_view_options(CommandLine command, PictureView& options) {
  command.add_option("--size", options.size, "Width and height in pixels, 64x64 to 8192x8192")
      .type_name("WxH")
      .check(size_between(64, 8192))
      .capture_default_str()
      .group("Picture");
  command.add_flag("--dark", options.dark, "Light on a dark ground").group("Picture");
  command.add_flag("--inch", options.inch, "Figures in inches and feet").group("Picture");
  command.add_flag("--plain", options.no_figures, "No dimension lines, legend or scale bar").group("Picture");

  command.add_option("--view", options.name, "front (from the right and above), side, left, right or top")
      .type_name("NAME")
      .check(one_of(names_of_views()))
      .capture_default_str()
      .group("Camera");
  command
      .add_option("--azimuth", options.azimuth_deg,
                  "Instead: eye around the spool, degrees; 0 is square to the axis")
      .type_name("DEG")
      .check(number_between(-360.0, 360.0))
      .group("Camera");
  command.add_option("--elevation", options.elevation_deg, "and above it, degrees (-89 to 89)")
      .type_name("DEG")
      .check(number_between(-89.0, 89.0))
      .group("Camera");
  command.add_option("--zoom", options.zoom, "So many times nearer than the whole spool needs")
      .type_name("FACTOR")
      .check(number_between(0.1, 1000.0))
      .capture_default_str()
      .group("Camera");
  command
      .add_option("--look-at", options.look_at, "Middle of the picture: mm along the axis, and angle on the surface")
      .type_name("X:DEG")
      .check(checked(check_pair))
      .group("Camera");
  command.add_flag("--parallel", options.parallel, "Without perspective, as in a drawing").group("Camera");

  command.add_option("--cut", options.cut, "Cut a wedge out between these angles (0 is on top, 90 in front)")
      .type_name("DEG:DEG")
      .check(checked(check_angles))
      .group("What is seen");
  command.add_option("--section", options.section_deg, "Cut the spool in half along its axis at this angle")
      .type_name("DEG")
      .check(number_between(-360.0, 360.0))
      .excludes("--cut")
      .group("What is seen");
  command.add_option("--across", options.across, "Only the part between these places along the axis")
      .type_name("MM:MM")
      .check(checked(check_across))
      .group("What is seen");
  command.add_option("--layers", options.layers, "Only these layers; 1 lies on the barrel")
      .type_name("A:B")
      .check(checked(check_layers))
      .group("What is seen");
  command.add_flag("--faded", options.faded, "Show the other layers faded instead of leaving them out")
      .needs("--layers")
      .group("What is seen");
  command.add_option("--until", options.until, "The wind up to this turn, or this length of fiber (\"500 m\")")
      .type_name("TURN|LENGTH")
      .check(checked(check_until))
      .group("What is seen");
  command
      .add_option(
          "--colour,--color", options.colouring,
          "What colours say: layer, direction, rise, gap, height, support, length, tension, or the "
          "pull that draws the fiber off: payoff, payoff_left, payoff_right; material: what the fiber is made "
          "of. Without it: layer where a cut, --across, --layers or findings are shown, else material")
      .type_name("NAME")
      .check(one_of(std::vector<std::string>(colouring_names.begin(), colouring_names.end())))
      .group("What is seen");
  command.add_flag("--findings", options.findings, "Mark what was found: gaps, pile-ups, dropped turns")
      .group("What is seen");
  command.add_option("--finding", options.finding, "Fly to this finding, counted from 1 as `lay` lists them")
      .type_name("N")
      .check(number_between(1, 1'000'000))
      .group("What is seen");
  command.add_flag("--guide", options.guide, "Show the guide and the free fiber, with --until")
      .needs("--until")
      .group("What is seen");
  command.add_flag("--see-through", options.see_through, "Flanges as of glass").group("What is seen");
}

Result<View> view_from(const PictureView& options, const SceneSource& source) {
  View view;
  if (const auto size = read_pair<int>(options.size, 'x')) {
    view.width_px = size->first;
    view.height_px = size->second;
  }
  view.theme = options.dark ? Theme::dark : Theme::light;
  view.units = options.inch ? Units::inch : Units::metric;
  view.dimensions = !options.no_figures && options.zoom <= 1.5 && !options.finding;
  view.findings = options.findings || options.finding.has_value();
  view.flanges_see_through = options.see_through;
  view.guide = options.guide;
  view.outside = options.faded ? Outside::faded : Outside::gone;
  view.colouring = colouring_named(options.colouring).value_or(usual_colouring(options));
  if (const auto cut = read_pair<double>(options.cut, ':'))
    view.wedge = Sector{cut->first * rad_per_deg,
                        (cut->second > cut->first ? cut->second : cut->second + 360.0) * rad_per_deg};
  if (options.section_deg) view.axial_cut_rad = *options.section_deg * rad_per_deg;
  if (const auto range = read_pair<double>(options.across, ':')) {
    view.x_from_mm = range->first;
    view.x_to_mm = range->second;
  }
  if (const auto range = read_pair<int>(options.layers, ':')) {
    const int most = static_cast<int>(source.build().strokes.size());
    if (range->first > most)
      return option_issue("--layers", options.layers, "this wind has " + counted(most, "layer"));
    view.first_layer = range->first;
    view.last_layer = std::min(range->second, most);
  }
  set_until(options.until, source, view);
  set_camera(options, source, view);
  if (options.finding) {
    const auto count = source.measurements().findings.size();
    const auto index = static_cast<std::size_t>(*options.finding) - 1;
    if (index >= count)
      return option_issue(
          "--finding", std::to_string(*options.finding),
          count == 0 ? "nothing was found on this wind" : "this wind has " + counted(count, "finding"));
    view.chosen_finding = index;
    view = view_of_finding(source, view, index);
  }
  return view;
}

}  // namespace laywright
