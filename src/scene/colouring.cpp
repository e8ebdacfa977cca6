#include "scene/colouring.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include <fmt/format.h>

#include "base/inch.h"
#include "base/round_figure.h"
#include "scene/palette.h"
#include "scene/turns_beside.h"
#include "takeup/formulas.h"

namespace laywright {

namespace {

constexpr double mm_per_metre = 1000.0;

// Of each kind of support, in the order of the enumeration, and what a legend says of it.
constexpr std::array<Rgba, 5> support_colours{{{0xD5, 0x5E, 0x00, 255},
                                               {0x99, 0x99, 0x99, 255},
                                               {0x56, 0xB4, 0xE9, 255},
                                               {0x00, 0x72, 0xB2, 255},
                                               {0x00, 0x9E, 0x73, 255}}};
constexpr std::array<const char*, 5> support_words{
    {"nothing: it bridges", "the barrel", "one turn", "two (in a valley)", "a flange"}};
constexpr Rgba to_the_right{0x00, 0x72, 0xB2, 255}, to_the_left{0xE6, 0x9F, 0x00, 255};
constexpr Rgba without_value{0x9A, 0x9A, 0x9A, 255};
constexpr std::size_t scale_colours = 64;

bool has_scale(Colouring colouring) {
  return payoff_way(colouring) || colouring == Colouring::rise || colouring == Colouring::gap ||
         colouring == Colouring::height || colouring == Colouring::length || colouring == Colouring::tension;
}

double length_unit(Units units) { return units == Units::metric ? mm_per_metre : mm_per_foot; }
double height_unit(Units units) { return units == Units::metric ? 1.0 : mm_per_inch; }
double force_unit(Units units) { return units == Units::metric ? 1.0 : newtons_per_pound_force; }

std::optional<double> tension_N(const SceneSource& source, std::size_t node) {
  const Plan& plan = source.plan();
  if (!plan.takeup() || !plan.wind().tension_N) return std::nullopt;
  const NodeStore& nodes = source.build().nodes;
  return tension_at(*plan.takeup(), *plan.wind().tension_N, nodes.r(0), nodes.r(node));
}

// Of a scale over `span`: three to eight parts.
double round_step(double span) { return round_figure_above(span / 8.0); }

// Below it lie all but one in fifty: a few that stick out do not flatten the scale.
double high_end(std::vector<double> values) {
  if (values.empty()) return 0.0;
  const auto at = static_cast<std::ptrdiff_t>(static_cast<double>(values.size() - 1) * 0.98);
  std::nth_element(values.begin(), values.begin() + at, values.end());
  return values[static_cast<std::size_t>(at)];
}

// A few thousand nodes of the last two layers that are shown, evenly along the fiber.
std::vector<std::size_t> newest_layers(const SceneSource& source, const View& view) {
  constexpr std::size_t wanted = 4000;
  const VisibleFiber fiber = visible_fiber(source, view);
  std::vector<std::size_t> nodes;
  if (fiber.first == fiber.end) return nodes;
  const std::size_t stroke = source.stroke_of(fiber.end - 1);
  const std::size_t from =
      std::max(fiber.first, source.build().strokes[stroke - std::min<std::size_t>(stroke, 1)].first_node);
  // Odd, and so unlikely to fall on the same stations turn after turn.
  const std::size_t step = std::max<std::size_t>(1, (fiber.end - from) / wanted) | 1U;
  for (std::size_t node = from; node < fiber.end; node += step) nodes.push_back(node);
  return nodes;
}

double mean_middle(const SceneSource& source, const std::vector<std::size_t>& visible) {
  const double width = source.plan().spool().inside_width_mm;
  double sum = 0.0, count = 0.0;
  for (const std::size_t node : visible) {
    const double x = source.build().nodes.x(node);
    if (x < 0.25 * width || x > 0.75 * width) continue;
    sum += source.build().nodes.r(node) + 0.5 * source.d();
    count += 1.0;
  }
  return count > 0.0 ? sum / count : source.barrel_radius(0.5 * width);
}

void add_layers(const SceneSource& source, const View& view, Legend& legend) {
  const VisibleFiber fiber = visible_fiber(source, view);
  if (fiber.first == fiber.end) return;
  const auto layers = static_cast<int>(source.stroke_of(fiber.end - 1)) + 1;  // what is not wound yet is not told
  const int first = std::clamp(view.first_layer, 1, layers);
  const int last = std::clamp(view.last_layer.value_or(layers), first, layers);
  const auto hues = static_cast<int>(layer_palette.size());
  for (int layer = first; layer <= std::min(last, first + hues - 1); ++layer) {
    const std::string next = layer + hues <= last ? fmt::format(", {}", layer + hues) : std::string();
    const char* const more = layer + 2 * hues <= last ? ", \u2026" : "";
    legend.entries.push_back(
        {layer_rgba(static_cast<std::size_t>(layer)), fmt::format("{}{}{}", layer, next, more)});
  }
}

Legend words_of(Colouring colouring, Units units) {
  const bool metric = units == Units::metric;
  Legend legend;
  const auto with = [&legend](std::string_view title, std::string_view unit) {
    legend.title = std::string(title);
    legend.unit = std::string(unit);
  };
  switch (colouring) {
    case Colouring::layer: with("Layer", ""); break;
    case Colouring::direction: with("Laid to the", ""); break;
    case Colouring::support: with("Carried by", ""); break;
    case Colouring::rise: with("Rise over the layer below", "d"); break;
    case Colouring::gap: with("Gap beside the turn", "d"); break;
    case Colouring::height: with("Height over the middle", metric ? "mm" : "in"); break;
    case Colouring::length: with("Length from the start", metric ? "m" : "ft"); break;
    case Colouring::tension: with("Tension when it was laid", metric ? "N" : "lbf"); break;
    case Colouring::payoff: with("Pull to draw it off the side", "times"); break;
    case Colouring::payoff_left: with("Pull to draw it over the left end", "times"); break;
    case Colouring::payoff_right: with("Pull to draw it over the right end", "times"); break;
  }
  return legend;
}

void make_entries(const SceneSource& source, const View& view, Legend& legend) {
  if (view.colouring == Colouring::tension && !tension_N(source, 0))
    legend.entries = {
        {without_value, source.plan().takeup() ? "not planned: wind.tension" : "not planned: takeup.control"}};
  if (view.colouring == Colouring::layer) add_layers(source, view, legend);
  if (view.colouring == Colouring::direction) legend.entries = {{to_the_right, "right"}, {to_the_left, "left"}};
  if (view.colouring != Colouring::support) return;
  for (std::size_t i = 0; i < support_words.size(); ++i)
    legend.entries.push_back({support_colours[i], support_words[i]});
}

void fill_scale(bool diverging, Legend& legend) {
  for (std::size_t i = 0; i < scale_colours; ++i) {
    const double share = static_cast<double>(i) / static_cast<double>(scale_colours - 1);
    legend.scale.push_back(diverging ? purple_orange(share) : viridis(share));
  }
  legend.ticks = round_ticks(legend.low, legend.high);
}

// From the least to the greatest, however near they are: what changes a little over a wind is what is to be seen. Of
// what does not change at all, a hundredth to either side.
void make_close_scale(const std::vector<double>& values, Legend& legend) {
  const auto [least, most] = std::minmax_element(values.begin(), values.end());
  const double spread = std::max(*most - *least, 0.02 * *most);
  const double middle = 0.5 * (*most + *least), step = round_step(spread);
  legend.low = std::max(0.0, std::floor((middle - 0.5 * spread) / step + 1e-9) * step);
  legend.high = std::ceil((middle + 0.5 * spread) / step - 1e-9) * step;
  fill_scale(false, legend);
}

void make_scale(Colouring colouring, const std::vector<double>& values, Legend& legend) {
  const bool diverging = colouring == Colouring::height;
  std::vector<double> sizes = values;
  for (double& size : sizes) size = diverging ? std::abs(size) : size;
  // A scale of no extent would say nothing: at least a tenth of a unit.
  const double high =
      std::max(colouring == Colouring::length && !sizes.empty() ? *std::max_element(sizes.begin(), sizes.end())
                                                                : high_end(sizes),
               0.1);
  // A pull of 1 is that of winding: the scale begins there.
  const double least = payoff_way(colouring) ? 1.0 : 0.0;
  const double rise = std::max(high - least, 0.1), step = round_step(rise);
  legend.high = least + std::ceil(rise / step - 1e-9) * step;
  legend.low = diverging ? -legend.high : least;
  fill_scale(diverging, legend);
}

}  // namespace

std::optional<DrawOff> payoff_way(Colouring colouring) {
  switch (colouring) {
    case Colouring::payoff: return DrawOff::side;
    case Colouring::payoff_left: return DrawOff::over_left;
    case Colouring::payoff_right: return DrawOff::over_right;
    default: return std::nullopt;
  }
}

bool make_ready(const SceneSource& source, Colouring colouring, Progress& progress) {
  const std::optional<DrawOff> way = payoff_way(colouring);
  return !way || source.payoff_forces(*way, progress) != nullptr;
}

std::optional<double> rise_d(const SceneSource& source, std::size_t node) {
  const std::size_t stroke = source.stroke_of(node);
  if (stroke == 0) return std::nullopt;
  const TurnsBeside below = turns_beside(source, node, stroke - 1);
  if (!below.left || !below.right) return std::nullopt;
  const NodeStore& nodes = source.build().nodes;
  const double x0 = nodes.x(*below.left), x1 = nodes.x(*below.right);
  const double share = (nodes.x(node) - x0) / (x1 - x0);
  const double r = nodes.r(*below.left) + share * (nodes.r(*below.right) - nodes.r(*below.left));
  return (nodes.r(node) - r) / source.d();
}

std::optional<double> gap_d(const SceneSource& source, std::size_t node) {
  const TurnsBeside beside = turns_beside(source, node, source.stroke_of(node));
  const NodeStore& nodes = source.build().nodes;
  std::optional<double> widest;
  for (const auto& other : {beside.left, beside.right}) {
    if (!other) continue;
    const double gap = std::max(0.0, std::abs(nodes.x(*other) - nodes.x(node)) / source.d() - 1.0);
    widest = std::max(widest.value_or(0.0), gap);
  }
  return widest;
}

std::vector<LegendTick> round_ticks(double low, double high) {
  const double step = round_step(high - low);
  const int places = decimals_of_step(step);
  std::vector<LegendTick> ticks;
  for (double n = std::ceil(low / step - 1e-9); n * step <= high + 1e-9 * step; ++n) {
    // No minus before a zero.
    ticks.push_back({(n * step - low) / (high - low), fmt::format("{:.{}f}", n == 0.0 ? 0.0 : n * step, places)});
  }
  return ticks;
}

Colourer::Colourer(const SceneSource& source, const View& view)
    : source_(source),
      colouring_(view.colouring),
      units_(view.units),
      legend_(words_of(view.colouring, view.units)) {
  make_entries(source, view, legend_);
  if (const std::optional<DrawOff> way = payoff_way(colouring_)) {
    Progress none;  // whoever can be stopped has asked for it before: make_ready
    forces_ = source.payoff_forces(*way, none);
  }
  if (!has_scale(colouring_) || !legend_.entries.empty()) return;
  const std::vector<std::size_t> visible = newest_layers(source, view);
  middle_mm_ = mean_middle(source, visible);
  std::vector<double> values;
  for (const std::size_t node : visible) {
    const std::optional<double> is = value(node);
    if (is) values.push_back(*is);
  }
  if (colouring_ == Colouring::tension) {
    values.push_back(*value(0));
    make_close_scale(values, legend_);
  } else {
    make_scale(colouring_, values, legend_);
  }
}

std::optional<double> Colourer::value(std::size_t node) const {
  switch (colouring_) {
    case Colouring::rise: return rise_d(source_, node);
    case Colouring::gap: return gap_d(source_, node);
    case Colouring::height:
      return (source_.build().nodes.r(node) + 0.5 * source_.d() - middle_mm_) / height_unit(units_);
    case Colouring::length: return source_.line().at(node) / length_unit(units_);
    case Colouring::tension: {
      const std::optional<double> pull = tension_N(source_, node);
      return pull ? std::optional(*pull / force_unit(units_)) : std::nullopt;
    }
    case Colouring::payoff:
    case Colouring::payoff_left:
    case Colouring::payoff_right: return (*forces_)[node];
    default: return std::nullopt;
  }
}

Rgba Colourer::colour(std::size_t node) const {
  switch (colouring_) {
    case Colouring::layer: return layer_rgba(source_.stroke_of(node) + 1);
    case Colouring::direction:
      return source_.build().strokes[source_.stroke_of(node)].direction > 0 ? to_the_right : to_the_left;
    case Colouring::support: return support_colours[static_cast<std::size_t>(source_.build().nodes.support(node))];
    default: break;
  }
  const std::optional<double> is = value(node);
  if (!is) return without_value;
  const double share = std::clamp((*is - legend_.low) / (legend_.high - legend_.low), 0.0, 1.0);
  return legend_.scale[static_cast<std::size_t>(std::lround(share * static_cast<double>(scale_colours - 1)))];
}

}  // namespace laywright
