#include "scene/colouring.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/round_figure.h"
#include "scene/material.h"
#include "scene/palette.h"

namespace laywright {

namespace {

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

Legend words_of(Colouring colouring, Units units) {
  const bool inch = units == Units::inch;
  Legend legend;
  const auto with = [&legend](std::string_view title, std::string_view unit) {
    legend.title = std::string(title);
    legend.unit = std::string(unit);
  };
  switch (colouring) {
    case Colouring::layer: with("Layer", ""); break;
    case Colouring::direction: with("Laid to the", ""); break;
    case Colouring::support: with("Carried by", ""); break;
    case Colouring::material: with("Material", ""); break;
    case Colouring::rise: with("Rise over the layer below", "d"); break;
    case Colouring::gap: with("Gap beside the turn", "d"); break;
    case Colouring::height: with("Height over the middle", unit_in(Amount::small_length, inch)); break;
    case Colouring::length: with("Length from the start", unit_in(Amount::fiber_length, inch)); break;
    case Colouring::tension: with("Tension when it was laid", unit_in(Amount::force, inch)); break;
    case Colouring::payoff: with("Pull to draw it off the side", "times"); break;
    case Colouring::payoff_left: with("Pull to draw it over the left end", "times"); break;
    case Colouring::payoff_right: with("Pull to draw it over the right end", "times"); break;
  }
  return legend;
}

void make_entries(const SceneSource& source, const View& view, Legend& legend) {
  if (view.colouring == Colouring::tension && !NodeValue(source, view)(0))
    legend.entries = {
        {without_value, source.plan().takeup() ? "not planned: wind.tension" : "not planned: takeup.control"}};
  if (view.colouring == Colouring::material) {
    const Material material = fiber_material(source.plan());
    legend.entries = {{material.colour, material.name}};
  }
  if (view.colouring == Colouring::direction) legend.entries = {{to_the_right, "right"}, {to_the_left, "left"}};
  if (view.colouring != Colouring::support) return;
  for (std::size_t i = 0; i < support_words.size(); ++i)
    legend.entries.push_back({support_colours[i], support_words[i]});
}

// A band for each layer, and as many of their numbers as there is room for: the first, and round ones.
void fill_layers(const ColourRange& range, Legend& legend) {
  const auto layers = static_cast<int>(std::lround(range.high - 0.5));
  const auto tick = [&](int layer) {
    legend.ticks.push_back({(layer - range.low) / (range.high - range.low), std::to_string(layer)});
  };
  for (int layer = 1; layer <= layers; ++layer) legend.scale.push_back(scale_colour(range, layer));
  const int step = std::max(1, static_cast<int>(round_step(layers)));
  if (step > 1) tick(1);
  for (int layer = step; layer <= layers; layer += step) tick(layer);
}

void fill_scale(const ColourRange& range, Legend& legend) {
  legend.low = range.low;
  legend.high = range.high;
  if (range.colouring == Colouring::layer) {
    fill_layers(range, legend);
    return;
  }
  for (std::size_t i = 0; i < scale_colours; ++i) {
    const double share = static_cast<double>(i) / static_cast<double>(scale_colours - 1);
    legend.scale.push_back(scale_colour(range, range.low + share * (range.high - range.low)));
  }
  legend.ticks = round_ticks(legend.low, legend.high);
}

}  // namespace

bool make_ready(const SceneSource& source, Colouring colouring, Progress& progress) {
  const std::optional<DrawOff> way = payoff_way(colouring);
  return !way || source.payoff_forces(*way, progress) != nullptr;
}

std::vector<LegendTick> round_ticks(double low, double high) {
  const double step = round_step(high - low);
  const int places = decimals_of_step(step);
  std::vector<LegendTick> ticks;
  for (double n = std::ceil(low / step - 1e-9); n * step <= high + 1e-9 * step; ++n) {
    ticks.push_back({(n * step - low) / (high - low), figure(n * step, places)});
  }
  return ticks;
}

Colourer::Colourer(const SceneSource& source, const View& view)
    : source_(source),
      colouring_(view.colouring),
      value_(source, view),
      legend_(words_of(view.colouring, view.units)) {
  make_entries(source, view, legend_);
  if (!legend_.entries.empty()) return;
  if (is_of(view.range, view))
    range_ = view.range;
  else
    range_ = own_range(source, view);
  if (range_) fill_scale(*range_, legend_);
}

Rgba Colourer::colour(std::size_t node) const {
  switch (colouring_) {
    case Colouring::layer: return scale_colour(*range_, static_cast<double>(source_.stroke_of(node) + 1));
    case Colouring::material: return legend_.entries.front().colour;
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
