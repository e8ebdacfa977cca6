#include "scene/strands.h"

#include <algorithm>
#include <cmath>

#include "base/units.h"
#include "scene/colouring.h"
#include "scene/palette.h"

namespace laywright {

namespace {

// Nodes that texels of the window name, rising, each once.
std::vector<std::uint32_t> named_nodes(const Shell& shell, const SurfaceWindow& window) {
  const ShellGrid& grid = shell.grid;
  const double last = static_cast<double>(grid.columns);
  const auto column = [&](double x) { return std::clamp((x - grid.x_from_mm) / grid.column_mm, 0.0, last); };
  const auto first = static_cast<std::size_t>(column(window.x_from_mm));
  const auto end = static_cast<std::size_t>(std::ceil(column(window.x_to_mm)));
  const double span = std::min(window.sector.to - window.sector.from, full_turn);

  std::vector<std::uint32_t> nodes;
  for (std::size_t row = 0; row < grid.rows; ++row) {
    const double past = (grid.angle(row) - window.sector.from) / full_turn;
    if ((past - std::floor(past)) * full_turn > span) continue;
    std::uint32_t before = no_node;
    for (std::size_t c = first; c < end; ++c) {
      const std::uint32_t node = shell.node[shell.index(row, c)];
      if (node != before && node != no_node) nodes.push_back(node);
      before = node;
    }
  }
  std::sort(nodes.begin(), nodes.end());
  nodes.erase(std::unique(nodes.begin(), nodes.end()), nodes.end());
  return nodes;
}

class StrandMaker {
 public:
  StrandMaker(const SceneSource& source, const View& view, const Shell& shell)
      : source_(source),
        shell_(shell),
        theme_(view.theme),
        fiber_(visible_fiber(source, view)),
        colourer_(source, view) {
    begin_ = view.outside == Outside::faded ? 0 : fiber_.first;
    strands_.fiber_diameter_mm = source.d();
    strands_.stations = source.stations();
  }

  // Nodes come in rising order; one that follows the last one goes on with its run.
  void add(std::size_t node) {
    if (node < begin_ || node >= fiber_.end) return;
    const bool goes_on = !strands_.points.empty() && strands_.points.back().node + 1 >= node;
    if (goes_on && strands_.points.back().node >= node) return;
    if (!goes_on) strands_.runs.push_back({static_cast<std::uint32_t>(strands_.points.size()), 0});
    ++strands_.runs.back().count;
    const NodeStore& nodes = source_.build().nodes;
    const Rgba colour = shaded(node, colourer_.colour(node));
    strands_.points.push_back({static_cast<float>(nodes.x(node)), static_cast<float>(nodes.r(node)),
                               static_cast<std::uint32_t>(node),
                               node >= fiber_.first ? colour : faded(colour, theme_)});
  }

  [[nodiscard]] std::size_t points() const { return strands_.points.size(); }
  Strands finish() { return std::move(strands_); }

 private:
  // In the light that the shell has there.
  [[nodiscard]] Rgba shaded(std::size_t node, Rgba colour) const {
    const ShellGrid& grid = shell_.grid;
    const NodeStore& nodes = source_.build().nodes;
    const double column = std::floor((nodes.x(node) - grid.x_from_mm) / grid.column_mm);
    if (column < 0.0 || column >= static_cast<double>(grid.columns)) return colour;
    const std::size_t row = node % grid.stations * grid.rows / grid.stations;
    const float crest = shell_.crest_mm[shell_.index(row, static_cast<std::size_t>(column))];
    const float depth = (crest - static_cast<float>(nodes.r(node))) / static_cast<float>(source_.d());
    // Bytes are the roots of light.
    const Rgba dark = mixed({0, 0, 0, 255}, colour, std::sqrt(static_cast<double>(light_at_depth(depth))));
    return {dark.r, dark.g, dark.b, colour.a};
  }

  const SceneSource& source_;
  const Shell& shell_;
  Theme theme_;
  VisibleFiber fiber_;
  Colourer colourer_;
  std::size_t begin_ = 0;
  Strands strands_;
};

}  // namespace

Strands make_strands(const SceneSource& source, const View& view, const Shell& shell, const SurfaceWindow& window,
                     std::size_t most_points) {
  // Rows stand apart by whole stations: between two that name the same strand lie nodes that none names.
  const std::size_t stride = (shell.grid.stations + shell.grid.rows - 1) / shell.grid.rows;
  StrandMaker maker(source, view, shell);
  for (const std::uint32_t node : named_nodes(shell, window)) {
    const std::size_t from = node - std::min<std::size_t>(node, stride);
    for (std::size_t k = from; k <= node + stride; ++k) maker.add(k);
    if (maker.points() > most_points) {
      Strands none = StrandMaker(source, view, shell).finish();
      none.complete = false;
      return none;
    }
  }
  return maker.finish();
}

}  // namespace laywright
