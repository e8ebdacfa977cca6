#include "scene/colour_range.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "base/round_figure.h"
#include "measure/acceptance.h"
#include "scene/node_value.h"

namespace laywright {

namespace {

// Of one build, the values of a few thousand nodes.
struct Sampled {
  const SceneSource* source = nullptr;
  std::vector<double> values;
};

Sampled sampled(const SceneSource& source, const View& view, const std::vector<std::size_t>& nodes) {
  Sampled all{&source, {}};
  const NodeValue value(source, view);
  for (const std::size_t node : nodes) {
    const std::optional<double> is = value(node);
    if (is) all.values.push_back(*is);
  }
  // From its beginning on.
  if (view.colouring == Colouring::tension && value(0)) all.values.push_back(*value(0));
  return all;
}

double at_share(std::vector<double> values, double share) {
  if (values.empty()) return 0.0;
  const auto at = static_cast<std::ptrdiff_t>(static_cast<double>(values.size() - 1) * share);
  std::nth_element(values.begin(), values.begin() + at, values.end());
  return values[static_cast<std::size_t>(at)];
}

// Below it lie all but one in fifty: a few that stick out do not flatten the scale.
double high_end(std::vector<double> values) { return at_share(std::move(values), 0.98); }

double rounded_up(double value) {
  const double step = round_step(value);
  return std::ceil(value / step - 1e-9) * step;
}

using Builds = std::vector<Sampled>;

// Greatest of what `f` has for each build.
template <class F>
double greatest(const Builds& builds, const F& f) {
  double most = -std::numeric_limits<double>::infinity();
  for (const Sampled& one : builds) most = std::max(most, f(one));
  return most;
}

// Turns lie beside each other, but for those of a crossed wind. A gap that does not count by the plan's limit stays in the
// lower half.
ColourRange gap_range(const Builds& builds, ColourRange range) {
  const auto nominal = [](const Sampled& one) {
    return std::max(0.0, one.source->plan().traverse().pitch_mm / one.source->d() - 1.0);
  };
  const auto limit = [](const Sampled& one) { return one.source->plan().limits().gap_d; };
  const double least = -greatest(builds, [&](const Sampled& one) { return -nominal(one); });
  const double high = std::max(2.0 * greatest(builds, limit),
                               greatest(builds, [](const Sampled& one) { return high_end(one.values); }));
  // Of a crossed wind, which is open all over, from what its pitch leaves on.
  const bool crossed = std::all_of(builds.begin(), builds.end(), [](const Sampled& one) {
    return product_of(one.source->plan()) == Product::crossed;
  });
  if (crossed) {
    const double step = round_step(high);
    range.low = std::floor(least / step + 1e-9) * step;
  }
  range.neutral = range.low;
  range.high = range.low + rounded_up(std::max(high - range.low, 0.1));
  return range;
}

// The more even of the builds tells how high a layer rises.
ColourRange rise_range(const Builds& builds, ColourRange range) {
  constexpr double least_half = 0.5, rounding = 0.05;
  const auto spread = [](const Sampled& one) { return at_share(one.values, 0.75) - at_share(one.values, 0.25); };
  const Sampled& even = *std::min_element(builds.begin(), builds.end(),
                                          [&](const Sampled& a, const Sampled& b) { return spread(a) < spread(b); });
  range.neutral = std::round(at_share(even.values, 0.5) / rounding) * rounding;
  const double half = greatest(builds, [&](const Sampled& one) {
    std::vector<double> off = one.values;
    for (double& value : off) value = std::abs(value - range.neutral);
    return high_end(std::move(off));
  });
  const double wide = rounded_up(std::max(half, least_half));
  range.low = range.neutral - wide;
  range.high = range.neutral + wide;
  return range;
}

// At least as far as what counts as a pile-up.
ColourRange height_range(const Builds& builds, ColourRange range) {
  const double unit = height_unit_mm(range.units);
  range.high = rounded_up(std::max(0.1, greatest(builds, [unit](const Sampled& one) {
                                     std::vector<double> sizes = one.values;
                                     for (double& size : sizes) size = std::abs(size);
                                     const double pile = one.source->plan().limits().pile_up_d * one.source->d();
                                     return std::max(high_end(std::move(sizes)), pile / unit);
                                   })));
  range.low = -range.high;
  range.neutral = 0.0;
  return range;
}

// A pull of 1 is that of winding. At least up to twice that, or to what the plan allows.
ColourRange payoff_range(const Builds& builds, ColourRange range) {
  range.low = range.neutral = 1.0;
  range.high = 1.0 + rounded_up(greatest(builds, [](const Sampled& one) {
                 const double allowed = one.source->plan().limits().payoff_force.value_or(2.0);
                 return std::max({high_end(one.values), allowed, 1.1}) - 1.0;
               }));
  return range;
}

// From the least to the greatest, however near they are: what changes a little over a wind is what is to be seen. Of
// what does not change at all, a hundredth to either side.
ColourRange tension_range(const Builds& builds, ColourRange range) {
  const auto end = [](const Sampled& one, double share) { return at_share(one.values, share); };
  const double most = greatest(builds, [&](const Sampled& one) { return end(one, 1.0); });
  const double least = -greatest(builds, [&](const Sampled& one) { return -end(one, 0.0); });
  const double spread = std::max(most - least, 0.02 * most);
  const double middle = 0.5 * (most + least), step = round_step(spread);
  range.low = range.neutral = std::max(0.0, std::floor((middle - 0.5 * spread) / step + 1e-9) * step);
  range.high = std::ceil((middle + 0.5 * spread) / step - 1e-9) * step;
  return range;
}

ColourRange length_range(const Builds& builds, ColourRange range) {
  range.low = range.neutral = 0.0;
  range.high =
      rounded_up(std::max(0.1, greatest(builds, [](const Sampled& one) { return at_share(one.values, 1.0); })));
  return range;
}

// A band for each layer, the last one's at the upper end.
ColourRange layer_range(double layers, ColourRange range) {
  range.low = range.neutral = 0.5;
  range.high = layers + 0.5;
  return range;
}

double layers_of(const SceneSource& source) { return static_cast<double>(source.build().strokes.size()); }

std::optional<ColourRange> range_of(Builds builds, const View& view) {
  std::erase_if(builds, [](const Sampled& one) { return one.values.empty(); });
  if (builds.empty()) return std::nullopt;
  const ColourRange range{view.colouring, view.units, 0.0, 0.0, 1.0};
  switch (view.colouring) {
    case Colouring::gap: return gap_range(builds, range);
    case Colouring::rise: return rise_range(builds, range);
    case Colouring::height: return height_range(builds, range);
    case Colouring::length: return length_range(builds, range);
    case Colouring::tension: return tension_range(builds, range);
    case Colouring::payoff:
    case Colouring::payoff_left:
    case Colouring::payoff_right: return payoff_range(builds, range);
    case Colouring::layer:
    case Colouring::direction:
    case Colouring::support:
    case Colouring::material: break;
  }
  return std::nullopt;
}

bool has_scale(Colouring colouring) {
  return colouring != Colouring::layer && colouring != Colouring::direction && colouring != Colouring::support &&
         colouring != Colouring::material;
}

}  // namespace

std::optional<ColourRange> own_range(const SceneSource& source, const View& view) {
  if (view.colouring == Colouring::layer)
    return layer_range(layers_of(source), {view.colouring, view.units, 0.0, 0.0, 1.0});
  if (!has_scale(view.colouring)) return std::nullopt;
  Builds one;
  one.push_back(sampled(source, view, newest_layers(source, view)));
  // A scale stands even where nothing has a value, as on a first layer.
  if (one.front().values.empty() && view.colouring != Colouring::tension)
    one.front().values.push_back(view.colouring == Colouring::rise ? 1.0 : 0.0);
  return range_of(std::move(one), view);
}

std::optional<ColourRange> common_range(const SceneSource& a, const SceneSource& b, const View& view) {
  if (view.colouring == Colouring::layer)
    return layer_range(std::max(layers_of(a), layers_of(b)), {view.colouring, view.units, 0.0, 0.0, 1.0});
  if (!has_scale(view.colouring)) return std::nullopt;
  if (const std::optional<DrawOff> way = payoff_way(view.colouring);
      way && !(a.knows_payoff(*way) && b.knows_payoff(*way)))
    return std::nullopt;
  Builds both;
  for (const SceneSource* const source : {&a, &b}) both.push_back(sampled(*source, view, all_along(*source)));
  return range_of(std::move(both), view);
}

Rgba scale_colour(const ColourRange& range, double value) {
  const double at = std::clamp(value, range.low, range.high);
  if (range.colouring == Colouring::layer)
    return layer_rgba(static_cast<std::size_t>(std::max(1.0, std::round(value))),
                      static_cast<std::size_t>(std::round(range.high - 0.5)));
  if (range.colouring == Colouring::length || range.colouring == Colouring::tension)
    return viridis((at - range.low) / (range.high - range.low));
  // The outermost of the published colours are nearly black, and would be taken for shade.
  constexpr double reach = 0.42;
  if (at >= range.neutral) return purple_orange(0.5 + reach * (at - range.neutral) / (range.high - range.neutral));
  return purple_orange(0.5 - reach * (range.neutral - at) / (range.neutral - range.low));
}

double round_step(double span) { return round_figure_above(span / 8.0); }

}  // namespace laywright
